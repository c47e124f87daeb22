// A calibration for people: the verdict, what was found and how far to trust it, the readings beside what that blank
// would read, what stays open, what to read next. Made from the answer alone. Reads in 80 columns.
#ifndef WITHY_REVIEW_CALIBRATION_TEXT_H_
#define WITHY_REVIEW_CALIBRATION_TEXT_H_

#include <string>
#include <string_view>

#include "withy/review/show_text.h"
#include "withy/v1/calibration.pb.h"

namespace withy {

std::string CalibrationText(std::string_view file, const v1::Design& design, const v1::Calibration& calibration,
                            const TextStyle& style);

}  // namespace withy

#endif  // WITHY_REVIEW_CALIBRATION_TEXT_H_
