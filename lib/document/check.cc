#include <algorithm>
#include <string>
#include <vector>

#include "consistency_codes.h"
#include "ids.h"
#include "message_rules.h"
#include "quantities.h"
#include "reading_codes.h"
#include "schema_rules.h"
#include "spot.h"
#include "text_kinds.h"
#include "withy/document/document.h"
#include "words.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// One walk over a design, in the order of the schema.
class Checker {
 public:
  explicit Checker(const v1::Design& design) : ids_(design, rules_) {
    const Spot root;
    Walk(design, root);
  }
  std::vector<Finding> Take() { return std::move(findings_); }

 private:
  void Walk(const Message& message, const Spot& spot) {
    const MessageRules& rules = rules_.For(message.GetDescriptor());
    if (rules.id != nullptr) ids_.CheckId(message, rules.id, spot, findings_);
    CheckMessage(message, spot, findings_);
    const auto* reflection = message.GetReflection();
    for (const FieldRules& field : rules.fields) {
      if (!field.field->is_repeated()) {
        // Of a field without presence, the empty text is 'not known'.
        if (reflection->HasField(message, field.field)) CheckField(message, field, Spot{&spot, field.field}, -1);
        continue;
      }
      const int count = reflection->FieldSize(message, field.field);
      for (int i = 0; i < count; ++i) CheckField(message, field, Spot{&spot, field.field, i}, i);
    }
  }

  void CheckField(const Message& message, const FieldRules& field, const Spot& spot, int index) {
    switch (field.role) {
      case FieldRole::kMessage:
        return Enter(Child(message, field.field, index), field, spot);
      case FieldRole::kQuantity:
        return CheckQuantity(Child(message, field.field, index), field, spot, findings_);
      case FieldRole::kNumber:
        return CheckNumber(NumberIn(message, field.field), field, spot, findings_);
      case FieldRole::kWord:
        return CheckWord(TextIn(message, field.field, index), field, spot, findings_);
      case FieldRole::kReference:
        return ids_.CheckReference(TextIn(message, field.field, index), field, spot, findings_);
      case FieldRole::kText:
        return CheckText(TextIn(message, field.field, index), field.text_kind, spot, findings_);
      case FieldRole::kId:
      case FieldRole::kPlain:
        return;
    }
  }

  void Enter(const Message& child, const FieldRules& field, const Spot& spot) {
    // Data of plugins is judged by the plugins.
    if (field.field->is_map()) return;
    const FieldDescriptor* id_field = rules_.For(child.GetDescriptor()).id;
    if (id_field == nullptr || spot.index < 0) return Walk(child, spot);
    Spot with_id = spot;
    with_id.id = &child.GetReflection()->GetStringReference(child, id_field, &scratch_);
    Walk(child, with_id);
  }

  static const Message& Child(const Message& message, const FieldDescriptor* field, int index) {
    const auto* reflection = message.GetReflection();
    return index < 0 ? reflection->GetMessage(message, field) : reflection->GetRepeatedMessage(message, field, index);
  }

  const std::string& TextIn(const Message& message, const FieldDescriptor* field, int index) {
    const auto* reflection = message.GetReflection();
    return index < 0 ? reflection->GetStringReference(message, field, &scratch_)
                     : reflection->GetRepeatedStringReference(message, field, index, &scratch_);
  }

  static double NumberIn(const Message& message, const FieldDescriptor* field) {
    const auto* reflection = message.GetReflection();
    return field->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE ? reflection->GetDouble(message, field)
                                                                : reflection->GetUInt32(message, field);
  }

  SchemaRules rules_;
  Ids ids_;
  std::vector<Finding> findings_;
  std::string scratch_;  // never used by the generated classes, which give their own strings
};

// A quantity lacks its unit where the reader did not know the one that was written, and has said so.
void DropExplained(const Document& document, std::vector<Finding>& findings) {
  if (document.unknown.empty()) return;
  std::erase_if(findings, [&](const Finding& finding) {
    const std::string within = finding.at.ToString() + '.';
    return finding.code == kNoUnit.name &&
           std::any_of(document.unknown.begin(), document.unknown.end(),
                       [&](const UnknownField& field) { return field.at.ToString().starts_with(within); });
  });
}

}  // namespace

std::vector<Finding> CheckDocument(const Document& document) {
  std::vector<Finding> findings = Checker(document.design).Take();
  DropExplained(document, findings);
  // A design that was made in memory has not been through a reader, which would have said this.
  const bool was_read = !document.bytes.empty();
  const std::string& format = document.design.format();
  if (!was_read && format != "withy/1") {
    findings.push_back(
        format.empty() ? MakeFinding(kFormatMissing, FieldPath().Field("format"), "`format` is missing")
                       : MakeFinding(kFormatUnknown, FieldPath().Field("format"), "`format` is \"" + format + "\""));
  }
  return findings;
}

}  // namespace withy
