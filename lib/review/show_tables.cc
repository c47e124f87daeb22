#include "show_tables.h"

#include "figure_text.h"
#include "text_table.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

using Align = TextTable::Align;
constexpr int kEighths = 8;

std::optional<double> End(std::optional<double> start, std::optional<double> length) {
  return start && length ? std::optional<double>(*start + *length) : std::nullopt;
}

const v1::Part* PartById(const v1::Design& design, const std::string& id) {
  for (const v1::Part& part : design.handle().parts()) {
    if (part.id() == id) return &part;
  }
  return nullptr;
}

// "arbor, 3 turns"
std::string ArborKind(const v1::FittedArbor& arbor) {
  return arbor.has_turns() ? "arbor, " + Counted(static_cast<int>(arbor.turns()), "turn") : "arbor";
}

// "module" of handle.parts[module], "module weights" of what lies inside it, "tip bond" of tip_top.bond.
std::string MassLabel(const v1::PlacedPart& part) {
  if (part.id().empty()) return part.at();
  const std::string owner = "[" + part.id() + "].";
  const std::size_t inside = part.at().find(owner);
  if (inside != std::string::npos) return part.id() + " " + part.at().substr(inside + owner.size());
  const bool alone = part.at().find('[') == std::string::npos;  // a thing that there is one of
  const std::size_t point = alone ? part.at().find('.') : std::string::npos;
  return point == std::string::npos ? part.id() : part.id() + " " + part.at().substr(point + 1);
}

}  // namespace

std::string SectionsTable(const v1::Report& report, const ShowOptions& options) {
  std::string unit = UnitName(options.units);
  TextTable table({{"section", Align::kLeft},
                   {"cut butt"},
                   {"cut tip"},
                   {"length " + unit},
                   {"mass g"},
                   {"balance " + unit},
                   {"mass is", Align::kLeft}});
  for (const v1::SectionReport& section : report.sections().sections()) {
    table.AddRow({section.id(), AlongText(WITHY_FIGURE(section, cut_butt_mm), options.units),
                  AlongText(WITHY_FIGURE(section, cut_tip_mm), options.units),
                  AlongText(WITHY_FIGURE(section, length_mm), options.units),
                  UncertainText(WITHY_FIGURE(section, mass_g), WITHY_FIGURE(section, mass_plus_minus_g), 1),
                  AlongText(WITHY_FIGURE(section, balance_from_butt_mm), options.units), section.mass_from()});
  }
  return table.ToText(options.style);
}

std::string HandleTable(const v1::Design& design, const v1::Report& report, const ShowOptions& options) {
  std::string unit = UnitName(options.units);
  TextTable table({{"part", Align::kLeft},
                   {"kind", Align::kLeft},
                   {"from " + unit},
                   {"to " + unit},
                   {"blank mm"},
                   {"clearance mm"}});
  for (const v1::FittedPart& part : report.fit().parts()) {
    const v1::Part* written = PartById(design, part.id());
    std::optional<double> start = WITHY_FIGURE(part, start_mm);
    table.AddRow({part.id(), written ? written->kind() : "", AlongText(start, options.units),
                  AlongText(End(start, WITHY_FIGURE(part, length_mm)), options.units),
                  FigureText(WITHY_FIGURE(part, blank_at_start_mm), 2),
                  FigureText(WITHY_FIGURE(part, clearance_mm), 2)});
    for (const v1::FittedArbor& arbor : part.arbors()) {
      std::optional<double> edge = WITHY_FIGURE(arbor, start_mm);
      table.AddRow({"  " + arbor.id(), ArborKind(arbor), AlongText(edge, options.units),
                    AlongText(End(edge, WITHY_FIGURE(arbor, length_mm)), options.units),
                    FigureText(WITHY_FIGURE(arbor, blank_mm), 2), kNotKnown});
    }
  }
  return table.ToText(options.style);
}

std::string GuidesTable(const v1::Report& report, const ShowOptions& options) {
  TextTable table({{"guide", Align::kLeft},
                   {"model", Align::kLeft},
                   {"from tip-top mm"},
                   {"in"},
                   {"ring mm"},
                   {"height mm"},
                   {"blank mm"}});
  for (const v1::PlacedGuide& guide : report.guides().guides()) {
    std::optional<double> from_tip = WITHY_FIGURE(guide, from_tip_mm);
    table.AddRow({guide.id(), guide.model(), FigureText(from_tip, 1),
                  from_tip ? FormatInches(Length::Mm(*from_tip), kEighths) : kNotKnown,
                  FigureText(WITHY_FIGURE(guide, ring_inner_mm), 1), FigureText(WITHY_FIGURE(guide, ring_height_mm), 1),
                  FigureText(WITHY_FIGURE(guide, blank_diameter_mm), 2)});
  }
  return table.ToText(options.style);
}

std::string WrapsTable(const v1::Report& report, const ShowOptions& options) {
  TextTable table({{"wrap", Align::kLeft},
                   {"on", Align::kLeft},
                   {"thread", Align::kLeft},
                   {"from " + UnitName(options.units)},
                   {"length mm"},
                   {"turns"},
                   {"thread m"}});
  for (const v1::PlacedWrap& wrap : report.wraps().wraps()) {
    std::optional<double> thread_mm = WITHY_FIGURE(wrap, thread_length_mm);
    table.AddRow({wrap.id(), wrap.on(), wrap.thread(), AlongText(WITHY_FIGURE(wrap, start_mm), options.units),
                  FigureText(WITHY_FIGURE(wrap, length_mm), 1), FigureText(WITHY_FIGURE(wrap, turns), 0),
                  thread_mm ? FormatFixed(*thread_mm / 1000, 2) : kNotKnown});
  }
  return table.ToText(options.style);
}

std::string MassTable(const v1::Report& report, const ShowOptions& options) {
  TextTable table(
      {{"part", Align::kLeft}, {"mass g"}, {"centre " + UnitName(options.units)}, {"mass is", Align::kLeft}});
  for (const v1::PlacedPart& part : report.balance().parts()) {
    table.AddRow({MassLabel(part), UncertainText(WITHY_FIGURE(part, mass_g), WITHY_FIGURE(part, mass_plus_minus_g), 2),
                  AlongText(WITHY_FIGURE(part, center_mm), options.units), part.mass_from()});
  }
  return table.ToText(options.style);
}

}  // namespace withy
