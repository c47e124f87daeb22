// The step from version 0 to version 1.
#include "upgrade_0_to_1.h"

#include <string>

#include "absl/strings/str_cat.h"
#include "withy/document/upgrade.h"

namespace withy {
namespace {

bool HasLengths(const v0::Design& old) {
  return old.has_overall_length() || old.guides_from_tip_size() > 0 || old.blank().has_length() ||
         old.blank().stations_size() > 0;
}

void SetLength(double number, const std::string& unit, v1::Length* length) {
  if (unit == "inch") {
    length->set_inch(number);
  } else {
    length->set_mm(number);
  }
}

void UpgradeBlank(const v0::Blank& old, const std::string& unit, v1::Blank* blank) {
  blank->set_name(old.name());
  if (!old.has_length() && old.stations_size() == 0 && !old.has_mass_g()) return;
  v1::Section* section = blank->add_sections();
  section->set_id(kSectionIdFrom0);
  if (old.has_length()) SetLength(old.length(), unit, section->mutable_length());
  for (const v0::Station& row : old.stations()) {
    v1::Station* station = section->mutable_taper()->add_stations();
    SetLength(row.at(), unit, station->mutable_at());
    station->mutable_outer()->set_mm(row.outer_mm());
  }
  if (old.has_mass_g()) {
    section->mutable_mass()->set_g(old.mass_g());
    section->mutable_mass()->set_source(v1::Source::MEASURED);
  }
}

}  // namespace

std::string GuideIdFrom0(int from_butt) {
  return absl::StrCat("g", from_butt + 1);
}

absl::StatusOr<v1::Design> UpgradeFrom0(const v0::Design& old) {
  if (HasLengths(old) && old.unit() != "mm" && old.unit() != "inch") {
    return absl::InvalidArgumentError(absl::StrCat(
        "unit is '", old.unit(), "': write unit: \"mm\" or unit: \"inch\", so that the lengths mean something"));
  }
  v1::Design design;
  design.set_format(std::string(CurrentFormat()));
  if (!old.name().empty()) design.mutable_identity()->set_name(old.name());
  if (!old.note().empty()) design.mutable_identity()->set_description(old.note());
  if (!old.technique().empty()) design.mutable_intent()->set_technique(old.technique());
  if (old.has_overall_length()) {
    SetLength(old.overall_length(), old.unit(), design.mutable_intent()->mutable_overall_length());
  }
  if (old.has_blank()) UpgradeBlank(old.blank(), old.unit(), design.mutable_blank());
  for (int i = old.guides_from_tip_size() - 1; i >= 0; --i) {
    v1::Guide* guide = design.add_guides();
    guide->set_id(GuideIdFrom0(design.guides_size() - 1));
    SetLength(old.guides_from_tip(i), old.unit(), guide->mutable_from_tip());
  }
  return design;
}

}  // namespace withy
