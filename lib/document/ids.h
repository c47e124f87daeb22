// Ids of a design and the references to them.
#ifndef WITHY_DOCUMENT_IDS_H_
#define WITHY_DOCUMENT_IDS_H_

#include <google/protobuf/message.h>

#include <string>
#include <vector>

#include "absl/container/flat_hash_map.h"
#include "schema_rules.h"
#include "spot.h"
#include "withy/findings/finding.h"

namespace withy {

class Ids {
 public:
  // Collects every id in the design, which must outlive this.
  Ids(const google::protobuf::Message& design, SchemaRules& rules);

  // Checks the id of `thing`, which stands at `spot`. Called once for each thing, in the order of the design.
  void CheckId(const google::protobuf::Message& thing, const google::protobuf::FieldDescriptor* id, const Spot& spot,
               std::vector<Finding>& findings);

  // Checks that `id` names one of the kinds of thing that the field may refer to.
  void CheckReference(const std::string& id, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings);

 private:
  struct Entry {
    const google::protobuf::Descriptor* kind = nullptr;  // of the first thing with this id
    bool repeated = false;
    FieldPath first;  // only where it is repeated
    bool met = false;
  };
  void Collect(const google::protobuf::Message& message, SchemaRules& rules);
  void ReportUnknown(const std::string& id, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings);

  absl::flat_hash_map<std::string, Entry> entries_;
  // Comparing with every id is the one thing here whose cost is a product: after so many the suggestion is left out.
  int suggestions_left_ = 20;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_IDS_H_
