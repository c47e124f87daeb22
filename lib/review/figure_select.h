// The inputs of a declared figure (withy/rod/figure.h) as places in one report or design.
//
//   FigureContext context(report, path);                    // fit.parts[module].start_mm
//   Selected found = Select("handle.parts[=].length", design, context);
//   found.there                                             // handle.parts[module].length
#ifndef WITHY_REVIEW_FIGURE_SELECT_H_
#define WITHY_REVIEW_FIGURE_SELECT_H_

#include <google/protobuf/message.h>

#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "withy/findings/field_path.h"

namespace withy {

// What the brackets of a declaration compare with: the messages that a figure stands in.
class FigureContext {
 public:
  FigureContext(const google::protobuf::Message& report, const FieldPath& figure);

  // What an item says of where its subject stands in the design; empty = nothing.
  FieldPath Subject() const;
  bool StandsIn(const google::protobuf::Message& message) const;
  // Whether `id` is that of a message it stands in, or of the part that one is about.
  bool IsAbout(const std::string& id) const;
  // The texts of field `name` in the innermost message that has it; of a dotted name those at that path of the report.
  std::vector<std::string> TextsOf(const std::string& name) const;

 private:
  const google::protobuf::Message& report_;
  std::vector<const google::protobuf::Message*> around_;  // outermost first
  std::vector<std::string> ids_;
};

struct Selected {
  std::vector<FieldPath> there;  // in order; fields that are set, and lists that are not empty
  std::vector<FieldPath> unset;  // the others, as far as the messages around them are there
};
Selected Select(std::string_view declared, const google::protobuf::Message& root, const FigureContext& context);

// "a|b" as a and b.
std::vector<std::string_view> AlternativesOf(std::string_view declared);

// The names of one list's items, asked for in order: the id, or nothing where it has none or an earlier one has the
// same.
class ItemNames {
 public:
  std::string NameOf(const google::protobuf::Message& item);

 private:
  std::unordered_set<std::string> seen_;
};

// `path` with each item by its id, or by its number where an earlier item has the same id; numbers are filled in.
FieldPath Unambiguous(const FieldPath& path, const google::protobuf::Message& root);
// The same path, ids left out: what a figure is looked up by.
std::string ByNumber(const FieldPath& path);

// "fit.parts[].start_mm" of "fit.parts[module].start_mm"; an item of a list of plain values is the list.
std::string DeclaredName(const FieldPath& path, const google::protobuf::Descriptor& root);

// Whether a declared path can exist in a message of that type, brackets and the fields they name included.
bool CanExist(std::string_view declared, const google::protobuf::Descriptor& root);

// A declared path without what stands in its brackets: "handle.parts[].length". A bracket behind what is no list falls
// away.
std::string Plain(std::string_view declared, const google::protobuf::Descriptor& root);

}  // namespace withy

#endif  // WITHY_REVIEW_FIGURE_SELECT_H_
