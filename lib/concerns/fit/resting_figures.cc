// Where the figures of the blank in its handle come from: as it is cut now, and as planned.
#include "cut_plan_figures.h"

namespace withy {
namespace {

constexpr std::string_view kGeometry = "plane geometry";
constexpr std::string_view kPiecewise = "own definition: piecewise linear";
constexpr std::string_view kContact = "own derivation: exact contact of two piecewise linear profiles";

std::vector<Figure> Now() {
  return {
      {"fit.cut_plan.now.butt_mm",
       "rest of the butt face with what is off by now; as planned where nothing more comes off",
       kContact,
       {"fit.cut_plan.cut_done_mm", "handle.parts[=].bore|handle.parts[=].plugs", "blank.sections[].taper.stations",
        "fit.cut_plan.tighter_than_read_mm"}},
      {"fit.cut_plan.now.depth_mm",
       "front mouth of the handle part less butt face",
       kGeometry,
       {"fit.cut_plan.now.butt_mm", "fit.parts[id=.fit.cut_plan.host].start_mm",
        "fit.parts[id=.fit.cut_plan.host].length_mm"}},
      {"fit.cut_plan.now.shorter_per_mm",
       "through: 1; on a step or stop: 1; butt edge in a taper: 1 + blank taper / bore taper; carried ahead of it: 0",
       kContact,
       {"fit.cut_plan.cut_done_mm", "handle.parts[=].bore|handle.parts[=].plugs", "blank.sections[].taper.stations",
        "log[fit.part=].fit.overall"}},
      {"fit.cut_plan.now.contacts[].kind", "what of the handle stops the blank", kContact, {"fit.cut_plan.now.contacts[=].from_mm"}},
      {"fit.cut_plan.now.contacts[].from_mm",
       "place that keeps the blank from going further",
       kContact,
       {"fit.cut_plan.cut_done_mm", "handle.parts[=].bore|handle.parts[=].plugs", "handle.parts[=].fitting.stop",
        "handle.parts[=].fitting.glue_clearance", "blank.sections[].taper.stations",
        "fit.cut_plan.tighter_than_read_mm"}},
      {"fit.cut_plan.now.contacts[].to_mm",
       "other end of the stretch along which they touch",
       kContact,
       {"fit.cut_plan.now.contacts[=].from_mm"}},
      {"fit.cut_plan.now.contacts[].bore_mm",
       "bore profile there",
       kPiecewise,
       {"fit.cut_plan.now.contacts[=].from_mm", "handle.parts[=].bore|handle.parts[=].plugs"}},
      {"fit.cut_plan.now.contacts[].on_blank_mm",
       "where on the blank as supplied the two profiles touch",
       kContact,
       {"fit.cut_plan.now.contacts[=].from_mm", "fit.cut_plan.cut_done_mm", "blank.sections[].taper.stations"}},
  };
}

std::vector<Figure> AsPlanned() {
  return {
      {"fit.cut_plan.planned.butt_mm", "as everywhere in the report", kGeometry, {"fit.blank_butt_mm"}},
      {"fit.cut_plan.planned.depth_mm",
       "front mouth of the handle part less butt face",
       kGeometry,
       {"fit.cut_plan.planned.butt_mm", "fit.parts[id=.fit.cut_plan.host].start_mm",
        "fit.parts[id=.fit.cut_plan.host].length_mm"}},
      {"fit.cut_plan.planned.shorter_per_mm",
       "through: 1; on a step or stop: 1; butt edge in a taper: 1 + blank taper / bore taper; carried ahead of it: 0",
       kContact,
       {"fit.cut_plan.cut_planned_mm", "handle.parts[=].bore|handle.parts[=].plugs", "blank.sections[].taper.stations",
        "log[fit.part=].fit.overall"}},
      {"fit.cut_plan.planned.contacts[].kind", "what of the handle stops the blank", kContact, {"fit.cut_plan.planned.contacts[=].from_mm"}},
      {"fit.cut_plan.planned.contacts[].from_mm",
       "place that keeps the blank from going further",
       kContact,
       {"fit.cut_plan.cut_planned_mm", "handle.parts[=].bore|handle.parts[=].plugs", "handle.parts[=].fitting.stop",
        "handle.parts[=].fitting.glue_clearance", "blank.sections[].taper.stations",
        "fit.cut_plan.tighter_than_read_mm"}},
      {"fit.cut_plan.planned.contacts[].to_mm",
       "other end of the stretch along which they touch",
       kContact,
       {"fit.cut_plan.planned.contacts[=].from_mm"}},
      {"fit.cut_plan.planned.contacts[].bore_mm",
       "bore profile there",
       kPiecewise,
       {"fit.cut_plan.planned.contacts[=].from_mm", "handle.parts[=].bore|handle.parts[=].plugs"}},
      {"fit.cut_plan.planned.contacts[].on_blank_mm",
       "where on the blank as supplied the two profiles touch",
       kContact,
       {"fit.cut_plan.planned.contacts[=].from_mm", "fit.cut_plan.cut_planned_mm", "blank.sections[].taper.stations"}},
  };
}

}  // namespace

std::vector<Figure> RestingFigures() {
  std::vector<Figure> all = Now();
  const std::vector<Figure> planned = AsPlanned();
  all.insert(all.end(), planned.begin(), planned.end());
  return all;
}

}  // namespace withy
