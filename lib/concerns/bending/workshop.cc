#include "workshop.h"

#include <algorithm>
#include <numbers>
#include <utility>

namespace withy::bending {
namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kSameM = 1e-6;

std::vector<Pull> PullsOf(const Rod& rod, Inputs& inputs) {
  std::vector<Pull> pulls;
  for (const LoadCase& load : rod.load_cases) {
    Pull pull;
    if (load.load_n)
      pull.load_n = inputs.Add(load.load_n->value, load.load_n->plus_minus.value_or(0), load.load_n->at.ToString());
    pull.butt_deg = load.butt_angle_deg.value;
    pull.from_butt_deg = -load.LineAngleDeg();
    pull.turn = inputs.Add(0, load.butt_angle_deg.plus_minus.value_or(0) * kDegree, load.butt_angle_deg.at.ToString());
    pulls.push_back(std::move(pull));
  }
  return pulls;
}

}  // namespace

Workshop::Workshop(const Rod& rod, const SectionsAnswers& sections, std::vector<ModuliOfSection> moduli,
                   std::vector<Plug> plugs, const std::vector<OnTheBlank>& things, Inputs& inputs)
    : rod_(rod),
      sections_(sections),
      moduli_(std::move(moduli)),
      doubts_(ShapeDoubtsOf(rod, sections, inputs)),
      plugs_(std::move(plugs)),
      pulls_(PullsOf(rod, inputs)),
      things_(things) {}

bool Workshop::Holds(double clamp_m) const {
  return Datum(clamp_m, false) < rod_.blank.length_m->value() - kSameM;
}

double Workshop::Datum(double clamp_m, bool finished) const {
  const double butt_m = rod_.blank_butt_m->value();
  return std::max(0.0, clamp_m - butt_m) + (finished ? butt_m : 0);
}

double Workshop::FurthestBack(double clamp_m) const {
  for (const LoadCase& load : rod_.load_cases) {
    if (load.clamp) clamp_m = std::min(clamp_m, load.clamp->value.meters());
  }
  return Datum(clamp_m, true);
}

LoadedBeam Workshop::MakeBeam(double clamp_m, bool finished) const {
  BlankBeam blank = MakeBlankBeam(rod_, sections_, moduli_, doubts_, plugs_, Datum(clamp_m, false));
  if (!finished) return LoadBeam(std::move(blank), {}, 0, 0);
  const double from_butt = Datum(clamp_m, true);
  return LoadBeam(std::move(blank), things_, from_butt, rod_.tip_ring_m->value() - from_butt);
}

StiffBlank Workshop::MakeStiff() const {
  const double butt_m = rod_.blank_butt_m->value();
  LoadedBeam all = LoadBeam(MakeBlankBeam(rod_, sections_, moduli_, doubts_, plugs_, 0), {}, butt_m,
                            rod_.tip_ring_m->value() - butt_m);
  return {butt_m, std::move(all.blank.beam), std::move(all.blank.outer_m), std::move(all.blank.stiffness_change)};
}

BentRod Workshop::BendUnder(std::size_t load_case, const LoadedBeam& held, double clamp_m, bool finished) const {
  const LoadCase& load = rod_.load_cases[load_case];
  const double place = load.clamp ? load.clamp->value.meters() : clamp_m;
  BentRod bent;
  if (load.load_n && load.load_n->value > 0 && Holds(place)) {
    bent = Bend(place == clamp_m ? held : MakeBeam(place, finished), pulls_[load_case]);
  } else {
    bent.shape.state = ElasticaState::kBadInput;
  }
  bent.id = load.id;
  bent.at = load.at;
  bent.butt_angle = load.butt_angle_deg.value * kDegree;
  bent.load_angle = load.LoadAngleDeg() * kDegree;
  bent.clamp_m = Holds(place) ? Datum(place, finished) : 0;
  return bent;
}

}  // namespace withy::bending
