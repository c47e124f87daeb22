// What the step from version 0 makes up, so that the step back can tell it from the author's own.
#ifndef WITHY_DOCUMENT_UPGRADE_0_TO_1_H_
#define WITHY_DOCUMENT_UPGRADE_0_TO_1_H_

#include <string>

namespace withy {

// Id of the one section.
inline constexpr char kSectionIdFrom0[] = "blank";

// Id of the guide that has `from_butt` guides behind it: "g1" is the butt guide.
std::string GuideIdFrom0(int from_butt);

}  // namespace withy

#endif  // WITHY_DOCUMENT_UPGRADE_0_TO_1_H_
