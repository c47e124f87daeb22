#include "support/random_log.h"

#include <limits>

namespace withy {

const char kRodForLogs[] = R"(
format: "withy/1"
intent { overall_length { mm: 2260 plus_minus: 5 } }
blank {
  sections { id: "butt" length { mm: 1200 plus_minus: 1 } taper {
    stations { at { mm: 0 } outer { mm: 13 } wall { mm: 1.1 } } stations { at { mm: 200 } outer { mm: 12.2 } wall { mm: 1 } }
    stations { at { mm: 1200 } outer { mm: 7 } wall { mm: 0.8 } } } density { g_per_cm3: 1.55 } }
  sections { id: "top" length { mm: 1000 plus_minus: 1 } taper {
    stations { at { mm: 0 } outer { mm: 7 } wall { mm: 0.8 } } stations { at { mm: 1000 } outer { mm: 2 } wall { mm: 0.5 } } }
    density { g_per_cm3: 1.55 } }
  joints { id: "joint" kind: "spigot" lower: "butt" upper: "top" gap { mm: 3 } }
  cuts { section: "butt" amount { mm: 60 } }
}
handle {
  parts { id: "cap" kind: "butt_cap" length { mm: 8 } mass { g: 5 } bond: "paste" }
  parts { id: "module" kind: "one_piece_handle" length { mm: 300 } outer { at { mm: 0 } diameter { mm: 28 } } mass { g: 90 }
    bore { at { mm: 0 } diameter { mm: 20 } } bore { at { mm: 120 } diameter { mm: 20 } }
    bore { at { mm: 120 } diameter { mm: 12 } } bore { at { mm: 220 } diameter { mm: 13.6 } } bore { at { mm: 300 } diameter { mm: 14 } }
    arbors { id: "rear" kind: "tape" at { mm: 230 } length { mm: 10 } tape_thickness { mm: 0.13 } } bond: "paste"
    cavity { at { mm: 10 } length { mm: 90 } diameter { mm: 20 } }
    weights { count: 2 unit_mass { oz: 0.25 } unit_length { mm: 7 } unit_diameter { mm: 12 } material: "brass" bond: "paste" } }
  parts { id: "check" kind: "winding_check" length { mm: 4 } bore { at { mm: 0 } diameter { mm: 12.3 } } bond: "paste" }
}
guide_models { id: "ring" form: "single_foot" ring_outer { mm: 6 } ring_inner { mm: 4 } foot_length { mm: 10 } mass { g: 0.3 } }
guides { id: "g1" model: "ring" from_tip { mm: 700 } }
guides { id: "g2" model: "ring" from_tip { mm: 300 } }
tip_top { id: "tip" tube_bore { in64: 5.5 } tube_length { mm: 10 } ring_outer { mm: 6 } end_beyond_tube { mm: 5 } mass { g: 0.3 } bond: "paste" }
threads { id: "green" turns_per_10_mm: 56 material: "nylon" }
wraps { id: "w-guides" kind: "guide" on: ["g1", "g2"] thread: "green" coats: "gloss" }
wraps { id: "band" kind: "trim" place { after: "check" } length { mm: 8 } thread: "green" coats: "gloss" }
finishes { id: "gloss" kind: "epoxy" film { mm: 0.2 } mix { density { g_per_cm3: 1.1 } } }
adhesives { id: "paste" kind: "epoxy_paste" mix { by_volume { resin: 1 hardener: 1 } density { g_per_cm3: 1.15 }
  pot_life { minutes: 45 } pot_life_at { celsius: 23 } } }
)";

std::string RandomLog::AnyId() {
  return OneOf({"butt", "top", "joint", "cap", "module", "module", "check", "rear", "g1", "tip", "w-guides", "band", "nobody", ""});
}

double RandomLog::Nonsense() {
  constexpr double kInfinity = std::numeric_limits<double>::infinity();
  const double values[] = {-5, 0, -0.0, 1e-300, 1e7, 1e300, -1e300, kInfinity, -kInfinity, std::numeric_limits<double>::quiet_NaN()};
  return values[Below(std::size(values))];
}

void RandomLog::SetMm(v1::Length* length, double low, double high) {
  if (Chance(0.02)) return;  // no unit
  const double mm = Chance(0.05) ? Nonsense() : Between(low, high);
  if (Chance(0.1)) {
    length->set_inch(mm);  // a slip, too: 25 times as much
  } else {
    length->set_mm(mm);
  }
  if (Chance(0.5)) length->set_plus_minus(Chance(0.05) ? Nonsense() : Between(0, 2));
  if (Chance(0.5)) length->set_source(v1::Source::MEASURED);
}

void RandomLog::Cut(v1::Cut* cut) {
  cut->set_section(OneOf({"butt", "butt", "butt", "top", "nobody"}));
  cut->set_at_end(static_cast<v1::End::Value>(Chance(0.02) ? 7 : Below(3)));
  SetMm(cut->mutable_amount(), 0.5, 80);
}

void RandomLog::Fit(v1::Fit* fit) {
  fit->set_part(OneOf({"module", "module", "module", "check", "nobody"}));
  SetMm(fit->mutable_overall(), 1900, 2500);
  fit->set_arbors_on(Chance(0.2));
}

void RandomLog::Done(v1::Done* done) {
  done->set_step(OneOf({"wrapped", "wrapped", "reamed", "sanded", "repaired", "unheard of"}));
  for (std::uint64_t n = Below(3); n > 0; --n) done->add_what(AnyId());
}

void RandomLog::Other(v1::Entry* entry) {
  switch (Below(4)) {
    case 0:
      entry->mutable_weighed()->mutable_mass()->set_g(Chance(0.1) ? Nonsense() : Between(1, 200));
      if (Chance(0.5)) entry->mutable_weighed()->add_what(AnyId());
      if (Chance(0.5)) SetMm(entry->mutable_weighed()->mutable_balance_from_butt(), 50, 900);
      break;
    case 1: {
      auto* calipered = entry->mutable_calipered();
      calipered->set_section(OneOf({"butt", "top"}));
      auto* row = calipered->mutable_taper()->add_stations();
      SetMm(row->mutable_at(), 0, 1000);
      SetMm(row->mutable_outer(), 2, 14);
      break;
    }
    case 2:
      entry->mutable_placed()->set_what(OneOf({"g1", "band", "cap", "module"}));
      SetMm(entry->mutable_placed()->mutable_place()->mutable_from_butt(), 0, 2200);
      break;
    default: entry->mutable_static_test()->set_line_touched(true);
  }
}

v1::Entry& RandomLog::AppendTo(v1::Design& design) {
  const int at = design.log_size();
  v1::Entry* entry = design.add_log();
  if (Chance(0.9)) entry->set_id("e" + std::to_string(Chance(0.02) ? Below(at + 1) : at));
  const auto several = [this](auto* ids) {
    for (std::uint64_t n = 1 + Below(2); n > 0; --n) *ids->Add() = AnyId();
  };
  switch (Below(12)) {
    case 0:
    case 1: Cut(entry->mutable_cut()); break;
    case 2:
    case 3: Fit(entry->mutable_fit()); break;
    case 4: several(entry->mutable_glued()->mutable_what()); break;
    case 5:
      entry->mutable_potted()->set_part(OneOf({"module", "module", "cap", "nobody"}));
      if (Chance(0.7)) entry->mutable_potted()->set_count(static_cast<std::uint32_t>(Chance(0.05) ? ~0u : Below(6)));
      break;
    case 6: several(entry->mutable_coated()->mutable_what()); break;
    case 7: Done(entry->mutable_done()); break;
    case 8: entry->mutable_correction()->set_entry("e" + std::to_string(Below(at + 2))); break;
    case 9: several(entry->mutable_removed()->mutable_what()); break;
    case 10: entry->mutable_breakage()->set_what(AnyId()); break;
    default: Other(entry);
  }
  return *entry;
}

}  // namespace withy
