#include "withy/rod/rod.h"

#include <algorithm>

namespace withy {

double GlueClearanceOf(const Part& part) {
  if (part.glue_clearance) return std::max(0.0, part.glue_clearance->value.meters());
  return part.kind == "one_piece_handle" ? 0.0001 : 0.0003;
}

int Handle::Host() const {
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i].kind == "one_piece_handle" && parts[i].on.empty() && !parts[i].loose) return static_cast<int>(i);
  }
  return -1;
}

namespace {

// Rounding must not push a point off the end it stands on.
constexpr double kEndM = 1e-9;

}  // namespace

std::optional<double> Rod::DiameterOnBlank(double on_blank_m) const {
  if (blank.outer.empty() || !blank.length_m) return std::nullopt;
  if (on_blank_m < -kEndM || on_blank_m > blank.length_m->value() + kEndM) return std::nullopt;
  return blank.outer.At(on_blank_m);
}

std::optional<double> Rod::BlankDiameterAt(double from_butt_m) const {
  if (!blank_butt_m) return std::nullopt;
  return DiameterOnBlank(from_butt_m - blank_butt_m->value());
}

std::optional<double> Rod::DiameterUnder(const Along& place) const {
  if (place.on_blank_m) return DiameterOnBlank(place.on_blank_m->value());
  if (place.from_butt_m) return BlankDiameterAt(place.from_butt_m->value());
  return std::nullopt;
}

std::optional<double> Rod::FromTipMm(const Along& place) const {
  if (!overall_m || !place.from_butt_m) return std::nullopt;
  return (overall_m->value() - place.from_butt_m->value()) * 1000;
}

namespace {

template <typename T>
const T* Find(const std::vector<T>& list, std::string_view id) {
  if (id.empty()) return nullptr;
  for (const T& thing : list) {
    if (thing.id == id) return &thing;
  }
  return nullptr;
}

}  // namespace

const Section* Rod::FindSection(std::string_view id) const { return Find(blank.sections, id); }
const Part* Rod::FindPart(std::string_view id) const { return Find(handle.parts, id); }
const Guide* Rod::FindGuide(std::string_view id) const { return Find(guides, id); }

}  // namespace withy
