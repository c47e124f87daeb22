#include "support/mutation.h"

#include <google/protobuf/descriptor.pb.h>
#include <google/protobuf/unknown_field_set.h>
#include <google/protobuf/util/message_differencer.h>

#include <cmath>
#include <memory>

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;
using Visit = std::function<void(const std::string&)>;

double NextDouble(double value) {
  return std::nextafter(value, value < 1 ? 2 : 0);
}

// A set scalar becomes another one that is not its default.
void ChangeScalar(Message* message, const FieldDescriptor* field) {
  const Reflection* reflection = message->GetReflection();
  switch (field->cpp_type()) {
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return reflection->SetDouble(message, field, NextDouble(reflection->GetDouble(*message, field)));
    case FieldDescriptor::CPPTYPE_STRING:
      return reflection->SetString(message, field, reflection->GetString(*message, field) + "~");
    case FieldDescriptor::CPPTYPE_ENUM:
      return reflection->SetEnumValue(message, field, reflection->GetEnumValue(*message, field) == 1 ? 2 : 1);
    case FieldDescriptor::CPPTYPE_UINT32:
      return reflection->SetUInt32(message, field, reflection->GetUInt32(*message, field) ^ 4096U);
    case FieldDescriptor::CPPTYPE_BOOL:
      return reflection->SetBool(message, field, !reflection->GetBool(*message, field));
    default:
      return;
  }
}

void AddScalar(Message* message, const FieldDescriptor* field) {
  const Reflection* reflection = message->GetReflection();
  if (field->cpp_type() == FieldDescriptor::CPPTYPE_STRING) reflection->AddString(message, field, "");
  if (field->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE) reflection->AddDouble(message, field, 0);
}

// A field with presence may be set to its default and then says something; another may not.
void SetAbsent(Message* message, const FieldDescriptor* field) {
  const Reflection* reflection = message->GetReflection();
  if (field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE) {
    reflection->MutableMessage(message, field);
  } else if (!field->has_presence()) {
    ChangeScalar(message, field);
  } else if (field->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE) {
    reflection->SetDouble(message, field, 0);
  } else if (field->cpp_type() == FieldDescriptor::CPPTYPE_UINT32) {
    reflection->SetUInt32(message, field, 0);
  } else {
    ChangeScalar(message, field);
  }
}

bool IsNull(const FieldDescriptor* field) {
  return field->full_name() == "google.protobuf.Value.null_value";
}

class Mutator {
 public:
  explicit Mutator(const Visit& visit) : visit_(visit) {}

  void Walk(Message* message, const std::string& path) {
    const Descriptor* type = message->GetDescriptor();
    for (int i = 0; i < type->field_count(); ++i) {
      const FieldDescriptor* field = type->field(i);
      const std::string at = path.empty() ? field->name() : path + "." + field->name();
      if (field->is_repeated()) {
        List(message, field, at);
      } else if (message->GetReflection()->HasField(*message, field)) {
        Present(message, field, at);
      } else if (!IsNull(field)) {  // a Value that is unset is null already
        Try(message, at + " set", [&] { SetAbsent(message, field); });
      }
    }
    Unknown(message, path);
  }

 private:
  void Try(Message* message, const std::string& what, const std::function<void()>& change) {
    const std::unique_ptr<Message> before(message->New());
    before->CopyFrom(*message);
    change();
    visit_(what);
    message->CopyFrom(*before);
  }

  void Present(Message* message, const FieldDescriptor* field, const std::string& at) {
    const Reflection* reflection = message->GetReflection();
    const bool is_message = field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE;
    if (is_message) Walk(reflection->MutableMessage(message, field), at);
    if (IsNull(field)) return;
    if (!is_message) Try(message, at + " changed", [&] { ChangeScalar(message, field); });
    if (field->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE) {
      Try(message, at + " negated",
          [&] { reflection->SetDouble(message, field, -reflection->GetDouble(*message, field)); });
    }
    Try(message, at + " cleared", [&] { reflection->ClearField(message, field); });
  }

  void List(Message* message, const FieldDescriptor* field, const std::string& at) {
    const Reflection* reflection = message->GetReflection();
    const bool is_message = field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE;
    const int size = reflection->FieldSize(*message, field);
    for (int i = 0; i < size; ++i) {
      const std::string item = at + "[" + std::to_string(i) + "]";
      if (field->is_map()) {
        Entry(message, field, i, item);
      } else if (is_message) {
        Walk(reflection->MutableRepeatedMessage(message, field, i), item);
      }
      if (!field->is_map() && i > 0 && Differ(*message, field, i - 1, i)) {
        Try(message, item + " swapped", [&] { reflection->SwapElements(message, field, i - 1, i); });
      }
    }
    if (size > 0) Try(message, at + " last removed", [&] { reflection->RemoveLast(message, field); });
    Try(message, at + " added",
        [&] { is_message ? void(reflection->AddMessage(message, field)) : AddScalar(message, field); });
  }

  void Entry(Message* message, const FieldDescriptor* field, int i, const std::string& at) {
    const Reflection* reflection = message->GetReflection();
    const FieldDescriptor* value = field->message_type()->map_value();
    Message* entry = reflection->MutableRepeatedMessage(message, field, i);
    Walk(entry->GetReflection()->MutableMessage(entry, value), at);
    Try(message, at + " renamed", [&] {
      Message* renamed = reflection->MutableRepeatedMessage(message, field, i);
      const FieldDescriptor* key = field->message_type()->map_key();
      renamed->GetReflection()->SetString(renamed, key, renamed->GetReflection()->GetString(*renamed, key) + "~");
    });
  }

  static bool Differ(const Message& message, const FieldDescriptor* field, int i, int j) {
    const Reflection* reflection = message.GetReflection();
    if (field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE) {
      return !google::protobuf::util::MessageDifferencer::Equals(reflection->GetRepeatedMessage(message, field, i),
                                                                 reflection->GetRepeatedMessage(message, field, j));
    }
    return field->cpp_type() == FieldDescriptor::CPPTYPE_STRING &&
           reflection->GetRepeatedString(message, field, i) != reflection->GetRepeatedString(message, field, j);
  }

  void Unknown(Message* message, const std::string& path) {
    google::protobuf::UnknownFieldSet* unknown = message->GetReflection()->MutableUnknownFields(message);
    if (!unknown->empty()) Try(message, path + " unknown dropped", [&] { unknown->DeleteSubrange(0, 1); });
    Try(message, path + " unknown added", [&] { unknown->AddVarint(999, 0); });
  }

  const Visit& visit_;
};

}  // namespace

void ForEachMutation(Message* message, const Visit& visit) {
  Mutator(visit).Walk(message, "");
}

}  // namespace withy
