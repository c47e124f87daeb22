#include "trial_blank.h"

#include <algorithm>
#include <utility>

#include "withy/sections/distribution.h"

namespace withy::bending {
namespace {

double LengthOf(const Section& section) {
  return section.length->value.meters();
}

// What computing needs of a section, all of it left.
Section Uncut(const Section& from) {
  Section section;
  section.id = from.id;
  section.shape = from.shape;
  section.length = from.length;
  section.outer = from.outer;
  section.splice_at = from.splice_at;
  section.splice_modulus_pa = from.splice_modulus_pa;
  section.splice_density_kg_m3 = from.splice_density_kg_m3;
  section.from_m = Uncertain(0);
  section.to_m = Uncertain(LengthOf(from));
  return section;
}

Distribution DistributionOf(const Section& section, const Guess& guess) {
  const auto& splice = section.splice_density_kg_m3;
  return {section, guess.density_kg_m3, splice && splice->value > 0 ? splice->value : guess.density_kg_m3};
}

// From the tip end of the section before to the butt end of this one, negative where they overlap: of the joint that
// names it, else of that in its place in the list. Cuts at the far ends do not alter it.
std::optional<double> GapBelow(const std::vector<Joint>& joints, std::size_t position, const std::string& upper) {
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const Joint& joint = joints[i];
    const bool here = joint.upper.empty() ? i + 1 == position : joint.upper == upper;
    if (here && joint.upper_start_m && joint.lower_end_m) return *joint.upper_start_m - *joint.lower_end_m;
  }
  return std::nullopt;
}

}  // namespace

TrialBlank::TrialBlank(const Rod& rod, const std::vector<MeasuredWalls>& walls) : walls_(walls) {
  for (std::size_t k = 0; k < rod.blank.assembled.size(); ++k) {
    rod_.blank.sections.push_back(Uncut(rod.blank.sections[rod.blank.assembled[k]]));
    rod_.blank.assembled.push_back(static_cast<int>(k));
    answers_.sections.emplace_back().section = static_cast<int>(k);
  }
  rod_.blank.joints = rod.blank.joints;
  moduli_.resize(rod_.blank.sections.size());
  doubts_.resize(rod_.blank.sections.size());
  PlaceSections();
}

void TrialBlank::PlaceSections() {
  std::vector<Section>& sections = rod_.blank.sections;
  double end = 0;
  for (std::size_t k = 0; k < sections.size(); ++k) {
    if (k > 0) {
      const std::optional<double> gap = GapBelow(rod_.blank.joints, k, sections[k].id);
      if (!gap) return;
      end += *gap;
    }
    starts_.push_back(end);
    sections[k].start_m = Uncertain(end);
    end += LengthOf(sections[k]);
  }
  length_ = end;
  plugs_ = PlugsOf(rod_, answers_, nullptr);
}

// Through the measured walls; to the ends that were not measured as guessed.
void TrialBlank::DrawWall(int position, const Guess& guess) {
  const MeasuredWalls& walls = walls_[position];
  Section& section = rod_.blank.sections[position];
  std::vector<Profile::Knot> knots;
  if (!walls.butt) knots.push_back({0, guess.wall_butt_m});
  for (std::size_t i = 0; i < walls.knots.size(); ++i) {
    const double off = walls.IsButt(i)  ? guess.wall_butt_off
                       : walls.IsTip(i) ? guess.wall_tip_off
                                        : guess.walls_between_off;
    knots.push_back({walls.knots[i].x, walls.knots[i].y + off * walls.deviations_m[i]});
  }
  if (!walls.tip) knots.push_back({LengthOf(section), guess.wall_tip_m});
  section.wall = Profile(std::move(knots));
}

bool TrialBlank::Set(const std::vector<Guess>& guesses) {
  guesses_ = guesses;
  for (std::size_t k = 0; k < guesses.size(); ++k) {
    const Guess& guess = guesses[k];
    Section& section = rod_.blank.sections[k];
    if (section.shape == Shape::kTube) DrawWall(static_cast<int>(k), guess);
    const Distribution distribution = DistributionOf(section, guess);
    SectionAnswer& answer = answers_.sections[k];
    answer.frusta = distribution.Frusta(0, LengthOf(section), guess.outer_off_m);
    answer.frusta_kg.clear();
    double sum = 0;
    for (const Frustum& f : answer.frusta) {
      const bool hollow = section.shape == Shape::kTube && f.s0 < section.SolidFrom();
      if (hollow && !(f.inner0 > 0 && f.inner1 > 0 && f.inner0 < f.outer0 && f.inner1 < f.outer1)) return false;
      answer.frusta_kg.push_back(distribution.Weigh({f}).mass_kg);
      sum += answer.frusta_kg.back();
    }
    answer.mass_kg = Uncertain(sum);
    moduli_[k].section.pa = guess.modulus_pa;
    if (section.splice_at) {
      const auto& splice = section.splice_modulus_pa;
      moduli_[k].splice.emplace().pa = splice && splice->value > 0 ? splice->value : guess.modulus_pa;
    }
  }
  return true;
}

MassProperties TrialBlank::PropertiesOf(int position, double from_m, double to_m) const {
  const Guess& guess = guesses_[position];
  return DistributionOf(rod_.blank.sections[position], guess).Properties(from_m, to_m, guess.outer_off_m);
}

Beam TrialBlank::BeamFrom(double clamp_m) const {
  return MakeBlankBeam(rod_, answers_, moduli_, doubts_, plugs_, clamp_m).beam;
}

}  // namespace withy::bending
