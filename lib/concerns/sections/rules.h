// The rules of this concern, in groups of one file each.
#ifndef WITHY_SECTIONS_RULES_H_
#define WITHY_SECTIONS_RULES_H_

#include <string>
#include <string_view>
#include <vector>

#include "withy/findings/rule.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy::sections {

struct View {
  const Rod& rod;
  const SectionsAnswers& answers;
};

std::vector<Rule<View>> TaperRules();  // a table as a whole
std::vector<Rule<View>> RowRules();    // one row against the rows beside it
std::vector<Rule<View>> WallRules();   // one row: wall, inner diameter, roundness
std::vector<Rule<View>> PieceRules();  // the piece as a whole: mass, balance point, spare
std::vector<Rule<View>> MassRules();   // its mass against what else is known of it
std::vector<Rule<View>> CutRules();    // what comes off it

// A finding about one field of a row of a section's table ("" = the row), with its place on the rod.
Finding AtRow(const View& view, const Code& code, const Section& section, const Station& row, std::string_view field,
              std::string message, std::vector<Number> numbers = {});

// What the straight line between two rows says at a third, `x` between `x0` and `x1`.
inline double Between(double x0, double y0, double x1, double y1, double x) {
  return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : (y0 + y1) / 2;
}

}  // namespace withy::sections

#endif  // WITHY_SECTIONS_RULES_H_
