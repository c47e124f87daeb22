#include "schema.h"

#include <google/protobuf/descriptor.pb.h>

#include <memory>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_split.h"

namespace withy {

// Made by the build from the descriptor set that protoc writes.
extern const unsigned char kSchemaBytes[];
extern const unsigned long kSchemaBytesSize;

namespace {

using google::protobuf::DescriptorPool;

std::unique_ptr<DescriptorPool> Unpack() {
  auto pool = std::make_unique<DescriptorPool>();
  google::protobuf::FileDescriptorSet files;
  files.ParseFromArray(kSchemaBytes, static_cast<int>(kSchemaBytesSize));
  // protoc lists a file after those it imports.
  for (const auto& file : files.file()) pool->BuildFile(file);
  return pool;
}

const DescriptorPool& Pool() {
  static const std::unique_ptr<const DescriptorPool> pool = Unpack();
  return *pool;
}

template <typename T>
std::string LeadingComment(const T* described) {
  google::protobuf::SourceLocation location;
  if (!described->GetSourceLocation(&location)) return "";
  std::vector<std::string> lines;
  for (const auto line : absl::StrSplit(location.leading_comments, '\n', absl::SkipWhitespace())) {
    lines.emplace_back(absl::StripAsciiWhitespace(line));
  }
  return absl::StrJoin(lines, " ");
}

}  // namespace

const google::protobuf::Descriptor* SchemaMessage(std::string_view name) {
  return Pool().FindMessageTypeByName(absl::StrCat("withy.v1.", std::string(name)));
}

std::string CommentOf(const google::protobuf::Descriptor* message) {
  return LeadingComment(message);
}

std::string CommentOf(const google::protobuf::FieldDescriptor* field) {
  return LeadingComment(field);
}

}  // namespace withy
