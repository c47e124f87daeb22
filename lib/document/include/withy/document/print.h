// Any message of the schema as text or JSON: for reports and findings, and beneath WriteDesign.
//
//   std::cout << MessageToJson(report);   // what `--json` prints
//
// The bytes are the same on any machine: fields in the order of the schema, maps by key, and, because a computed double
// may differ in its last bit between machines, every double rounded to 12 significant digits. (A design's doubles are
// the author's own and are written to the last bit: that is WriteDesign.) A double that is not a number is left out:
// unset means 'cannot be told'.
//
// JSON is the proto3 JSON mapping (protobuf.dev, "ProtoJSON Format") with proto field names: open enum numbers as
// numbers, Struct as an object, 64-bit integers as strings, bytes as base64. JSON has no place for unknown fields.
#ifndef WITHY_DOCUMENT_PRINT_H_
#define WITHY_DOCUMENT_PRINT_H_

#include <google/protobuf/message.h>

#include <string>

namespace withy {

// Both end with a line feed.
std::string MessageToText(const google::protobuf::Message& message);
std::string MessageToJson(const google::protobuf::Message& message);

}  // namespace withy

#endif  // WITHY_DOCUMENT_PRINT_H_
