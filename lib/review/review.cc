#include "withy/review/review.h"

#include <iterator>
#include <utility>

#include "after_cuts.h"
#include "answers.h"
#include "finding_record.h"
#include "waivers.h"
#include "withy/rod/resolve.h"

namespace withy {
namespace {

void Append(std::vector<Finding> more, std::vector<Finding>& findings) {
  findings.insert(findings.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

}  // namespace

Review ReviewDesign(const ReadResult& read, const ReviewOptions& options) {
  Review review;
  if (!read.document) {
    review.findings = read.findings;
    return review;
  }
  review.findings = read.findings;  // what was not understood cannot be waived
  std::vector<Finding> found = CheckDocument(*read.document);
  const Rod rod = Resolve(*read.document);
  Append(rod.findings, found);
  const Answers answers = ComputeAnswers(rod, options.practices);
  CheckAnswers(rod, answers, found);
  review.report = MakeReport(rod, answers);
  ReportAfterCuts(*read.document, rod, review.report);
  review.report.set_design_digest(DesignDigest(read.document->design));
  review.rod = MakeRodView(rod);
  SortByWaivers(*read.document, std::move(found), review);
  SortByPlace(*read.document, review.findings);
  for (const Finding& finding : review.findings) *review.report.add_findings() = RecordOf(finding);
  return review;
}

}  // namespace withy
