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

}  // namespace withy

#endif  // WITHY_REVIEW_FIGURE_SELECT_H_
