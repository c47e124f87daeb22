#include "binary_reader.h"
namespace withy {
void ReadBinary(Reading* reading, google::protobuf::Message* root) {
  (void)root->ParseFromArray(reading->bytes().data(), reading->bytes().size());
}
}  // namespace withy
