#include "binary_reader.h"

#include "binary_walker.h"
#include "field_table.h"
#include "google/protobuf/io/coded_stream.h"
#include "reading_codes.h"

namespace withy {

void ReadBinary(Reading* reading, google::protobuf::Message* root) {
  BinaryWalker(InfoOf(*root->GetDescriptor()), reading).Walk();
  if (reading->stopped()) return;
  const std::string_view bytes = reading->bytes();
  google::protobuf::io::CodedInputStream input(reinterpret_cast<const std::uint8_t*>(bytes.data()),
                                               static_cast<int>(bytes.size()));
  input.SetRecursionLimit(reading->limits().max_depth + 1);
  const bool parsed = root->ParseFromCodedStream(&input) && input.ConsumedEntireMessage();
  // Text that is not UTF-8 has been reported with its place; the parser refuses it too.
  if (!parsed && reading->readable()) reading->Report(kWireFormat, {}, 0, "the bytes cannot be parsed");
}

}  // namespace withy
