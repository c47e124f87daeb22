// Whether every number in a message is one.
#ifndef WITHY_TESTS_SUPPORT_FINITE_H_
#define WITHY_TESTS_SUPPORT_FINITE_H_

#include <google/protobuf/message.h>

#include <cmath>
#include <string>
#include <vector>

namespace withy {

// The path of the first double that is infinite or not a number; empty where there is none.
inline std::string FirstNotFinite(const google::protobuf::Message& message) {
  using Field = google::protobuf::FieldDescriptor;
  const google::protobuf::Reflection& reflection = *message.GetReflection();
  std::vector<const Field*> fields;
  reflection.ListFields(message, &fields);
  for (const Field* field : fields) {
    const int count = field->is_repeated() ? reflection.FieldSize(message, field) : 1;
    for (int i = 0; i < count; ++i) {
      if (field->cpp_type() == Field::CPPTYPE_DOUBLE) {
        const double value = field->is_repeated() ? reflection.GetRepeatedDouble(message, field, i)
                                                  : reflection.GetDouble(message, field);
        if (!std::isfinite(value)) return field->name();
      } else if (field->cpp_type() == Field::CPPTYPE_MESSAGE) {
        const std::string inside = FirstNotFinite(field->is_repeated() ? reflection.GetRepeatedMessage(message, field, i)
                                                                       : reflection.GetMessage(message, field));
        if (!inside.empty()) return field->name() + "." + inside;
      }
    }
  }
  return "";
}

}  // namespace withy

#endif  // WITHY_TESTS_SUPPORT_FINITE_H_
