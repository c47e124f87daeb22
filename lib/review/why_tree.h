// Opens one figure, step by step.
#ifndef WITHY_REVIEW_WHY_TREE_H_
#define WITHY_REVIEW_WHY_TREE_H_

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "figure_select.h"
#include "trace.h"
#include "withy/document/document.h"
#include "withy/rod/figure.h"
#include "withy/v1/report.pb.h"
#include "withy/v1/why.pb.h"

namespace withy {

class WhyTree {
 public:
  WhyTree(const Document& document, const v1::Report& report, const Trace& trace);

  // With inputs down to `depth` levels, and the shares of its uncertainty. `path` with the ids of its items.
  v1::WhyStep Open(const FieldPath& path, int depth);
  // By itself.
  v1::WhyStep Glance(const FieldPath& path) const;

 private:
  void FillShares(const FieldPath& path, v1::WhyStep& step);
  void AddInputs(const FieldPath& path, int depth, v1::WhyStep& step);
  struct Found {
    bool figures = false;  // of the report, else fields of the design
    std::vector<FieldPath> there, unset;
  };
  Found Find(std::string_view declared, const FigureContext& context) const;
  void AddDeclared(std::string_view declared, const FieldPath& path, int depth, v1::WhyStep& step);
  void AddFigure(const FieldPath& path, int depth, v1::WhyStep& step);
  void AddWritten(const FieldPath& path, v1::WhyStep& step) const;
  void AddAssumed(const FieldPath& path, v1::WhyStep& step) const;
  std::vector<FieldPath> Weightiest(std::vector<FieldPath> paths, bool figures) const;
  void KeepWhatCounts(std::vector<FieldPath>& paths) const;
  double ShareOf(const std::string& path) const;
  std::string MeasureFor(const FieldPath& path) const;
  bool HasInputs(const FieldPath& path) const;

  const Document& document_;
  const v1::Report& report_;
  const Trace& trace_;
  std::map<std::string, double> shares_;  // of the figure asked for, by field path
  std::set<std::string> opened_;
  std::unordered_map<std::string, std::string> unknown_;        // what would settle it, by path
  std::unordered_map<std::string, std::string> unknown_kinds_;  // by declared name, the first of each
};

// Null for what is none: `name` as declared.
const Figure* FindFigure(std::string_view name);

}  // namespace withy

#endif  // WITHY_REVIEW_WHY_TREE_H_
