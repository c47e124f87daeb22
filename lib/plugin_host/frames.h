// How replies travel from the child: a byte for the type, four bytes of length (little-endian), the message.
//
// Each piece is a frame of its own, so that the host can bound what it parses and keeps what a child said before it
// died. What arrives was written by a plugin, in the worst case by one that took over its process.
#ifndef WITHY_PLUGIN_HOST_FRAMES_H_
#define WITHY_PLUGIN_HOST_FRAMES_H_

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "exchange.pb.h"

namespace withy::plugin {

// Bounds that the honest side keeps and the other side checks.
inline constexpr int kMostRemarks = 10'000;  // of one entry
inline constexpr int kMostNumbers = 32;      // of one remark
inline constexpr int kMostEntries = 500;     // of one plugin

inline constexpr std::size_t kLongestPath = 4000;     // of a remark's `at`
inline constexpr std::size_t kLongestFailure = 4000;  // of an outcome's message

// The last words of a child whose time is up inside a call that nothing can interrupt: "init.lua:12".
struct StoppedAt {
  std::string location;
};

using Reply = std::variant<host::v1::Info, host::v1::Remark, host::v1::File, host::v1::Outcome, StoppedAt>;

inline constexpr std::size_t kFrameHeader = 5;
inline constexpr char kStoppedAtType = 4;  // its place in Reply

// Puts the header of a frame before `size` bytes. Safe in a signal handler.
void WriteFrameHeader(char type, std::size_t size, char (&header)[kFrameHeader]);

std::string FrameOf(const Reply& reply);

// Takes the first frame off `bytes`. Unset where there is no whole one (then `lied` is false) or where it cannot be one
// (then it is true): an unknown type, a message that does not parse, more than a message of its type may have.
std::optional<Reply> TakeFrame(std::string_view& bytes, bool& lied);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_FRAMES_H_
