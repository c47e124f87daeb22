#include "ids.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "consistency_codes.h"
#include "field_words.h"
#include "withy/findings/nearest_name.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// "GuideModel" -> "guide model".
std::string Spoken(std::string_view message) {
  std::string out;
  for (char c : message) {
    const bool capital = c >= 'A' && c <= 'Z';
    if (capital && !out.empty()) out += ' ';
    out += capital ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

std::string SpokenList(const std::vector<std::string_view>& messages) {
  std::vector<std::string> spoken;
  for (std::string_view message : messages) spoken.push_back(Spoken(message));
  return absl::StrJoin(spoken, " or ");
}

// Log entries and bench readings are records: they have a place in a list, and only a correction names one.
bool NeedsId(const Descriptor* kind) {
  return kind->name() != "Entry" && kind->name() != "BenchReading";
}

bool IsAddressable(const std::string& id) {
  const auto breaks = [](char c) {
    return static_cast<unsigned char>(c) < 0x20 || c == 0x7f || c == '[' || c == ']' || c == '"' || c == '\\';
  };
  if (std::any_of(id.begin(), id.end(), breaks) || id.front() == ' ' || id.back() == ' ') return false;
  return id.find_first_not_of("0123456789") != std::string::npos;
}

}  // namespace

Ids::Ids(const Message& design, SchemaRules& rules) {
  Collect(design, rules);
}

void Ids::Collect(const Message& message, SchemaRules& rules) {
  const MessageRules& mine = rules.For(message.GetDescriptor());
  const auto* reflection = message.GetReflection();
  if (mine.id != nullptr) {
    std::string scratch;
    const std::string& id = reflection->GetStringReference(message, mine.id, &scratch);
    if (!id.empty()) {
      const auto [entry, added] = entries_.try_emplace(id);
      if (added) entry->second.kind = message.GetDescriptor();
      entry->second.repeated = !added;
    }
  }
  for (const FieldRules& field : mine.fields) {
    if (field.role != FieldRole::kMessage || field.field->is_map() || !rules.For(field.field->message_type()).holds_ids)
      continue;
    if (!field.field->is_repeated()) {
      if (reflection->HasField(message, field.field)) Collect(reflection->GetMessage(message, field.field), rules);
      continue;
    }
    const int count = reflection->FieldSize(message, field.field);
    for (int i = 0; i < count; ++i) Collect(reflection->GetRepeatedMessage(message, field.field, i), rules);
  }
}

void Ids::CheckId(const Message& thing, const FieldDescriptor* id_field, const Spot& spot,
                  std::vector<Finding>& findings) {
  std::string scratch;
  const std::string& id = thing.GetReflection()->GetStringReference(thing, id_field, &scratch);
  const std::string kind = Spoken(thing.GetDescriptor()->name());
  if (id.empty()) {
    if (NeedsId(thing.GetDescriptor()))
      findings.push_back(MakeFinding(kMissingId, spot.Path(), absl::StrCat("this ", kind, " has no id")));
    return;
  }
  if (!IsAddressable(id)) {
    findings.push_back(MakeFinding(kBadId, spot.Path().Field("id"), absl::StrCat("`", id, "` is awkward to refer to")));
  }
  Entry& entry = entries_.find(id)->second;
  if (!entry.repeated) return;
  // By number: the id would lead to the first of them.
  Spot numbered = spot;
  numbered.id = nullptr;
  if (!entry.met) {
    entry.met = true;
    entry.first = numbered.Path();
    return;
  }
  findings.push_back(MakeFinding(kDuplicateId, numbered.Path().Field("id"),
                                 absl::StrCat("`", id, "` is the id of ", entry.first.ToString(), " already")));
  findings.back().related.push_back(entry.first);
}

void Ids::CheckReference(const std::string& id, const FieldRules& field, const Spot& spot,
                         std::vector<Finding>& findings) {
  const auto found = entries_.find(id);
  if (found == entries_.end()) return ReportUnknown(id, field, spot, findings);
  const std::string& kind = found->second.kind->name();
  if (found->second.repeated || std::find(field.names.begin(), field.names.end(), kind) != field.names.end()) return;
  findings.push_back(
      MakeFinding(kWrongReference, spot.Path(),
                  absl::StrCat("`", id, "` is a ", Spoken(kind), "; this names a ", SpokenList(field.names))));
}

void Ids::ReportUnknown(const std::string& id, const FieldRules& field, const Spot& spot,
                        std::vector<Finding>& findings) {
  std::string message = absl::StrCat("no ", SpokenList(field.names), " has the id `", id, "`");
  if (suggestions_left_-- > 0) {
    std::vector<std::string_view> known;
    for (const auto& [name, entry] : entries_) {
      if (std::find(field.names.begin(), field.names.end(), entry.kind->name()) != field.names.end())
        known.push_back(name);
    }
    std::sort(known.begin(), known.end());
    absl::StrAppend(&message, DidYouMean(NearestName(id, known)));
  }
  findings.push_back(MakeFinding(kUnknownId, spot.Path(), message));
}

}  // namespace withy
