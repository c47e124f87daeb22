#include "write.h"

#include <google/protobuf/io/coded_stream.h>
#include <google/protobuf/io/zero_copy_stream_impl_lite.h>

#include "withy/document/document.h"
#include "withy/document/print.h"
#include "withy/document/upgrade.h"

namespace withy {

using google::protobuf::Message;

namespace {

// What the text format's own convention puts at the head of a file, so that editors know the schema
// (protobuf.dev, "Text Format Language Specification", header). LossesInForm does not count it as the author's.
constexpr std::string_view kTextHeader = "# proto-file: withy/v1/design.proto\n# proto-message: withy.v1.Design\n\n";
constexpr std::string_view kTextHeader0 = "# proto-file: withy/v0/design.proto\n# proto-message: withy.v0.Design\n\n";

std::string Binary(const Message& message) {
  std::string bytes(message.ByteSizeLong(), '\0');
  google::protobuf::io::ArrayOutputStream stream(bytes.data(), static_cast<int>(bytes.size()));
  google::protobuf::io::CodedOutputStream coded(&stream);
  coded.SetSerializationDeterministic(true);
  message.SerializeWithCachedSizes(&coded);
  return bytes;
}

std::string Write(const Message& design, std::string_view text_header, Form form) {
  if (form == Form::kBinary) return Binary(design);
  std::string bytes;
  if (form == Form::kText) {
    bytes.append(text_header);
    AppendText(design, Doubles::kExact, &bytes);
  } else {
    AppendJson(design, Doubles::kExact, &bytes);
    bytes.push_back('\n');
  }
  return bytes;
}

}  // namespace

std::string WriteDesign(const v1::Design& design, Form form) {
  return Write(design, kTextHeader, form);
}

std::string WriteDesign(const v0::Design& design, Form form) {
  return Write(design, kTextHeader0, form);
}

std::string MessageToText(const Message& message) {
  std::string text;
  AppendText(message, Doubles::kRounded, &text);
  return text;
}

std::string MessageToJson(const Message& message) {
  std::string json;
  AppendJson(message, Doubles::kRounded, &json);
  json.push_back('\n');
  return json;
}

}  // namespace withy
