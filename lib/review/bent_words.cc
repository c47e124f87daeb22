#include "bent_words.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {

std::string DegreesText(double deg) {
  return FormatFixed(std::abs(deg), 0) + " deg";
}

namespace {

// "20 deg past straight down", of what points back.
std::string PastText(double deg) {
  return DegreesText(std::abs(deg) - 90) + (deg < 0 ? " past straight down" : " past straight up");
}

}  // namespace

std::string DirectionText(double deg) {
  if (std::abs(deg) < kLevelDeg) return "level";
  if (std::abs(deg) > 90 + kLevelDeg) return "pointing back, " + PastText(deg);
  return DegreesText(deg) + (deg > 0 ? " above" : " below") + " the horizontal";
}

std::string TipDirectionText(double deg) {
  if (std::abs(deg) > 90 + kLevelDeg) return "tip points back, " + PastText(deg);
  return "tip points " + DirectionText(deg);
}

std::string PullText(double load_n, double direction_deg, const std::string& where) {
  const std::string newtons = FormatFixed(load_n, 2) + " N";
  if (std::abs(direction_deg + 90) >= kLevelDeg)
    return absl::StrCat(newtons, where, ", ", DirectionText(direction_deg));
  return absl::StrCat(FormatFixed(load_n / kStandardGravity * 1000, 0), " g (", newtons, ") straight down", where);
}

std::string FoldedText(const std::string& state, double reached) {
  const std::string part = FormatFixed(std::floor(100 * reached), 0) + " % of it";
  if (state == "several") {
    return "folds: beyond " + part + " more than one shape holds the load, and which one comes cannot be said; " +
           "the figures are of that part of the load";
  }
  if (state == "none") {
    return "folds: beyond " + part + " no shape near by holds the load, and the rod snaps over; " +
           "the figures are of that part of the load";
  }
  return state == "bent" ? "" : "how it bends under this load cannot be told";
}

}  // namespace withy
