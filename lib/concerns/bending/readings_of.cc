#include "readings_of.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "absl/strings/str_format.h"
#include "withy/sections/material.h"

namespace withy::bending {
namespace {

constexpr char kPlugToo[] = "the spigot that is fixed in it was on the scales, too, and its mass is not known";
constexpr double kSameM = 0.002;  // a place this far beyond the tip is the tip

class Collector {
 public:
  Collector(const Rod& rod, const TrialBlank& blank) : rod_(rod), blank_(blank) {}

  ReadingsFound Collect() {
    for (int k = 0; k < static_cast<int>(rod_.blank.assembled.size()); ++k) TakeSection(k);
    for (const Weighing& weighing : rod_.weighings) TakeSeveral(weighing);
    for (const BenchReading& reading : rod_.blank.bench) TakeBench(reading);
    return std::move(found_);
  }

 private:
  const Section& At(int position) const { return rod_.blank.sections[rod_.blank.assembled[position]]; }

  void Take(ReadingModel model) {
    if (model.measured > 0 && model.deviation > 0 && std::isfinite(model.deviation / model.measured)) {
      found_.usable.push_back(std::move(model));
    } else {
      LeaveOut(model.kind, model.at, model.measured,
               model.kind == ReadingKind::kFrequency ? "the cycles counted are not above zero"
                                                     : "not above zero: cannot be");
    }
  }
  void LeaveOut(ReadingKind kind, const FieldPath& at, double measured, std::string why, bool faulty = true) {
    IdentifiedReading reading;
    reading.kind = kind;
    reading.at = at;
    reading.measured = measured;
    reading.remark = std::move(why);
    reading.faulty = faulty;
    found_.unusable.push_back(std::move(reading));
  }

  void TakeMass(const Known<Mass>& mass, std::vector<WeighedPiece> pieces) {
    if (mass.source != Source::kMeasured) return;
    ReadingModel model;
    model.kind = ReadingKind::kMass;
    model.at = mass.at;
    model.measured = mass.value.kilograms();
    Known<Mass> stated = mass;
    if (stated.plus_minus && !(*stated.plus_minus > 0)) stated.plus_minus.reset();
    model.deviation = MassPlusMinus(stated, found_.unstated) / 2;
    model.pieces = std::move(pieces);
    Take(std::move(model));
  }
  void TakeBalance(const Maybe<Length>& balance, std::vector<WeighedPiece> pieces) {
    if (!balance || balance->source != Source::kMeasured) return;
    ReadingModel model;
    model.kind = ReadingKind::kBalance;
    model.at = balance->at;
    model.measured = balance->value.meters();
    model.deviation = Stated(balance->plus_minus, kUnstatedBalanceM) / 2;
    model.pieces = std::move(pieces);
    Take(std::move(model));
  }
  // None, as a ± of 0, is what nobody knows of a reading: what is usual then.
  double Stated(const std::optional<double>& plus_minus, double otherwise) {
    if (plus_minus && *plus_minus > 0) return *plus_minus;
    found_.unstated = true;
    return otherwise;
  }

  // A plug that is fixed in it was on the scales, too, unless its mass stands apart.
  bool HoldsAPlug(int position) const {
    return std::any_of(rod_.blank.joints.begin(), rod_.blank.joints.end(), [&](const Joint& joint) {
      return !joint.spigot_fixed_in.empty() && joint.spigot_fixed_in == At(position).id && !joint.spigot_mass;
    });
  }

  // Balance points count from the section's butt end as supplied: so does each piece.
  static WeighedPiece PieceOf(int position, const SectionMass& mass) {
    return {position, mass.from.meters(), mass.to.meters(), mass.from.meters()};
  }
  void TakeSection(int position) {
    const Section& section = At(position);
    if (HoldsAPlug(position)) {
      if (section.mass) LeaveOut(ReadingKind::kMass, section.mass->mass.at, 0, kPlugToo, false);
      return;
    }
    if (section.mass) {
      TakeMass(section.mass->mass, {PieceOf(position, *section.mass)});
      TakeBalance(section.mass->balance, {PieceOf(position, *section.mass)});
    }
    if (section.balanced_before && !(section.mass && section.mass->balance)) {
      TakeBalance(section.balanced_before->balance, {PieceOf(position, *section.balanced_before)});
    }
  }

  // Sections of the blank together and nothing else. Where all of them were, they were put together, and the balance
  // point counts, too.
  void TakeSeveral(const Weighing& weighing) {
    if (weighing.with_reel) return;
    std::vector<WeighedPiece> pieces;
    for (std::size_t i = 0; i < weighing.what.size(); ++i) {
      const auto& assembled = rod_.blank.assembled;
      const auto found = std::find_if(assembled.begin(), assembled.end(),
                                      [&](int s) { return rod_.blank.sections[s].id == weighing.what[i]; });
      if (found == assembled.end()) return;
      const int position = static_cast<int>(found - assembled.begin());
      if (HoldsAPlug(position)) return LeaveOut(ReadingKind::kMass, weighing.mass.at, 0, kPlugToo, false);
      const Weighing::Off& off = weighing.off[i];
      pieces.push_back({position, off.butt_m, At(position).length->value.meters() - off.tip_m, 0});
    }
    std::sort(pieces.begin(), pieces.end(), [](const auto& a, const auto& b) { return a.position < b.position; });
    TakeMass(weighing.mass, pieces);
    if (!blank_.length_m() || pieces.size() != rod_.blank.assembled.size() || pieces.front().position != 0) return;
    for (WeighedPiece& piece : pieces) {
      piece.start_m = blank_.StartOf(piece.position) + piece.from_m - pieces.front().from_m;
    }
    TakeBalance(weighing.balance, std::move(pieces));
  }

  // Why it says nothing; empty where it does.
  std::string WhatIsMissing(const BenchReading& reading) const {
    const bool drop = reading.kind == BenchReading::Kind::kDrop;
    if (!blank_.length_m()) return "how the sections meet is not known: where it was clamped cannot be told";
    if (!reading.clamp) return "where it was clamped is not known";
    if (drop && !reading.load) return "the weight that was hung is not known";
    if (drop && !(reading.load->value.kilograms() > 0)) return "the weight that was hung is not above zero";
    if (reading.load && reading.load->value.kilograms() < 0) return "the mass that was mounted is below zero";
    if (drop && !reading.drop) return "no drop was read";
    if (!drop && !(reading.cycles && reading.time_s)) return "cycles and their time are both needed";
    if (!drop && !(reading.time_s->value > 0)) return "the time is not above zero";
    const double clamp = reading.clamp->value.meters(), tip = *blank_.length_m();
    if (clamp < 0 || clamp >= tip) return "the clamp is not on the blank";
    for (const Maybe<Length>* place : {&reading.load_at, &reading.read_at}) {
      if (!*place) continue;
      if ((*place)->value.meters() > tip + kSameM) return "a place lies beyond the tip of the blank";
      if ((*place)->value.meters() <= clamp) return "a place lies behind the clamp";
    }
    return "";
  }

  void TakeBench(const BenchReading& reading) {
    const bool drop = reading.kind == BenchReading::Kind::kDrop;
    ReadingModel model;
    model.kind = drop ? ReadingKind::kDrop : ReadingKind::kFrequency;
    model.at = reading.at.Field(drop ? "drop" : "beat");
    if (std::string missing = WhatIsMissing(reading); !missing.empty()) {
      LeaveOut(model.kind, model.at, 0, std::move(missing));
      return;
    }
    const double tip = *blank_.length_m();
    model.clamp_m = reading.clamp->value.meters();
    model.load_kg = reading.load ? reading.load->value.kilograms() : 0;
    model.load_at_m = reading.load_at ? reading.load_at->value.meters() : tip;
    model.read_at_m = reading.read_at ? reading.read_at->value.meters() : model.load_at_m;
    if (drop) {
      model.measured = reading.drop->value.meters();
      const double free = std::min(model.read_at_m, tip) - model.clamp_m;
      if (model.measured >= free) {
        LeaveOut(model.kind, model.at, model.measured,
                 absl::StrFormat("the blank reaches %.0f mm from its clamp to where it was read: no drop is as large",
                                 free * 1000));
        return;
      }
      const double by_load = model.measured * reading.load->plus_minus.value_or(0) / reading.load->value.kilograms();
      model.deviation = std::hypot(Stated(reading.drop->plus_minus, kUnstatedDropM), by_load) / 2;
    } else {
      model.measured = *reading.cycles / reading.time_s->value;
      model.deviation = model.measured * Stated(reading.time_s->plus_minus, kUnstatedTimeS) / reading.time_s->value / 2;
    }
    Take(std::move(model));
  }

  const Rod& rod_;
  const TrialBlank& blank_;
  ReadingsFound found_;
};

}  // namespace

ReadingsFound ReadingsOf(const Rod& rod, const TrialBlank& blank) {
  return Collector(rod, blank).Collect();
}

}  // namespace withy::bending
