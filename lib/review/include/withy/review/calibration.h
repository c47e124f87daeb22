// What `calibrate` says and writes: a blank's modulus, density and walls from its bench readings.
//
//   const Rod rod = Resolve(document);
//   const Identification found = IdentifyBlank(rod, WallModel::kLinear);
//   v1::Calibration answer = CalibrationOf(document.design, rod, found);
//   absl::StatusOr<std::string> bytes = WithCalibration(document, rod, found, {.date = "2026-05-02", .author =
//   "Ines"});
#ifndef WITHY_REVIEW_CALIBRATION_H_
#define WITHY_REVIEW_CALIBRATION_H_

#include <string>

#include "absl/status/statusor.h"
#include "withy/bending/identify.h"
#include "withy/document/document.h"
#include "withy/v1/calibration.pb.h"

namespace withy {

Identification IdentifyBlank(const Rod& rod, WallModel wall);

// In the units of the bench.
v1::Calibration CalibrationOf(const v1::Design& design, const Rod& rod, const Identification& found);

struct CalibrationMark {
  std::string date, author;  // of the entry in identity.changes
};

// The bytes of the design with what was found as estimates, each with its uncertainty: modulus and density of the
// sections, the wall at the first and the last row of a taper table and at every row between that has one; and an entry
// in identity.changes that names the readings; the bytes as they were where the design says all of it already. What was measured is never altered, nor any other byte (rewrite.h).
//
// FailedPrecondition, with what to do: not everything was found; a design of version 0; a taper table that stands in
// the log alone.
absl::StatusOr<std::string> WithCalibration(const Document& document, const Rod& rod, const Identification& found,
                                            const CalibrationMark& mark);

}  // namespace withy

#endif  // WITHY_REVIEW_CALIBRATION_H_
