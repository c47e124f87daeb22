// The host's modules. Where no C++ function is named, modules/NAME.lua defines it.
#include "api_table.h"
#include "module_units.h"

namespace withy::plugin {
namespace {

ApiModule TextModule() {
  return {
      "withy.text",
      "Text for tables, sheets and files. Widths count characters.",
      {
          {"trim", "(s: string): string", "Without white space at both ends."},
          {"lines", "(s: string): string[]",
           "Lines without their breaks (`\\n` or `\\r\\n`); no empty one after the last break."},
          {"split", "(s: string, separator: string): string[]", "Parts between the separators, which are plain text."},
          {"wrap", "(s: string, width: integer): string[]",
           "Lines of at most `width` characters, broken at white space."},
          {"pad", "(s: string, width: integer, align?: string): string",
           "With blanks up to `width`; `align` is \"left\" (unless given) or \"right\"."},
          {"fixed", "(x: number, decimals?: integer): string",
           "With that many decimals (none unless given); never \"-0\"."},
          {"uncertain", "(value: number?, plus_minus: number?, decimals?: integer): string",
           "\"12.3 ± 0.4\", both with that many decimals (none unless given); without what is nil, and \"not known\" "
           "where that is the value."},
          {"clipped", "(s: string, most: integer): string",
           "At most that many characters (one or more), the last of them an ellipsis where something was left out."},
          {"csv_row", "(cells: any[], separator?: string): string",
           "One row as RFC 4180 writes it, without a line break; a fraction has at most six decimals."},
          {"csv_cells", "(line: string, separator?: string): string[]?, string?",
           "The cells of one row as RFC 4180 writes it; or nil and what is wrong (a quote that is not closed)."},
      }};
}

ApiModule TableModule() {
  return {"withy.table",
          "New lists from lists, those of the design included. The list that is given stays as it is.",
          {
              {"sort_by", "(items: any[], key?: any): any[]",
               "In ascending order of a key (a field's name, or a function of the item); equal ones keep their order."},
              {"map", "(items: any[], f: function): any[]", "What `f` makes of each."},
              {"filter", "(items: any[], f: function): any[]", "Those that `f` is true of."},
              {"find", "(items: any[], f: function): any", "The first that `f` is true of, or nil."},
              {"sum", "(items: any[], key?: any): number", "Sum of the items or of a key; nil counts as nothing."},
              {"at_most", "(numbers: number[], most: number): number",
               "Of numbers in ascending order the largest that is not above `most`, else the first."},
              {"at_least", "(numbers: number[], least: number): number",
               "Of numbers in ascending order the smallest that is not below `least`, else the last."},
          }};
}

ApiModule HtmlModule() {
  return {"withy.html",
          "HTML as nodes. Text is escaped; attributes come in alphabetical order.",
          {
              {"element", "(name: string, attributes: table, ...: any): Node",
               "An element. Children are text, numbers (at most three decimals), nodes and lists of these; nil is left "
               "out. An "
               "attribute that is true has no value; false leaves it out."},
              {"table", "(options: table): Node",
               "A table of `head`, `rows`, `align` (\"left\", \"right\", \"center\" by column) and `class`."},
              {"page", "(options: table): string",
               "A whole document of `title`, `style` (CSS), `body` and `language` (\"en\")."},
              {"escape", "(s: string): string",
               "Text that stands for itself in HTML, SVG and attributes; control characters become a visible sign."},
              {"render", "(node: Node): string", "A node as text."},
          }};
}

ApiModule SvgModule() {
  return {
      "withy.svg",
      "Drawings at true scale: every number is in millimetres. Nodes are those of withy.html.",
      {
          {"drawing", "(width: number, height: number, ...: any): Node", "The whole drawing; x to the right, y down."},
          {"line", "(x1: number, y1: number, x2: number, y2: number, attributes?: table): Node", "A straight line."},
          {"rect", "(x: number, y: number, width: number, height: number, attributes?: table): Node", "A rectangle."},
          {"circle", "(x: number, y: number, radius: number, attributes?: table): Node", "A circle about (x, y)."},
          {"polyline", "(points: number[][], attributes?: table): Node", "An open line through points `{ x, y }`."},
          {"polygon", "(points: number[][], attributes?: table): Node", "A closed line through points `{ x, y }`."},
          {"path", "(d: string, attributes?: table): Node", "A path in the language of SVG."},
          {"text", "(x: number, y: number, s: string, attributes?: table): Node", "Text that begins at (x, y)."},
          {"group", "(attributes: table, ...: any): Node", "Nodes with attributes in common."},
          {"element", "(name: string, attributes: table, ...: any): Node", "Any other element."},
          {"render", "(drawing: Node): string", "A drawing as a file of its own."},
      }};
}

ApiModule SheetModule() {
  return {"withy.sheet",
          "Paper: sizes, style sheets and true scale.",
          {
              {"paper", "(name: string): table",
               "\"A4\", \"Letter\", \"A3\" or \"Tabloid\" as `{ name, width_mm, height_mm }`."},
              {"style", "(options?: table): string",
               "CSS for printing in black and white: `paper`, `margin_mm` (12), `landscape`. Without a paper it fits "
               "A4 and Letter."},
              {"scale_bar", "(length_mm: number): Node",
               "A drawing of a rule, to see whether a page was printed at 100 %."},
              {"tiles", "(length_mm: number, page_mm: number, overlap_mm?: number): table[]",
               "A long strip on pages: `{ start_mm, end_mm }` each."},
          }};
}

}  // namespace

ApiModule LengthsModule() {
  return {"withy.lengths",
          "Lengths along the rod in the units that a setting `units` of an exporter asks for: \"mm\", \"inch\", or "
          "\"design\" for those of the design.",
          {
              {"asked", "(ctx: Context): Lengths",
               "`unit` (\"mm\" or \"in\"), `mm` (of one unit), and `say(mm, plus_minus?)`: whole millimetres or "
               "sixteenths of an inch, with a plus-minus as many decimals as it has a use for. Refuses where the setting is "
               "none of the three."},
          }};
}

const std::vector<ApiModule>& ApiModules() {
  static const std::vector<ApiModule> modules = {SvgModule(),  SheetModule(), HtmlModule(),   UnitsModule(),
                                                 TextModule(), TableModule(), LengthsModule()};
  return modules;
}

}  // namespace withy::plugin
