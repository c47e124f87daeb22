// Reads a design, reviews it, prints how long the rod comes out and what the review found. Ends with 1 where there are
// findings of severity warning or error, and with 3 where the file could not be read.
#include <cstdio>
#include <string>
#include <vector>

#include "withy/document/document.h"
#include "withy/review/review.h"

namespace {

void Print(const std::vector<withy::Finding>& findings) {
  for (const withy::Finding& finding : findings) {
    std::printf("%s [%s] %s: %s\n", std::string(withy::SeverityName(finding.severity)).c_str(), finding.code.c_str(),
                finding.at.ToString().c_str(), finding.message.c_str());
  }
}

void PrintLength(const withy::v1::FitReport& fit) {
  if (fit.has_overall_length_mm()) {
    std::printf("overall length: %.1f mm\n", fit.overall_length_mm());
  } else {
    std::printf("overall length: cannot be told\n");
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fprintf(stderr, "usage: read_rod DESIGN\n");
    return 2;
  }
  absl::StatusOr<std::string> bytes = withy::ReadBytes(argv[1]);
  if (!bytes.ok()) {
    std::fprintf(stderr, "%s\n", bytes.status().ToString().c_str());
    return 3;
  }
  withy::ReadResult read = withy::ReadDesign(argv[1], *std::move(bytes));
  if (!read.document) {
    Print(read.findings);
    return 3;
  }
  withy::Review review = withy::ReviewDesign(read);
  withy::ApplyWaivers(*read.document, {}, review);
  PrintLength(review.report.fit());
  Print(review.findings);
  return withy::VerdictOf(review, withy::Severity::kWarning).kind == withy::Verdict::Kind::kFindings ? 1 : 0;
}
