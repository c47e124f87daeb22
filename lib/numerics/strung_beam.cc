#include "withy/numerics/strung_beam.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <locale>
#include <sstream>

#include "strung_figures.h"
#include "strung_path.h"

namespace withy {
namespace {

// Of the length: the last ring may be off the end of the beam by this much; rings closer than that are at one place.
constexpr double kAtEnd = 1e-9, kApart = 1e-9;

bool AllFinite(std::initializer_list<double> values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

template <typename... Parts>
std::string Say(const Parts&... parts) {
  std::ostringstream text;
  text.imbue(std::locale::classic());
  (text << ... << parts);
  return text.str();
}

std::string Mm(double metres) {
  return Say(1e3 * metres, " mm");
}

std::string WhatIsWrongWith(const Beam& beam, const std::vector<BeamRing>& rings) {
  if (rings.empty()) return "there is no ring";
  double before = 0;
  for (std::size_t k = 0; k < rings.size(); ++k) {
    const BeamRing& ring = rings[k];
    const std::string name = Say("ring ", k + 1);
    if (!AllFinite({ring.s, ring.offset, ring.turned})) return name + ": its place is not a number";
    if (ring.offset < 0) return name + ": its offset, " + Mm(ring.offset) + ", is below zero";
    if (!(ring.s > before + kApart * beam.length())) {
      const std::string behind = k == 0 ? "the clamp" : Say("ring ", k, " at ", Mm(before));
      return name + " at " + Mm(ring.s) + " is not beyond " + behind;
    }
    before = ring.s;
  }
  if (std::abs(before - beam.length()) > kAtEnd * beam.length()) {
    return Say("ring ", rings.size(), ", the last, at ", Mm(before), " is not at the end of the beam, ",
               Mm(beam.length()));
  }
  return "";
}

std::string WhatIsWrongWith(const StrungLoad& load, double first_ring_s) {
  if (!AllFinite({load.clamp_angle, load.reel_s, load.reel_offset, load.tension, load.far_angle, load.friction})) {
    return "a load is not a number";
  }
  if (load.side != 1 && load.side != -1) return Say("side is ", load.side, ", neither +1 nor -1");
  if (load.tension < 0) return Say("the tension, ", load.tension, " N, is below zero");
  if (load.reel_offset < 0) return "the offset of the reel, " + Mm(load.reel_offset) + ", is below zero";
  if (!(load.friction >= 0 && load.friction <= 1)) return Say("friction is ", load.friction, ", not between 0 and 1");
  if (!(load.reel_s < first_ring_s)) {
    return "the reel at " + Mm(load.reel_s) + " is not before ring 1 at " + Mm(first_ring_s);
  }
  return "";
}

std::string WhatIsWrongWith(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load,
                            const StrungOptions& options) {
  std::string wrong = WhatIsWrongWith(beam);
  if (wrong.empty()) wrong = WhatIsWrongWith(beam, rings);
  if (wrong.empty()) wrong = WhatIsWrongWith(load, rings.front().s);
  if (wrong.empty() && !(options.tolerance > 0)) wrong = "the tolerance is not above zero";
  return wrong;
}

std::string WhyUnsolved(ElasticaState state, double share, const StrungLoad& load) {
  const std::string at = Say("beyond ", load.tension * share, " N ");
  switch (state) {
    case ElasticaState::kSeveral:
      return at + "more than one shape holds the tension";
    case ElasticaState::kNone:
      return at + "no shape nearby holds the tension: the beam would snap over";
    default:
      return at + "no shape was found within the steps allowed";
  }
}

bool Usable(const StrungBeam* near, std::size_t nodes) {
  return near != nullptr && near->nodes.size() == nodes &&
         std::all_of(near->nodes.begin(), near->nodes.end(),
                     [](const StrungNode& node) {
                       return AllFinite({node.x, node.y, node.angle});
                     }) &&
         std::all_of(near->log_tension.begin(), near->log_tension.end(),
                     [](double value) { return AllFinite({value}); });
}

StrungPathEnd Solve(StrungSystem& system, StrungNewton& newton, const StrungOptions& options, double& error) {
  if (Usable(options.near, system.given().s.size())) {
    system.SetNodes(options.near->nodes, options.near->log_tension);
    if (newton.ComeHome() && newton.Settle(1, options.tolerance, error)) return {ElasticaState::kSolved, 1};
  }
  StrungPathEnd end = newton.RaiseTension();
  if (end.state == ElasticaState::kSolved && !newton.Settle(1, options.tolerance, error)) {
    end.state = ElasticaState::kNotConverged;
  }
  return end;
}

}  // namespace

StrungBeam SolveStrungBeam(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load,
                           const StrungOptions& options) {
  StrungBeam bent;
  bent.why = WhatIsWrongWith(beam, rings, load, options);
  if (!bent.why.empty()) {
    bent.state = ElasticaState::kBadInput;
    return bent;
  }
  const StrungCase given(beam, rings, load);
  StrungSystem system(given);
  StrungNewton newton(system, options.most_steps);
  const StrungPathEnd end = Solve(system, newton, options, bent.error);
  bent.state = end.state;
  bent.reached = end.share;
  bent.newton_steps = newton.steps();
  if (end.state != ElasticaState::kSolved) {
    bent.error = 0;
    bent.why = WhyUnsolved(end.state, end.share, load);
  }
  if (SetFigures(system, end.share, bent) && (!options.points || SetPoints(given, bent))) return bent;
  StrungBeam nothing;
  nothing.why = "numbers ran away";
  nothing.newton_steps = newton.steps();
  return nothing;
}

BeamPoint StrungPointAt(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load,
                        const StrungBeam& solved, double s) {
  const StrungCase given(beam, rings, load);
  if (!Fits(given, solved)) return {};
  const auto above = std::upper_bound(given.s.begin(), given.s.end(), s);
  const std::size_t k = above == given.s.begin() ? 0 : static_cast<std::size_t>(above - given.s.begin()) - 1;
  if (k == given.spans()) {
    const StrungNode& end = solved.nodes[k];
    return {given.s[k], end.x, end.y, end.angle, end.moment};
  }
  SectionWalk walk = WalkOf(given, solved, k, s);
  walk.ToEnd();
  return walk.here();
}

}  // namespace withy
