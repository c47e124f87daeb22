#include "frames.h"

#include <cstdint>
#include <type_traits>

namespace withy::plugin {
namespace {

// Bytes that a frame may have, by type. Files and designs are bounded by what the host reads in all; the others hold
// lists, which take more room parsed than written.
std::size_t LongestFrame(std::size_t type) {
  switch (type) {
    case 0:
      return std::size_t{1} << 20;
    case 1:
      return std::size_t{1} << 16;
    case kStoppedAtType:
      return 256;
    default:
      return UINT32_MAX;
  }
}

template <typename Message>
std::optional<Reply> Parsed(std::string_view bytes) {
  Message message;
  if (!message.ParseFromArray(bytes.data(), static_cast<int>(bytes.size()))) return std::nullopt;
  return message;
}

std::optional<Reply> ParsedAs(std::size_t type, std::string_view bytes) {
  switch (type) {
    case 0:
      return Parsed<host::v1::Info>(bytes);
    case 1:
      return Parsed<host::v1::Remark>(bytes);
    case 2:
      return Parsed<host::v1::File>(bytes);
    case 3:
      return Parsed<host::v1::Outcome>(bytes);
    case kStoppedAtType:
      return StoppedAt{std::string(bytes)};
    default:
      return std::nullopt;
  }
}

}  // namespace

void WriteFrameHeader(char type, std::size_t size, char (&header)[kFrameHeader]) {
  header[0] = type;
  for (std::size_t i = 1; i < kFrameHeader; ++i) header[i] = static_cast<char>((size >> (8 * (i - 1))) & 0xff);
}

std::string FrameOf(const Reply& reply) {
  std::string message = std::visit(
      [](const auto& value) {
        if constexpr (std::is_same_v<std::decay_t<decltype(value)>, StoppedAt>) {
          return value.location;
        } else {
          return value.SerializeAsString();
        }
      },
      reply);
  char header[kFrameHeader];
  WriteFrameHeader(static_cast<char>(reply.index()), message.size(), header);
  return std::string(header, kFrameHeader) + message;
}

std::optional<Reply> TakeFrame(std::string_view& bytes, bool& lied) {
  lied = false;
  if (bytes.size() < kFrameHeader) return std::nullopt;
  const auto type = static_cast<unsigned char>(bytes[0]);
  std::size_t size = 0;
  for (std::size_t i = 1; i < kFrameHeader; ++i) {
    size |= static_cast<std::size_t>(static_cast<unsigned char>(bytes[i])) << (8 * (i - 1));
  }
  lied = type >= std::variant_size_v<Reply> || size > LongestFrame(type);
  if (lied || size > bytes.size() - kFrameHeader) return std::nullopt;
  std::optional<Reply> reply = ParsedAs(type, bytes.substr(kFrameHeader, size));
  lied = !reply.has_value();
  bytes.remove_prefix(kFrameHeader + size);
  return reply;
}

}  // namespace withy::plugin
