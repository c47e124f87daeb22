// What the texts of withy are put together from: title, headings, a figure a line, wrapped items.
#ifndef WITHY_REVIEW_TEXT_PARTS_H_
#define WITHY_REVIEW_TEXT_PARTS_H_

#include <string>
#include <string_view>

#include "withy/review/length_units.h"
#include "withy/review/terminal_text.h"
#include "withy/v1/design.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {

// Name of the rod, where it was read from, digest.
std::string TitleText(std::string_view file, const v1::Design& design, const v1::Report& report,
                      const TextStyle& style);

// An empty line and the heading.
std::string HeadingText(std::string_view text, const TextStyle& style);

// The heading with `body` below it; empty where the body is.
std::string SectionText(std::string_view heading, const std::string& body, const TextStyle& style);

// "  overall length        2209.8 mm": one figure with what it is, wrapped under itself.
std::string LineText(std::string_view label, std::string_view text, const TextStyle& style = {});

// "  at" and the text below it, indented and wrapped.
std::string ItemText(std::string_view at, std::string_view text, const TextStyle& style);

// "  - text", wrapped under itself.
std::string BulletText(std::string_view text, const TextStyle& style);

// "12.0 mm shorter than ordered".
std::string AgainstOrder(double short_mm, LengthUnits units);

}  // namespace withy

#endif  // WITHY_REVIEW_TEXT_PARTS_H_
