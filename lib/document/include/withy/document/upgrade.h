// Versions of the format and the steps between them.
//
// A version is one integer, the number behind the slash of `Design.format`. A file of any version from kOldestReadable
// to kCurrent is read; each step from one version to the next is one function in one file (upgrade_0_to_1.cc), tested
// on files in tests/history/ that are never edited. A version is never dropped, so that a file written today opens for
// ever. A file that says a newer version than kCurrent is refused, with the advice to get a newer withy.
#ifndef WITHY_DOCUMENT_UPGRADE_H_
#define WITHY_DOCUMENT_UPGRADE_H_

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/document/document.h"
#include "withy/v0/design.pb.h"
#include "withy/v1/design.pb.h"

namespace withy {

inline constexpr int kOldestReadable = 0;
inline constexpr int kCurrent = 1;
inline constexpr std::string_view kFormatPrefix = "withy/";

// The version that a `format` field names: "withy/1" is 1. Unset where it is not of that shape (no leading zeros, no
// sign, at most six digits). The version may be one that this library does not read.
std::optional<int> FormatVersion(std::string_view format);

// What a design of the current version says in `format`: "withy/1".
std::string_view CurrentFormat();

// The step from version 0 to 1. Everything a version 0 file can say is kept: lengths in the unit the file names
// (exactly the numbers that were written), diameters in mm, the mass as measured in g, the note as the description.
// Guides are turned to butt first and named g1, g2 ... from the butt, the blank's one section is named "blank".
// InvalidArgument where lengths are given and `unit` is neither "mm" nor "inch", for then nobody knows what they mean.
// Unknown fields of `old` are not carried: their numbers mean something else here. The reader lists them.
absl::StatusOr<v1::Design> UpgradeFrom0(const v0::Design& old);

// The step back, for a reader that knows version 0 only. Never fails; what version 0 has no place for is appended to
// `losses`, one entry for the outermost field that is lost whole, so that nothing is dropped without being told.
// Lengths along the rod are converted to one unit: that of the overall length, else that of the blank. A design without
// losses comes back from UpgradeFrom0 as it was.
v0::Design DowngradeTo0(const v1::Design& design, std::vector<Loss>* losses);

// Writes a design of version 0 as WriteDesign does one of the current version.
std::string WriteDesign(const v0::Design& design, Form form);

}  // namespace withy

#endif  // WITHY_DOCUMENT_UPGRADE_H_
