#include "message_rules.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "consistency_codes.h"
#include "quantities.h"
#include "section_mass.h"
#include "text_kinds.h"
#include "withy/v1/design.pb.h"

namespace withy {
namespace {

using google::protobuf::Message;

// `message` as a T where it is one.
template <typename T>
const T* As(const Message& message) {
  return message.GetDescriptor() == T::descriptor() ? static_cast<const T*>(&message) : nullptr;
}

void CheckPlace(const v1::Place& place, const Spot& spot, std::vector<Finding>& findings) {
  if (place.origin_case() == v1::Place::ORIGIN_NOT_SET) {
    findings.push_back(
        MakeFinding(kPlaceWithoutOrigin, spot.Path(), "this place does not say what it is counted from"));
    return;
  }
  const bool from_section = place.has_from_section_butt();
  if (from_section == !place.section().empty()) return;
  findings.push_back(
      from_section ? MakeFinding(kSectionWithPlace, spot.Path(), "`from_section_butt` does not say of which section")
                   : MakeFinding(kSectionWithPlace, spot.Path().Field("section"),
                                 "a section is named, but the place is not counted from its butt"));
}

void CheckMoney(const v1::Money& money, const Spot& spot, std::vector<Finding>& findings) {
  if (money.amount().empty()) findings.push_back(MakeFinding(kBadMoney, spot.Path(), "the amount is missing"));
  if (money.currency().empty()) findings.push_back(MakeFinding(kBadCurrency, spot.Path(), "the currency is missing"));
}

template <typename Range>
void CheckRangeOrder(const Range& range, const Spot& spot, std::string_view unit, std::vector<Finding>& findings) {
  const std::optional<double> min = InFirstUnit(range.min()), max = InFirstUnit(range.max());
  if (!min || !max || !std::isfinite(*min) || !std::isfinite(*max) || *min <= *max) return;
  findings.push_back(MakeFinding(
      kRangeOrder, spot.Path(),
      absl::StrFormat("from %.4g down to %.4g %s", *min, *max, std::string(unit)),
      {{absl::StrCat("min_", std::string(unit)), *min}, {absl::StrCat("max_", std::string(unit)), *max}}));
}

void CheckChoice(bool is_set, const Spot& spot, const char* message, std::vector<Finding>& findings) {
  if (!is_set) findings.push_back(MakeFinding(kUnsetOneof, spot.Path(), message));
}

// Dates of one form compare as text; of a day and a time of day only the day does.
bool IsBefore(std::string_view date, std::string_view other) {
  const std::size_t size = std::min(date.size(), other.size());
  return date.substr(0, size) < other.substr(0, size);
}

void CheckLogOrder(const v1::Design& design, const Spot& spot, std::vector<Finding>& findings) {
  std::string_view previous;
  for (int i = 0; i < design.log_size(); ++i) {
    const std::string& date = design.log(i).date();
    if (!IsDate(date)) continue;
    if (IsBefore(date, previous)) {
      findings.push_back(MakeFinding(kLogOrder, spot.Path().Field("log").Item(design.log(i).id(), i).Field("date"),
                                     absl::StrCat(date, " comes after ", std::string(previous))));
    }
    previous = date;
  }
}

void CheckCustomer(const v1::Customer& customer, const Spot& spot, std::vector<Finding>& findings) {
  std::vector<const google::protobuf::FieldDescriptor*> known;
  customer.GetReflection()->ListFields(customer, &known);
  if (!known.empty()) findings.push_back(MakeFinding(kPersonalData, spot.Path(), "this is about a person"));
}

}  // namespace

void CheckMessage(const Message& message, const Spot& spot, std::vector<Finding>& findings) {
  if (const auto* place = As<v1::Place>(message)) return CheckPlace(*place, spot, findings);
  if (const auto* money = As<v1::Money>(message)) return CheckMoney(*money, spot, findings);
  if (const auto* range = As<v1::MassRange>(message)) return CheckRangeOrder(*range, spot, "g", findings);
  if (const auto* range = As<v1::ForceRange>(message)) return CheckRangeOrder(*range, spot, "n", findings);
  if (const auto* section = As<v1::Section>(message)) return CheckSectionMass(*section, spot, findings);
  if (const auto* blank = As<v1::Blank>(message)) return CheckBlankMass(*blank, spot, findings);
  if (const auto* customer = As<v1::Customer>(message)) return CheckCustomer(*customer, spot, findings);
  if (const auto* design = As<v1::Design>(message)) return CheckLogOrder(*design, spot, findings);
  if (const auto* load = As<v1::LoadCase>(message)) {
    return CheckChoice(load->pull_case() != v1::LoadCase::PULL_NOT_SET, spot, "a load case without a load", findings);
  }
  if (const auto* reading = As<v1::BenchReading>(message)) {
    return CheckChoice(reading->what_case() != v1::BenchReading::WHAT_NOT_SET, spot,
                       "a bench reading without a reading", findings);
  }
  if (const auto* entry = As<v1::Entry>(message)) {
    return CheckChoice(entry->what_case() != v1::Entry::WHAT_NOT_SET, spot,
                       "the entry does not say what was done or measured", findings);
  }
  if (const auto* waiver = As<v1::Waiver>(message); waiver != nullptr && waiver->reason().empty()) {
    findings.push_back(
        MakeFinding(kWaiverWithoutReason, spot.Path(), absl::StrCat("no reason is given for ", waiver->code())));
  }
}

}  // namespace withy
