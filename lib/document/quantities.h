// Numbers and quantities: finite, of a sensible sign and size, with a unit; and what a senseless one was meant to be.
#ifndef WITHY_DOCUMENT_QUANTITIES_H_
#define WITHY_DOCUMENT_QUANTITIES_H_

#include <google/protobuf/message.h>

#include <optional>
#include <vector>

#include "schema_rules.h"
#include "spot.h"
#include "withy/findings/finding.h"

namespace withy {

// Checks a quantity (a message with a unit) at `spot`.
void CheckQuantity(const google::protobuf::Message& quantity, const FieldRules& field, const Spot& spot,
                   std::vector<Finding>& findings);

// Checks a plain number at `spot`.
void CheckNumber(double value, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings);

// The value of a quantity in its kind's first unit; unset where it has no unit.
std::optional<double> InFirstUnit(const google::protobuf::Message& quantity);

}  // namespace withy

#endif  // WITHY_DOCUMENT_QUANTITIES_H_
