#include "text_table.h"

#include <algorithm>
#include <cstddef>

namespace withy {

bool TextTable::IsBlank(std::size_t column) const {
  return std::all_of(rows_.begin(), rows_.end(), [column](const std::vector<std::string>& row) {
    return row[column].empty() || row[column] == "-";
  });
}

int TextTable::WidthOf(std::size_t column) const {
  int width = DisplayWidth(columns_[column].heading);
  for (const std::vector<std::string>& row : rows_) width = std::max(width, DisplayWidth(row[column]));
  return width;
}

std::string TextTable::Line(const std::vector<std::string>& cells) const {
  std::string line;
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    if (IsBlank(column)) continue;
    std::string cell = Visible(cells[column]);
    int width = WidthOf(column);
    line += "  ";
    line += columns_[column].align == Align::kLeft ? PaddedRight(cell, width) : PaddedLeft(cell, width);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::string TextTable::ToText(const TextStyle& style) const {
  if (rows_.empty()) return "";
  std::vector<std::string> headings;
  for (const Column& column : columns_) headings.push_back(column.heading);
  std::string text = Painted(Line(headings), Ink::kFaint, style) + "\n";
  for (const std::vector<std::string>& row : rows_) text += Line(row) + "\n";
  return text;
}

}  // namespace withy
