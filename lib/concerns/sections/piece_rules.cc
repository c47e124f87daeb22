#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::sections {
namespace {

constexpr Code kBalancePointOutside = {
    .name = "sections/balance-point-outside",
    .severity = Severity::kError,
    .summary = "A section's balance point does not lie on the section",
    .why =
        "Nothing balances on a point that is not there: unit, section or origin is wrong, and the balance of the "
        "whole rod follows from it.",
    .action = "Balance the bare section on an edge and measure from its butt end as supplied.",
};

void JudgeBalancePointOutside(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (!section.mass || !section.mass->balance) continue;
    const Length from = section.mass->from, to = section.mass->to, point = section.mass->balance->value;
    if (to <= from || (point >= from && point <= to)) continue;
    findings.push_back(MakeFinding(
        kBalancePointOutside, section.mass->balance->at,
        absl::StrFormat("balances at %.1f mm, but reaches from %.1f to %.1f mm", point.mm(), from.mm(), to.mm()),
        {{"balance_mm", point.mm()}, {"from_mm", from.mm()}, {"to_mm", to.mm()}}));
  }
}

constexpr Code kBalanceAgainstTaper = {
    .name = "sections/balance-against-taper",
    .severity = Severity::kWarning,
    .summary = "A section's balance point does not go with its taper",
    .why =
        "A tapered piece balances behind its middle, and its taper says how far. A point elsewhere was measured "
        "from the other end, or with something on the blank.",
    .action = "Balance the bare section again and measure from its butt end as supplied.",
};

// Centre of a mass that is spread over [a, b] as outer^power: 1 for a thin tube of even wall, 2 for a solid.
double CentreOf(const Profile& outer, double a, double b, int power) {
  double mass = 0, moment = 0;
  const Profile part = outer.Slice(a, b);
  for (std::size_t i = 1; i < part.knots().size(); ++i) {
    const auto &p = part.knots()[i - 1], &q = part.knots()[i];
    const double length = q.x - p.x, middle = (p.x + q.x) / 2;
    // Simpson's rule is exact for the third degree that s D^2 has
    const auto integral = [&](auto f) {
      return length / 6 * (f(p.x, p.y) + 4 * f(middle, (p.y + q.y) / 2) + f(q.x, q.y));
    };
    mass += integral([&](double, double d) { return std::pow(d, power); });
    moment += integral([&](double s, double d) { return s * std::pow(d, power); });
  }
  return moment / mass;
}

void JudgeBalanceAgainstTaper(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (!section.mass || !section.mass->balance || section.outer.empty()) continue;
    const double from = section.mass->from.meters(), to = section.mass->to.meters();
    const double point = section.mass->balance->value.meters();
    if (!(from >= 0) || !(to > from) || point < from || point > to) continue;
    const double tube = CentreOf(section.outer, from, to, 1), solid = CentreOf(section.outer, from, to, 2);
    // walls grow towards the butt about as diameters do, which lies between the two; a twentieth of the length is left
    // for what walls do beyond that (common practice, no source)
    const double slack = (to - from) / 20;
    const auto fits = [&](double s) {
      return s >= std::min(tube, solid) - slack && s <= std::max(tube, solid) + slack;
    };
    if (fits(point)) continue;
    const double turned = from + to - point;
    std::string message =
        absl::StrFormat("balances at %.1f mm, where the taper says about %.1f mm", point * 1000, tube * 1000);
    std::vector<Number> numbers = {{"balance_mm", point * 1000}, {"expected_mm", tube * 1000}};
    if (fits(turned)) {
      message += absl::StrFormat("; from the other end it would be %.1f mm", turned * 1000);
      numbers.push_back({"suspected_mm", turned * 1000});
    }
    findings.push_back(
        MakeFinding(kBalanceAgainstTaper, section.mass->balance->at, std::move(message), std::move(numbers)));
  }
}

constexpr Code kSpareDiffers = {
    .name = "sections/spare-differs",
    .severity = Severity::kWarning,
    .summary = "A spare section is not like the one it stands in for",
    .why = "With a spare of another length or another socket the rod comes out longer, or the joint does not hold.",
    .action =
        "Measure length and butt diameter of both. Where the difference is meant, waive this finding with the "
        "reason.",
};

void JudgeSpareDiffers(const View& view, std::vector<Finding>& findings) {
  for (const Section& spare : view.rod.blank.sections) {
    const Section* original = spare.assembled() ? nullptr : view.rod.FindSection(spare.spare_for);
    if (original == nullptr || original == &spare) continue;
    std::vector<Number> numbers;
    // 1/8 in of length, 0.1 mm of diameter (common practice, no source)
    if (spare.length && original->length &&
        std::abs((spare.length->value - original->length->value).inches()) > 0.125) {
      numbers = {{"length_mm", spare.length->value.mm()}, {"original_length_mm", original->length->value.mm()}};
    }
    if (!spare.outer.empty() && !original->outer.empty()) {
      const double butt = spare.outer.At(0) * 1000, original_butt = original->outer.At(0) * 1000;
      if (std::abs(butt - original_butt) > 0.1) {
        numbers.push_back({"butt_mm", butt});
        numbers.push_back({"original_butt_mm", original_butt});
      }
    }
    if (numbers.empty()) continue;
    findings.push_back(MakeFinding(kSpareDiffers, spare.at,
                                   absl::StrFormat("differs from '%s', which it stands in for", original->id),
                                   std::move(numbers)));
    findings.back().related.push_back(original->at);
  }
}

}  // namespace

std::vector<Rule<View>> PieceRules() {
  return {{&kBalancePointOutside, JudgeBalancePointOutside},
          {&kBalanceAgainstTaper, JudgeBalanceAgainstTaper},
          {&kSpareDiffers, JudgeSpareDiffers}};
}

}  // namespace withy::sections
