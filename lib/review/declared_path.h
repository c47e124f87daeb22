// Paths as figures declare them (withy/rod/figure.h): taken apart, and held against the schema.
//
//   SegmentsOf("handle.parts[=].mass")        // handle; parts with "="; mass
//   ConditionsOf("section=&at_end!=TIP")      // the field section is one of the figure's ids, at_end is not TIP
#ifndef WITHY_REVIEW_DECLARED_PATH_H_
#define WITHY_REVIEW_DECLARED_PATH_H_

#include <google/protobuf/descriptor.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "withy/findings/field_path.h"

namespace withy {

// Begins a path within what the item's `at` names, with the message that has to stand there: "@Part.mass".
inline constexpr char kSubject = '@';

// One name of a declared path, with what stands in its brackets.
struct DeclaredSegment {
  std::string name;
  std::optional<std::string> selector;
};

std::vector<DeclaredSegment> SegmentsOf(std::string_view declared);

// As a value: where the field says nothing.
inline constexpr std::string_view kNone = "none";

// "section=", "at_end!=TIP", "id=.thread", "at+.bond=.at", "=".
struct ItemCondition {
  std::string field, ending, value;
  bool equal = true;
};

std::vector<ItemCondition> ConditionsOf(const std::string& selector);

// "a|b" as a and b.
std::vector<std::string_view> AlternativesOf(std::string_view declared);

// "fit.parts[].start_mm" of "fit.parts[module].start_mm"; an item of a list of plain values is the list.
std::string DeclaredName(const FieldPath& path, const google::protobuf::Descriptor& root);

// Whether a declared path can exist in a message of that type, brackets and the fields they name included.
bool CanExist(std::string_view declared, const google::protobuf::Descriptor& root);

// A declared path without what stands in its brackets: "handle.parts[].length". A bracket behind what is no list falls
// away.
std::string Plain(std::string_view declared, const google::protobuf::Descriptor& root);

}  // namespace withy

#endif  // WITHY_REVIEW_DECLARED_PATH_H_
