// Random designs, made by reflection over the schema: whatever field is added to it is covered at once.
//
//   RandomDesigns designs(/*seed=*/7);
//   for (int i = 0; i < 200; ++i) Check(designs.Next());
//
// The same seed gives the same designs on any machine. Every design can be written in every form (finite doubles, valid
// UTF-8, a Value always of some kind), and `format` and the ids are as they must be; beyond that they make no sense as
// rods: words, references, dates and units are right most of the time and wrong some of the time.
#ifndef WITHY_TESTS_SUPPORT_RANDOM_DESIGN_H_
#define WITHY_TESTS_SUPPORT_RANDOM_DESIGN_H_

#include <google/protobuf/message.h>

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "withy/v1/design.pb.h"

namespace withy {

struct RandomDesignOptions {
  double fill = 0.6;            // chance that a field is set at all
  int max_items = 3;            // of a list or map
  int max_depth = 16;           // of messages within messages; only plugin data goes deeper than 8
  double nonsense = 0.2;        // chance of a wrong word, a wild string, an extreme number, a missing unit
  bool wild_text = true;        // control characters, right-to-left text, characters beyond the BMP, quotes
  bool unknown_enums = false;   // enum numbers that the schema has no name for
  bool unknown_fields = false;  // fields of a later version, of every wire type
};

class RandomDesigns {
 public:
  explicit RandomDesigns(std::uint64_t seed, RandomDesignOptions options = {}) : random_(seed), options_(options) {}

  v1::Design Next();

  // Uniform on [0, n); n > 0. (The standard's distributions differ between libraries.)
  std::uint64_t Below(std::uint64_t n) { return random_() % n; }
  bool Chance(double probability) { return static_cast<double>(random_() >> 11) * 0x1p-53 < probability; }
  // A finite double: mostly one read at a bench, sometimes zero, negative, huge or denormal.
  double Double();
  // Valid UTF-8.
  std::string Text();

 private:
  using Field = google::protobuf::FieldDescriptor;
  using Message = google::protobuf::Message;

  void Fill(Message* message, int depth);
  void Set(Message* message, const Field* field, int depth);
  void Put(Message* message, const Field* field, int depth);
  void FillMap(Message* message, const Field* field, int depth);
  void FillValue(Message* message, int depth);
  void AddUnknown(Message* message);
  bool IsWanted(const Message& message, const Field* field);
  std::string TextFor(const Field* field);
  int EnumFor(const Field* field);

  std::mt19937_64 random_;
  RandomDesignOptions options_;
  std::vector<std::string> ids_;  // given so far in this design
};

}  // namespace withy

#endif  // WITHY_TESTS_SUPPORT_RANDOM_DESIGN_H_
