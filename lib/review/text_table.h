// Columns of text, each as wide as its widest cell.
#ifndef WITHY_REVIEW_TEXT_TABLE_H_
#define WITHY_REVIEW_TEXT_TABLE_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/review/terminal_text.h"

namespace withy {

class TextTable {
 public:
  enum class Align { kLeft, kRight };
  struct Column {
    std::string heading;
    Align align = Align::kRight;
  };
  explicit TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {}

  // One cell per column. Cells are made printable here.
  void AddRow(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }

  // Two blanks of margin, two between columns, headings faint, no blanks at line ends. Columns in which no row has
  // anything but "-" are left out: nothing is known there. Empty without rows.
  std::string ToText(const TextStyle& style) const;

 private:
  using Widths = std::vector<std::optional<int>>;  // by column; unset = left out

  bool IsBlank(std::size_t column) const;
  std::optional<int> WidthOf(std::size_t column) const;
  std::string Line(const std::vector<std::string>& cells, const Widths& widths) const;

  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace withy

#endif  // WITHY_REVIEW_TEXT_TABLE_H_
