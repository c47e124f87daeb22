#include <cstddef>
#include <cstdint>

#include "reading.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string bytes(reinterpret_cast<const char*>(data), size);
  withy::RequireSoundReading(bytes);
  withy::RequireSoundReading("\x0A\x07withy/1" + bytes);
  return 0;
}
