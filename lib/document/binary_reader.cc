#include "binary_reader.h"

#include "binary_screen.h"
#include "binary_walker.h"
#include "field_table.h"
#include "google/protobuf/io/coded_stream.h"
#include "reading_codes.h"

namespace withy {

namespace {

bool Parse(const Reading& reading, google::protobuf::Message* root) {
  const std::string_view bytes = reading.bytes();
  google::protobuf::io::CodedInputStream input(reinterpret_cast<const std::uint8_t*>(bytes.data()),
                                               static_cast<int>(bytes.size()));
  input.SetRecursionLimit(reading.limits().max_depth + 1);
  return root->ParseFromCodedStream(&input) && input.ConsumedEntireMessage();
}

}  // namespace

void ReadBinary(Reading* reading, google::protobuf::Message* root) {
  const MessageInfo& info = InfoOf(*root->GetDescriptor());
  if (IsPlainlySound(info, reading->bytes(), reading->limits()) && Parse(*reading, root)) {
    return reading->positions.FillWhenAsked();
  }
  if (!BinaryWalker(info, reading).Walk() || Parse(*reading, root)) return;
  reading->Report(kWireFormat, {}, 0, "the bytes cannot be parsed");
}

}  // namespace withy
