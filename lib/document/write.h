// How a message is written in each form; WriteDesign and print.h choose.
#ifndef WITHY_DOCUMENT_WRITE_H_
#define WITHY_DOCUMENT_WRITE_H_

#include <google/protobuf/message.h>

#include <string>
#include <string_view>

namespace withy {

enum class Doubles {
  kExact,    // shortest digits that read back to the same bits
  kRounded,  // to 12 significant digits, then the shortest; no sign on zero
};

// A line of the text form that has a choice is at most this many bytes long.
inline constexpr std::size_t kLineWidth = 120;

// Canonical text of `message` is appended to `out`: fields in the order of the schema, two spaces a level, a message
// without lists of messages on one line where it fits, outermost groups apart by an empty line.
void AppendText(const google::protobuf::Message& message, Doubles doubles, std::string* out);

// Canonical JSON of `message`, without a line feed at the end.
void AppendJson(const google::protobuf::Message& message, Doubles doubles, std::string* out);

// Digits and point between 1e-5 and 1e15, else an exponent; "inf", "-inf" or "nan". Whole numbers have no point, but
// negative zero is "-0.0", which no JSON reader can take for an integer.
void AppendDouble(double value, Doubles doubles, std::string* out);

// `text` in double quotes with the escapes of the text form. Bytes above 0x7F stay as they are where `readable` and the
// whole is UTF-8, else every one of them is escaped.
void AppendTextString(std::string_view text, bool readable, std::string* out);

// `text` as a JSON string, DEL and C1 escaped too. A byte that is not UTF-8 (no reader lets one in) becomes U+FFFD: JSON
// cannot hold it.
void AppendJsonString(std::string_view text, std::string* out);

}  // namespace withy

#endif  // WITHY_DOCUMENT_WRITE_H_
