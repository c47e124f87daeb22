// The guides of a design placed for its reel, line and loads: what `withy guides` says and writes.
//
//   v1::PlacementReport proposal = PlacementOf(*read.document, {});
//   AddPlacement(*read.document, {}, review.report);           // the same as report.placement
//   absl::StatusOr<std::string> bytes = WithPlacement(*read.document, proposal, {.date = "2026-05-02"});
//
// The work is done by withy/guides/train_plan.h; it takes some tenths of a second, so a review leaves it out and
// whoever wants it asks.
#ifndef WITHY_REVIEW_PLACEMENT_H_
#define WITHY_REVIEW_PLACEMENT_H_

#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/document/document.h"
#include "withy/guides/practice.h"
#include "withy/v1/report.pb.h"

namespace withy {

// So many guides of a model of the design are at hand.
struct StockOfModel {
  std::string model;
  int count = 0;
};

// More guides than any rod carries would take seconds.
inline constexpr int kMostPlaced = 40;

struct PlacementOptions {
  bool gaps_may_grow = false;       // towards the tip
  std::optional<double> grid_mm;    // places are whole multiples of it; unset = 1/8 in or 2 mm, by the design's units
  int count = 0;                    // guides to place; 0 = as many as the design lists
  std::vector<StockOfModel> stock;  // choose the models from these; empty = the design's
  std::vector<Practice> practices;  // of plugins: what is usual, in place of withy's own
};

// The grid that `options` mean for a design, in mm.
double PlacementGridMm(const v1::Design& design, const PlacementOptions& options);

// What keeps `options` from being meant for a design, as one would say it: a model that it does not have (with the
// nearest one), too few guides in stock, a grid or count out of all proportion. Empty where nothing does.
std::string WhatIsWrongWith(const PlacementOptions& options, const v1::Design& design);

// Never fails: a design that does not tell enough ends in the state "cannot tell", with what to write or measure.
// REQUIRES: nothing is wrong with `options`.
v1::PlacementReport PlacementOf(const Document& document, const PlacementOptions& options);

// Fills report.placement.
void AddPlacement(const Document& document, const PlacementOptions& options, v1::Report& report);

// Of the entry in identity.changes.
struct PlacementMark {
  std::string date, author;
};

// The bytes of the design with the proposed place, and model where it is another, of every guide that is not locked:
// planned (no source), in inches where the grid is a fraction of an inch, else in mm; no other byte is touched
// (rewrite.h) but for an entry in identity.changes. The bytes as they were where nothing changes.
//
// FailedPrecondition, with what to do: a state other than "placed", unless `unplaced_too`, and any without places;
// another number of guides than the design has; a design of version 0.
absl::StatusOr<std::string> WithPlacement(const Document& document, const v1::PlacementReport& proposal,
                                          const PlacementMark& mark, bool unplaced_too = false);

}  // namespace withy

#endif  // WITHY_REVIEW_PLACEMENT_H_
