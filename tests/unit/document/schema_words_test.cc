// What the breaking-change gate does not see, because it does not read options: the words of an open list are never
// removed, and a field never stops being able to name what it could name. Compared with the schema of the last release.
#include <google/protobuf/descriptor.h>
#include <google/protobuf/descriptor.pb.h>
#include <gtest/gtest.h>

#include <fstream>
#include <set>

#include "withy/v1/design.pb.h"
#include "withy/v1/words.pb.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::DescriptorPool;
using google::protobuf::DescriptorProto;
using google::protobuf::FieldDescriptor;
using google::protobuf::FieldDescriptorProto;
using google::protobuf::FieldOptions;
using google::protobuf::FileDescriptorProto;
using google::protobuf::FileDescriptorSet;

template <typename Extension>
std::set<std::string> Strings(const FieldOptions& options, const Extension& extension) {
  const auto& strings = options.GetRepeatedExtension(extension);
  return {strings.begin(), strings.end()};
}

template <typename Extension>
std::vector<std::string> Removed(const FieldOptions& before, const FieldOptions& now, const Extension& extension) {
  std::vector<std::string> removed;
  const std::set<std::string> kept = Strings(now, extension);
  for (const std::string& text : Strings(before, extension)) {
    if (!kept.contains(text)) removed.push_back(text);
  }
  return removed;
}

FileDescriptorSet Baseline() {
  FileDescriptorSet baseline;
  std::ifstream file(std::string(WITHY_SOURCE_DIR) + "/proto/baseline.binpb", std::ios::binary);
  EXPECT_TRUE(baseline.ParseFromIstream(&file));
  return baseline;
}

// The field of today that a field of the baseline became; the gate sees to it that there is one.
const FieldDescriptor* Today(const std::string& message, const FieldDescriptorProto& field) {
  const DescriptorPool* pool = v1::Design::descriptor()->file()->pool();  // only a design has words
  const Descriptor* type = pool->FindMessageTypeByName(message);
  return type == nullptr ? nullptr : type->FindFieldByNumber(field.number());
}

TEST(Words, AreNeverRemoved) {
  int words = 0;
  const FileDescriptorSet baseline = Baseline();
  for (const FileDescriptorProto& file : baseline.file()) {
    for (const DescriptorProto& message : file.message_type()) {
      const std::string name = file.package() + "." + message.name();
      for (const FieldDescriptorProto& field : message.field()) {
        words += field.options().ExtensionSize(v1::word);
        if (field.options().ExtensionSize(v1::word) + field.options().ExtensionSize(v1::refers_to) == 0) continue;
        const FieldDescriptor* today = Today(name, field);
        ASSERT_NE(today, nullptr) << name << "." << field.name();
        EXPECT_EQ(Removed(field.options(), today->options(), v1::word), std::vector<std::string>())
            << today->full_name();
        EXPECT_EQ(Removed(field.options(), today->options(), v1::refers_to), std::vector<std::string>())
            << today->full_name();
      }
    }
  }
  EXPECT_GT(words, 100) << "the baseline was read without its options";
}

// The comparison itself can fail.
TEST(Words, ARemovedWordIsSeen) {
  FieldOptions before, now;
  before.AddExtension(v1::word, "casting"), before.AddExtension(v1::word, "fly");
  now.AddExtension(v1::word, "fly"), now.AddExtension(v1::word, "surf");
  EXPECT_EQ(Removed(before, now, v1::word), std::vector<std::string>{"casting"});
}

}  // namespace
}  // namespace withy
