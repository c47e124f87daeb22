// Every way to change one thing in a design, by reflection over the schema.
//
//   ForEachMutation(&design, [&](const std::string& what) { EXPECT_NE(DesignDigest(design), before) << what; });
#ifndef WITHY_TESTS_SUPPORT_MUTATION_H_
#define WITHY_TESTS_SUPPORT_MUTATION_H_

#include <google/protobuf/message.h>

#include <functional>
#include <string>

namespace withy {

// Calls `visit` once for every change of one thing in `message`, with that change made in place: a value changed, a
// field set or cleared, an item added, removed or swapped with a different neighbour, a map entry dropped or its key
// renamed, an unknown field added or dropped. `what` says which. `message` is as before when the function returns.
void ForEachMutation(google::protobuf::Message* message, const std::function<void(const std::string& what)>& visit);

}  // namespace withy

#endif  // WITHY_TESTS_SUPPORT_MUTATION_H_
