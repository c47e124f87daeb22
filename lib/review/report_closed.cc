// What the log has closed, in the report.
#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

const char* KindWord(Closed::Kind kind) {
  switch (kind) {
    case Closed::Kind::kCut:
      return "cut";
    case Closed::Kind::kGlued:
      return "glued";
    case Closed::Kind::kPotted:
      return "potted";
    case Closed::Kind::kReamed:
      return "reamed";
    case Closed::Kind::kWrapped:
      return "wrapped";
    case Closed::Kind::kCoated:
      return "coated";
  }
  return "";
}

}  // namespace

void ReportClosed(const Rod& rod, v1::Report& report) {
  for (const Closed& closed : rod.closed) {
    v1::ClosedFact& fact = *report.add_closed();
    fact.set_kind(KindWord(closed.kind));
    fact.set_what(closed.id);
    fact.set_at(closed.at.ToString());
    if (closed.kind == Closed::Kind::kCut) {
      if (closed.end != End::kUnknown) fact.set_at_end(closed.end == End::kButt ? "butt" : "tip");
      Put(std::optional<double>(closed.amount), kMm, [&](double mm) { fact.set_amount_mm(mm); });
    } else if (closed.kind == Closed::Kind::kPotted || closed.kind == Closed::Kind::kCoated) {
      fact.set_count(static_cast<std::uint32_t>(closed.amount));
    }
  }
}

}  // namespace withy
