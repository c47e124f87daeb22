#include "align_rows.h"

#include <algorithm>
#include <string_view>

#include "utf8.h"

namespace withy {
namespace {

bool SameColumn(const Cell& a, const Cell& b) {
  if (a.kind == Cell::Kind::kStructure || b.kind == Cell::Kind::kStructure) return a.kind == b.kind && a.text == b.text;
  return true;
}

// How many leading cells of each row stand in one column with those of the row before it.
std::vector<std::size_t> Shared(const std::vector<Row>& rows) {
  std::vector<std::size_t> shared(rows.size(), rows.front().size());
  for (std::size_t r = 1; r < rows.size(); ++r) {
    const Row &above = rows[r - 1], &row = rows[r];
    std::size_t n = 0;
    while (n < std::min(above.size(), row.size()) && SameColumn(above[n], row[n])) ++n;
    shared[r] = n;
  }
  return shared;
}

bool OnlyBracesFollow(const Row& row, std::size_t column) {
  return std::all_of(row.begin() + static_cast<std::ptrdiff_t>(column) + 1, row.end(),
                     [](const Cell& cell) { return cell.text == "}"; });
}

// Characters before the place at which the cells of a column meet: of a number its decimal point.
std::size_t Before(const Cell& cell) {
  if (cell.kind != Cell::Kind::kNumber) return 0;
  return std::min(cell.text.find_first_of(".eE"), cell.text.size());
}

// Pads column `column` of the rows [begin, end), which all have it. What ends its row needs no room behind it.
void Pad(std::vector<Row>& rows, std::size_t begin, std::size_t end, std::size_t column) {
  std::size_t before = 0, after = 0;
  for (std::size_t r = begin; r < end; ++r) {
    const Cell& cell = rows[r][column];
    before = std::max(before, Before(cell));
    after = std::max(after, CodePoints(cell.text) - Before(cell));
  }
  for (std::size_t r = begin; r < end; ++r) {
    Cell& cell = rows[r][column];
    const std::size_t left = cell.kind == Cell::Kind::kNumber ? before - Before(cell) : 0;
    const std::size_t right = before + after - left - CodePoints(cell.text);
    cell.text.insert(0, left, ' ');
    if (!OnlyBracesFollow(rows[r], column)) cell.text.append(right, ' ');
  }
}

std::vector<std::string> JoinedAll(const std::vector<Row>& rows) {
  std::vector<std::string> lines;
  for (const Row& row : rows) lines.push_back(Joined(row));
  return lines;
}

}  // namespace

std::string Joined(const Row& row) {
  std::string line;
  for (const Cell& cell : row) line.append(line.empty() ? "" : " ").append(cell.text);
  return line;
}

std::vector<std::string> AlignedRows(const std::vector<Row>& rows, std::size_t room) {
  if (rows.size() < 2) return JoinedAll(rows);
  const std::vector<std::size_t> shared = Shared(rows);
  std::size_t columns = 0;
  for (const Row& row : rows) columns = std::max(columns, row.size());
  std::vector<Row> padded = rows;
  for (std::size_t column = 0; column < columns; ++column) {
    for (std::size_t begin = 0; begin < rows.size();) {
      std::size_t end = begin + 1;
      while (end < rows.size() && shared[end] > column) ++end;
      // Of a row that ends or differs before this column nothing more is padded.
      if (end - begin > 1 && rows[begin][column].kind != Cell::Kind::kStructure) Pad(padded, begin, end, column);
      begin = end;
    }
  }
  std::vector<std::string> lines = JoinedAll(padded);
  const bool fits = std::all_of(lines.begin(), lines.end(), [&](const auto& line) { return line.size() <= room; });
  return fits ? lines : JoinedAll(rows);
}

}  // namespace withy
