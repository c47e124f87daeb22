#include "text_table.h"

#include <algorithm>
#include <cstddef>

namespace withy {

bool TextTable::IsBlank(std::size_t column) const {
  return std::all_of(rows_.begin(), rows_.end(), [column](const std::vector<std::string>& row) {
    return row[column].empty() || row[column] == "-";
  });
}

std::optional<int> TextTable::WidthOf(std::size_t column) const {
  if (IsBlank(column)) return std::nullopt;
  int width = DisplayWidth(columns_[column].heading);
  for (const std::vector<std::string>& row : rows_) width = std::max(width, DisplayWidth(row[column]));
  return width;
}

std::string TextTable::Line(const std::vector<std::string>& cells, const Widths& widths) const {
  std::string line;
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    if (!widths[column]) continue;
    const std::string cell = Visible(cells[column]);
    line += "  ";
    line += columns_[column].align == Align::kLeft ? PaddedRight(cell, *widths[column])
                                                   : PaddedLeft(cell, *widths[column]);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::string TextTable::ToText(const TextStyle& style) const {
  if (rows_.empty()) return "";
  std::vector<std::string> headings;
  Widths widths;
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    headings.push_back(columns_[column].heading);
    widths.push_back(WidthOf(column));
  }
  std::string text = Painted(Line(headings, widths), Ink::kFaint, style) + "\n";
  for (const std::vector<std::string>& row : rows_) text += Line(row, widths) + "\n";
  return text;
}

}  // namespace withy
