// Rows of a table in the text form: neighbouring one-line messages of one field, such as the stations of a taper.
#ifndef WITHY_DOCUMENT_ALIGN_ROWS_H_
#define WITHY_DOCUMENT_ALIGN_ROWS_H_

#include <cstddef>
#include <string>
#include <vector>

namespace withy {

// One token of a row.
struct Cell {
  enum class Kind { kStructure, kNumber, kWord };  // names and braces; numbers; other values
  std::string text;
  Kind kind = Kind::kStructure;
};
using Row = std::vector<Cell>;

// The tokens of a row, parted by one space.
std::string Joined(const Row& row);

// The rows as lines, values padded so that they stand under each other as far as the rows have the same names and braces:
// numbers by their decimal point, other values to the left. Depends on nothing but the tokens. Where a line would be
// longer than `room` bytes, no row is padded.
std::vector<std::string> AlignedRows(const std::vector<Row>& rows, std::size_t room);

}  // namespace withy

#endif  // WITHY_DOCUMENT_ALIGN_ROWS_H_
