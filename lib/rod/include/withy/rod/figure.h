// A figure of the report as one declares it beside the code that works it out: formula, source, and what goes in. `withy
// why` opens a figure by these, down to what the author wrote (withy/review/why.h).
//
//   {.name = "sections.sections[].length_mm",
//    .formula = "length as supplied less both cuts",
//    .source = "plane geometry",
//    .from = {"blank.sections[=].length", "sections.sections[=].cut_butt_mm", "sections.sections[=].cut_tip_mm"}}
//
// Paths are those of the report, or else of the design, in the names of the schema. A list's items are chosen in brackets:
//
//   []                 all
//   [=]                the one that the figure is about: whose id is that of an item, or of the part, that it stands in
//   [section=]         those whose field `section` is that id; a dotted name looks inside: [cut.section=]
//   [id=.thread]       those whose `id` is the field `thread` of the item that the figure stands in; a dotted name is that
//                      of the whole report: [id=.fit.cut_plan.host]
//   [at+.bond=.at]     likewise, with `.bond` behind what the field says
//   [at_end=TIP]       those whose field is that word; [at_end!=TIP] the others
//   [weighed.what=none]  those whose field is empty
//   [section=&at_end=TIP]  both
//
// `=` on what is no list asks the same of that one thing: `tip_top[=].mass`. `@Part.mass` is the field `mass` of what the item's
// own `at` names, if that is a Part. Of "a|b" the first that is there goes in. Tests hold the declarations to the schema:
// every result has one, every path exists, and nothing is worked out from itself.
#ifndef WITHY_ROD_FIGURE_H_
#define WITHY_ROD_FIGURE_H_

#include <string_view>
#include <vector>

namespace withy {

// All text is static.
struct Figure {
  std::string_view name;     // path in the report, `[]` for the items of a list
  std::string_view formula;  // what the code does, one line in words and symbols
  std::string_view source;   // book, standard, "own derivation: ...", or "common practice, no source"
  std::vector<std::string_view> from;  // what goes in, the weightiest first; empty = nothing that is written down
};

// Those of resolve itself: what the log has closed.
std::vector<Figure> RodFigures();

}  // namespace withy

#endif  // WITHY_ROD_FIGURE_H_
