#include <algorithm>
#include <cmath>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "absl/strings/strip.h"
#include "bench_log.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"
#include "withy/document/print.h"
#include "withy/review/placement.h"
#include "withy/review/placement_text.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy guides spinning.txtpb", "where the guides should stand, and what that is worth"},
    {"withy guides spinning.txtpb --apply -o placed.txtpb", "and put the places into the design"},
    {"withy guides casting.txtpb --free --count 9", "nine guides, gaps that may grow towards the tip"},
    {"withy guides spinning.txtpb --stock ring-25=1,ring-16=1,ring-10=1,ring-7=2,runner=6",
     "from what is in the drawer"},
    {"withy guides spinning.txtpb --lifted '300 g' --butt-angle '45 deg' --touched none -o tested.txtpb",
     "record a static test of the bench"},
};

constexpr int kMostOfModel = 1000;

constexpr OptionSpec kOptions[] = {
    {"--free", "", "gaps may grow towards the tip"},
    {"--grid", "LENGTH", "places are whole multiples of it: '1/8 in', '2 mm' (by the design's units)"},
    {.name = "--count", .value = "N", .summary = "place so many guides (as many as the design lists)", .most = kMostPlaced},
    {.name = "--stock", .value = "MODEL=COUNT,...", .summary = "choose the models from these", .repeatable = true},
    {"--apply", "", "put places, and models chosen, into the design"},
    {"--json", "", "print JSON (PlacementReport of placement.proto)"},
};

constexpr OptionSpec kTestOptions[] = {
    {"--lifted", "MASS", "record a static test: the weight on the line, '450 g'"},
    {"--butt-angle", "ANGLE", "of the butt above the horizontal: '45 deg'"},
    {"--line-angle", "ANGLE", "of the line from the butt's forward axis, clockwise (straight down)"},
    {"--clamp", "LENGTH", "the hand's or clamp's tip-side edge from the butt end (the holding point)"},
    {"--tip-drop", "LENGTH", "the tip below the line straight on from the butt"},
    {"--touched", "ID,...|none", "the guides ahead of which the line touched the blank"},
    {"--saw", "TEXT", "what else was seen"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions,       kTestOptions,    RecordingOptions(),
                                               UnitsOptions(), PluginOptions(), ReadLimitOptions()};

// What was typed of a test at the bench.
struct TypedTest {
  std::optional<MassText> lifted;
  std::optional<AngleText> butt_angle, line_angle;
  std::optional<LengthText> clamp, tip_drop;
};

bool ReadTest(const Options& options, Io& io, TypedTest& test) {
  if (!ReadMass(options, "--lifted", io, &test.lifted) || !ReadAngle(options, "--butt-angle", io, &test.butt_angle) ||
      !ReadAngle(options, "--line-angle", io, &test.line_angle) || !ReadLength(options, "--clamp", io, &test.clamp) ||
      !ReadLength(options, "--tip-drop", io, &test.tip_drop)) {
    return false;
  }
  for (std::string_view option :
       {"--butt-angle", "--line-angle", "--clamp", "--tip-drop", "--touched", "--saw", "--note"}) {
    if (!options.Has(option) || test.lifted) continue;
    io.Complain(absl::StrCat(std::string(option), " goes with --lifted: the weight on the line"));
    return false;
  }
  for (std::string_view option : {"--by", "--output", "--force"}) {
    if (!options.Has(option) || test.lifted || options.Has("--apply")) continue;
    io.Complain(absl::StrCat(std::string(option), " goes with --apply or --lifted"));
    return false;
  }
  if (test.lifted && !test.butt_angle) {
    io.Complain("--lifted goes with --butt-angle: how the rod was held", "--butt-angle '45 deg', or '0 deg' for level");
    return false;
  }
  if (test.lifted && options.Has("--apply")) {
    io.Complain("--lifted and --apply are two steps: record the test first, then place by what it shows");
    return false;
  }
  return true;
}

std::vector<std::string> TouchedIds(const Options& options) {
  const std::string touched = options.Value("--touched");
  if (touched.empty() || touched == "none") return {};
  return absl::StrSplit(touched, ',', absl::SkipWhitespace());
}

v1::Entry TestEntry(const TypedTest& test, const Options& options) {
  v1::Entry entry;
  v1::StaticTest& to = *entry.mutable_static_test();
  *to.mutable_lifted() = MeasuredMass(*test.lifted);
  *to.mutable_butt_angle() = MeasuredAngle(*test.butt_angle);
  if (test.line_angle) *to.mutable_line_angle() = MeasuredAngle(*test.line_angle);
  if (test.clamp) *to.mutable_clamp_from_butt() = MeasuredLength(*test.clamp, std::nullopt);
  if (test.tip_drop) *to.mutable_tip_drop() = MeasuredLength(*test.tip_drop, std::nullopt);
  for (const std::string& id : TouchedIds(options)) to.add_touched_after(id);
  to.set_line_touched(to.touched_after_size() > 0);
  to.set_observation(options.Value("--saw"));
  return entry;
}

int RecordTest(const TypedTest& test, const Options& options, Io& io, CheckedDesign& checked) {
  BenchReadings readings;
  readings.lifted_g = test.lifted->value.grams();
  readings.butt_angle_deg = test.butt_angle->value.degrees();
  if (test.line_angle) readings.line_angle_deg = test.line_angle->value.degrees();
  if (test.clamp) readings.clamp_mm = test.clamp->value.mm();
  if (test.tip_drop) readings.tip_drop_mm = test.tip_drop->value.mm();
  readings.touched = TouchedIds(options);
  return Record({TestEntry(test, options)}, readings, options, io, checked);
}

// "ring-16=2,runner=4". False, said on standard error, where it is none: kUsage.
bool ReadStock(const Options& options, Io& io, std::vector<StockOfModel>& stock) {
  for (const std::string& value : options.Values("--stock")) {
    if (absl::StripAsciiWhitespace(value).empty()) {
      io.Complain("--stock: no MODEL=COUNT", "ring-16=2,runner=4: models by their id in guide_models");
      return false;
    }
    for (const absl::string_view item : absl::StrSplit(value, ',', absl::SkipWhitespace())) {
      const std::vector<std::string> parts = absl::StrSplit(item, '=');
      StockOfModel of;
      if (parts.size() != 2 || parts[0].empty() || !absl::SimpleAtoi(parts[1], &of.count) || of.count < 1 ||
          of.count > kMostOfModel) {
        io.Complain(absl::StrCat("--stock: '", item, "' is no MODEL=COUNT, counts from 1 to ", kMostOfModel),
                    "ring-16=2,runner=4: models by their id in guide_models");
        return false;
      }
      of.model = parts[0];
      stock.push_back(of);
    }
  }
  return true;
}

bool ReadOptions(const Options& options, Io& io, PlacementOptions& placement) {
  placement.gaps_may_grow = options.Has("--free");
  placement.count = static_cast<int>(options.Number("--count", 0));
  std::optional<LengthText> grid;
  if (!ReadLength(options, "--grid", io, &grid) || !ReadStock(options, io, placement.stock)) return false;
  if (grid) placement.grid_mm = grid->value.mm();
  return true;
}

int StatusOf(const v1::PlacementReport& placement) {
  if (placement.state() == "placed") return kDone;
  return placement.state() == "not possible" ? kFindings : kIncomplete;
}

int Apply(const Document& document, const v1::PlacementReport& placement, const Options& options, Io& io) {
  const PlacementMark mark = {.date = BenchDate(), .author = options.Value("--by")};
  const absl::StatusOr<std::string> bytes = WithPlacement(document, placement, mark, options.Has("--force"));
  if (!bytes.ok()) {
    io.Complain(std::string(bytes.status().message()));
    return StatusOf(placement) == kDone ? kFindings : StatusOf(placement);
  }
  if (*bytes == document.bytes) {
    io.Complain(absl::StrCat(document.name, ": nothing changes: the guides stand where they are proposed already"));
    if (!options.Has("--output")) return kDone;
  }
  return StoreDesign(document, *bytes, options, io);
}

int Run(const Options& options, Io& io) {
  TypedTest test;
  PlacementOptions wanted;
  if (!ReadTest(options, io, test) || !ReadOptions(options, io, wanted)) return kUsage;
  bool failed = false;
  const ReviewOptions review = ReviewOptionsFrom(options, io, &failed);
  wanted.practices = review.practices;
  const std::string& path = options.operands().front();
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io, review);
  if (!checked) return kUnreadable;
  if (const std::string wrong = WhatIsWrongWith(wanted, checked->read.document->design); !wrong.empty()) {
    io.Complain(wrong);
    return kUsage;
  }
  if (test.lifted) {
    if (const int status = RecordTest(test, options, io, *checked); status != kDone) return status;
  }
  const Document& document = *checked->read.document;
  const v1::PlacementReport placement = PlacementOf(document, wanted);
  if (options.Has("--apply")) {
    if (const int status = Apply(document, placement, options, io); status != kDone) return status;
  }
  const ShowOptions show = {.units = UnitsFrom(options, document.design), .style = io.out_style()};
  PrintResult(options.Has("--json") ? MessageToJson(placement) : PlacementText(path, document.design, placement, show),
              options, test.lifted || options.Has("--apply"), io);
  NoteErrors(*checked, io);
  const int status = StatusOf(placement);
  return status == kDone && failed ? kIncomplete : status;
}

}  // namespace

const Command kGuides = {
    .name = "guides",
    .operands = "FILE",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "Place the guides for the reel, the line and the loads; record static tests",
    .details =
        "Rod and line are bent together under each load case that pulls through the line, and the guides moved until "
        "the "
        "largest turn of the line at any of them is least. Guides that are locked, wrapped or placed by the log stay. "
        "--apply "
        "writes the places as planned values and an entry into identity.changes, nothing else; it refuses what does "
        "not keep "
        "all limits (exit status 1) or cannot be told (4) unless forced. --stock chooses which model goes where: no "
        "ring larger "
        "than the one before it, the least mass near the tip, the first frequency kept. --lifted adds a static test to "
        "the log; "
        "a reading that cannot be right is refused (exit status 1). The date is the clock's, or SOURCE_DATE_EPOCH.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
