#include "json_reader.h"
namespace withy {
void ReadJson(Reading* reading, google::protobuf::Message* root) {}
}  // namespace withy
