// Reading the inputs of reference cases and building the answers.
#ifndef WITHY_TESTS_REFERENCE_FIELDS_H_
#define WITHY_TESTS_REFERENCE_FIELDS_H_

#include <optional>
#include <utility>
#include <vector>

#include "rapidjson/document.h"
#include "withy/numerics/profile.h"

namespace withy::reference {

using rapidjson::Value;
using Allocator = rapidjson::Document::AllocatorType;

inline double Get(const Value& from, const char* name) { return from[name].GetDouble(); }

// Builds one object; an unset optional is null.
class Fields {
 public:
  explicit Fields(Allocator& allocator) : allocator_(allocator) {}
  Fields& Put(const char* name, Value value) {
    object_.AddMember(Value(name, allocator_), value, allocator_);
    return *this;
  }
  Fields& Put(const char* name, double value) { return Put(name, Value(value)); }
  Fields& Put(const char* name, int value) { return Put(name, Value(value)); }
  Fields& Put(const char* name, bool value) { return Put(name, Value(value)); }
  Fields& Put(const char* name, const char* word) { return Put(name, Value(word, allocator_)); }
  template <typename T>
  Fields& Put(const char* name, const std::optional<T>& value) {
    return value ? Put(name, *value) : Put(name, Value());
  }
  Fields& Put(const char* name, const std::vector<double>& values) {
    Value list(rapidjson::kArrayType);
    for (double value : values) list.PushBack(value, allocator_);
    return Put(name, std::move(list));
  }
  Value Take() { return std::move(object_); }

 private:
  Allocator& allocator_;
  Value object_{rapidjson::kObjectType};
};

// One answer per entry of a list of inputs; an empty list where the case has none.
template <typename AnswerOne>
Value ForEach(const Value& in, const char* name, Allocator& allocator, AnswerOne answer_one) {
  Value list(rapidjson::kArrayType);
  if (!in.HasMember(name)) return list;
  for (const Value& entry : in[name].GetArray()) list.PushBack(answer_one(entry), allocator);
  return list;
}

// [[coordinate, value], ...]
inline Profile ProfileOf(const Value& knots) {
  std::vector<Profile::Knot> list;
  for (const Value& knot : knots.GetArray()) list.push_back({knot[0].GetDouble(), knot[1].GetDouble()});
  return Profile(std::move(list));
}

}  // namespace withy::reference

#endif  // WITHY_TESTS_REFERENCE_FIELDS_H_
