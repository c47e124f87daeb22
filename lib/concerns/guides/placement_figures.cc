// Where the figures of a placement come from. What its drawn shapes are, is of line_load: the same formulas, the rings
// elsewhere.
#include <deque>
#include <string>
#include <utility>

#include "absl/strings/str_replace.h"
#include "withy/guides/train_plan.h"
#include "withy/line_load/line_load.h"

namespace withy {
namespace {

constexpr std::string_view kObjective =
    "own formulation: least largest turn of the line over all loads, the tip-top's entry twice; the line as in "
    "line_load";
constexpr std::string_view kDefinition = "own definition";
constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kPlane = "plane geometry";

std::vector<Figure> OfProposal() {
  return {
      {"placement.state",
       "placed: within all limits; not possible: the least bad layout; cannot tell",
       kObjective,
       {"placement.proposed.keeps_limits"}},
      {"placement.why", "the limit that is not kept, or what is not known", kDefinition, {"placement.proposed.breaks"}},
      {"placement.gaps_never_grow", "as asked for", kPractice, {}},
      {"placement.grid_mm", "as asked for, else 1/8 in or 2 mm by the design's units", kPractice, {"identity.units"}},
      {"placement.one_off_by_3_mm_percent",
       "the largest of all guides",
       kDefinition,
       {"placement.guides[].off_by_3_mm_percent"}},
      {"placement.most_critical",
       "the guide with the largest of these",
       kDefinition,
       {"placement.guides[].off_by_3_mm_percent"}},
      {"placement.notes", "what was taken for granted", kDefinition, {}},
      {"placement.solutions", "solutions of rod and line, counted", kDefinition, {}},
  };
}

std::vector<Figure> OfLoads() {
  return {
      {"placement.loads[].tension_n",
       "the load case's pull; added: light 0.22, middle 0.55, straight 0.06 of the heaviest; without one a third of "
       "the line's "
       "strength, else the load at the tip, else ten times the lure's weight",
       kPractice,
       {"load_cases[=].tension|load_cases[=].lifted|load_cases[].tension|load_cases[].lifted|intent.line.strength|"
        "intent.lure.max"}},
      {"placement.loads[].line_angle_deg",
       "as written, straight down = 90 + butt angle; of an added load as the heaviest, straight = 0",
       kDefinition,
       {"load_cases[=].line_angle|load_cases[=].butt_angle|load_cases[].line_angle|load_cases[].butt_angle"}},
      {"placement.loads[].weight",
       "1; of the straight pull of a fixed spool 3",
       kObjective,
       {"intent.technique", "intent.reel.side"}},
      {"placement.loads[].clearance_mm",
       "0 with rings on top, none below; none of the heaviest where no layout has it",
       kObjective,
       {"intent.reel.side", "intent.technique"}},
  };
}

std::vector<Figure> OfGuides() {
  return {
      {"placement.guides[].model_was",
       "of the design, where the stock gives another",
       kDefinition,
       {"guides[=].model"}},
      {"placement.guides[].from_tip_mm",
       "its place in the layout with the least J + 0.1 R that was found, on the grid",
       kObjective,
       {"placement.loads[].tension_n", "placement.loads[].line_angle_deg", "placement.loads[].weight",
        "placement.loads[].clearance_mm", "placement.guides[].offset_mm", "placement.guides[=].locked",
        "placement.grid_mm", "placement.gaps_never_grow", "bending.finished.ei_n_m2", "fit.tip_ring_mm"}},
      {"placement.guides[].from_tip_was_mm", "as in the design", kDefinition, {"guides.guides[=].from_tip_mm"}},
      {"placement.guides[].from_butt_mm",
       "tip-top's ring from the butt less the distance from it",
       kPlane,
       {"placement.guides[=].from_tip_mm", "fit.tip_ring_mm"}},
      {"placement.guides[].offset_mm",
       "ring height + half the blank's diameter at the place found",
       kPlane,
       {"guide_models[id=.model].ring_height", "sections.sections[].outer_mm"}},
      {"placement.guides[].locked",
       "locked in the design; wrapped, coated or placed by the log",
       kDefinition,
       {"guides[=].locked", "log[].placed.place", "closed[what=].at"}},
      {"placement.guides[].turn_deg",
       "largest |turn| of the line there over all loads",
       kObjective,
       {"placement.guides[=].from_butt_mm", "placement.guides[=].offset_mm", "placement.loads[].tension_n",
        "placement.loads[].line_angle_deg", "bending.finished.ei_n_m2"}},
      {"placement.guides[].under", "the load that does it", kDefinition, {"placement.loads[].tension_n"}},
      {"placement.guides[].off_by_3_mm_percent",
       "J with it 3 mm towards butt or tip, the worse of the two, over J, less 1",
       kObjective,
       {"placement.guides[=].from_butt_mm", "placement.proposed.turn_deg"}},
      {"placement.guides[].bound_by",
       "the limit that it stands at within a step of the grid",
       kDefinition,
       {"placement.guides[=].from_butt_mm", "placement.guides[=].locked", "placement.grid_mm"}},
  };
}

// `~` stands for the layout.
std::vector<Figure> OfLayout() {
  return {
      {"~.name", "as it is, proposed, a progression, or what is changed of the problem", kDefinition, {}},
      {"~.from_tip_mm", "distances from the tip-top's ring, butt first", kDefinition, {"guides.guides[].from_tip_mm"}},
      {"~.turn_deg",
       "J = max over loads of weight x max(|turn at each guide|, 2 |tip less line into the tip-top|)",
       kObjective,
       {"~.from_tip_mm", "placement.loads[].tension_n", "placement.loads[].line_angle_deg",
        "placement.loads[].weight"}},
      {"~.at_guide", "the ring where J is met", kObjective, {"~.turn_deg"}},
      {"~.under", "the load under which J is met", kObjective, {"~.turn_deg"}},
      {"~.blank_turn_deg",
       "R = root mean square over loads and spans of weight x turn of the blank from ring to ring",
       kObjective,
       {"~.from_tip_mm", "placement.loads[].tension_n", "placement.loads[].weight", "bending.finished.ei_n_m2"}},
      {"~.clearance_mm",
       "least distance of line and blank over the loads that ask for one",
       kPlane,
       {"~.from_tip_mm", "placement.loads[].clearance_mm", "sections.sections[].outer_mm"}},
      {"~.keeps_limits",
       "places and gaps to 1 micrometre, clearance to 0.05 mm",
       kDefinition,
       {"~.from_tip_mm", "~.clearance_mm"}},
      {"~.breaks", "what is missing of these", kDefinition, {"~.from_tip_mm", "~.clearance_mm"}},
  };
}

// The names live as long as the program.
std::string_view Kept(std::string text) {
  static std::deque<std::string>* const kept = new std::deque<std::string>;
  return kept->emplace_back(std::move(text));
}

struct Named {
  std::string_view layout, same;  // in names, in what goes in
};
constexpr Named kLayouts[] = {
    {"placement.now", "placement.now"},
    {"placement.proposed", "placement.proposed"},
    {"placement.classics[]", "placement.classics[=]"},
    {"placement.other_rule", "placement.other_rule"},
    {"placement.one_fewer", "placement.one_fewer"},
    {"placement.one_more", "placement.one_more"},
};

Figure Of(const Named& named, const Figure& pattern) {
  const bool proposed = named.layout == "placement.proposed";
  const auto renamed = [proposed](std::string_view text, std::string_view layout) {
    const std::string by(layout);
    std::string name = absl::StrReplaceAll(std::string(text), {{"~", by}, {"line_load.cases", by + ".cases"}});
    if (proposed) {
      name = absl::StrReplaceAll(name, {{"guides.guides[].from_tip_mm", "placement.guides[].from_tip_mm"},
                                        {"guides.guides[=].from_butt_mm", "placement.guides[=].from_butt_mm"}});
    }
    return Kept(std::move(name));
  };
  Figure figure = pattern;
  figure.name = renamed(pattern.name, named.layout);
  for (std::string_view& from : figure.from) from = renamed(from, named.same);
  return figure;
}

std::vector<Figure> Make() {
  std::vector<Figure> all;
  for (const auto& more : {OfProposal(), OfLoads(), OfGuides()}) all.insert(all.end(), more.begin(), more.end());
  for (const Named& named : kLayouts) {
    for (const auto& patterns : {OfLayout(), LineLoadFigures()}) {
      for (const Figure& pattern : patterns) all.push_back(Of(named, pattern));
    }
  }
  return all;
}

}  // namespace

std::vector<Figure> PlacementFigures() {
  static const std::vector<Figure>* const all = new std::vector<Figure>(Make());
  return *all;
}

}  // namespace withy
