// What must hang together within one message: places, choices, money, ranges, the order of the log.
#ifndef WITHY_DOCUMENT_MESSAGE_RULES_H_
#define WITHY_DOCUMENT_MESSAGE_RULES_H_

#include <google/protobuf/message.h>

#include <vector>

#include "spot.h"
#include "withy/findings/finding.h"

namespace withy {

// Checks `message`, which stands at `spot`, by the rules of its kind; most kinds have none. Its fields are left to
// others.
void CheckMessage(const google::protobuf::Message& message, const Spot& spot, std::vector<Finding>& findings);

}  // namespace withy

#endif  // WITHY_DOCUMENT_MESSAGE_RULES_H_
