// Bending in the report.
#include <algorithm>
#include <numbers>

#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

constexpr double kDeg = 180 / std::numbers::pi;
constexpr double kMilli = 1000;
constexpr std::size_t kMostPlaces = 60;

const char* ModulusWord(Source source) {
  switch (source) {
    case Source::kMeasured:
      return "measured";
    case Source::kCatalogue:
      return "catalogue";
    case Source::kPlan:
      return "planned";
    case Source::kEstimated:
      return "estimated";
    case Source::kComputed:
      return "computed";
    case Source::kAssumed:
      break;
  }
  return "assumed";
}

// At the ends of all pieces, at a step on both sides; of very many pieces at even distances.
void ReportStiffness(const BendingOf& of, v1::BendingOf& to) {
  const auto add = [&](double s, double stiffness) {
    to.add_at_mm((of.clamp_m + s) * kMm);
    to.add_ei_n_m2(stiffness);
  };
  std::vector<std::pair<double, double>> places;
  for (const BeamPiece& piece : of.beam.pieces) {
    for (const double s : {piece.s0, piece.s1}) {
      const std::pair<double, double> place(s, piece.StiffnessAt(s));
      const bool same = !places.empty() && places.back().first == s &&
                        std::abs(places.back().second - place.second) <= 1e-9 * place.second;
      if (!same) places.push_back(place);
    }
  }
  if (places.size() <= kMostPlaces) {
    for (const auto& [s, stiffness] : places) add(s, stiffness);
    return;
  }
  auto piece = of.beam.pieces.begin();
  for (std::size_t i = 0; i < kMostPlaces; ++i) {
    const double s = of.beam.length() * static_cast<double>(i) / (kMostPlaces - 1);
    while (piece + 1 != of.beam.pieces.end() && s > piece->s1) ++piece;
    add(s, piece->StiffnessAt(s));
  }
}

void ReportShape(const BentRod& bent, v1::BentShape& to) {
  for (const BentPoint& point : bent.points) {
    to.add_at_mm((bent.clamp_m + point.at.s) * kMm);
    to.add_forward_mm(point.at.x * kMm);
    to.add_up_mm(point.at.y * kMm);
    to.add_moment_n_m(point.at.moment);
    to.add_strain_millistrain(point.strain * kMilli);
  }
  to.set_reached(bent.shape.reached);
  to.set_tip_angle_deg(bent.shape.tip().angle * kDeg);
  to.set_peak_at_mm((bent.clamp_m + bent.peak_at_m) * kMm);
  to.set_strain_energy_j(bent.shape.strain_energy);
  to.set_error_mm(bent.shape.error * kMm);
}

void ReportCase(const BentRod& bent, v1::BentShape& to) {
  to.set_id(bent.id);
  to.set_at(bent.at.ToString());
  to.set_state(StateWord(bent.shape.state));
  if (bent.points.empty()) return;  // no load, a place that cannot be held, or a load out of all proportion
  to.set_clamp_mm(bent.clamp_m * kMm);
  Put(bent.load_n, kAsIs, [&](double n) { to.set_load_n(n); });
  to.set_load_angle_deg(bent.load_angle * kDeg);
  to.set_butt_angle_deg(bent.butt_angle * kDeg);
  ReportShape(bent, to);
  PutWithPlusMinus(
      bent.tip_drop_m, kMm, [&](double mm) { to.set_tip_drop_mm(mm); },
      [&](double mm) { to.set_tip_drop_plus_minus_mm(mm); });
  PutWithPlusMinus(
      bent.clamp_moment_n_m, kAsIs, [&](double n_m) { to.set_clamp_moment_n_m(n_m); },
      [&](double n_m) { to.set_clamp_moment_plus_minus_n_m(n_m); });
  PutWithPlusMinus(
      bent.peak_strain, kMilli, [&](double strain) { to.set_peak_strain_millistrain(strain); },
      [&](double strain) { to.set_peak_strain_plus_minus_millistrain(strain); });
}

void ReportPower(const Power& power, v1::PowerReading& to) {
  PutWithPlusMinus(
      std::optional<Uncertain>(power.load_kg), kGrams, [&](double g) { to.set_load_g(g); },
      [&](double g) { to.set_load_plus_minus_g(g); });
  to.set_coins(power.coins);
  to.set_tip_angle_deg(power.tip_angle * kDeg);
  to.set_action(ActionFor(power.tip_angle));
  Put(power.line_number, kAsIs, [&](double number) { to.set_line_number(number); });
}

void ReportOne(const BendingOf& of, v1::BendingOf& to) {
  to.set_clamp_mm(of.clamp_m * kMm);
  to.set_free_length_mm(of.beam.length() * kMm);
  ReportStiffness(of, to);
  for (const BentRod& bent : of.cases) ReportCase(bent, *to.add_cases());
  if (of.power) ReportPower(*of.power, *to.mutable_power());
  for (const double hz : of.frequency_hz) to.add_frequency_hz(hz);
  PutWithPlusMinus(
      of.first_frequency_hz, kAsIs, [](double) {}, [&](double hz) { to.set_frequency_plus_minus_hz(hz); });
}

}  // namespace

const char* StateWord(ElasticaState state) {
  switch (state) {
    case ElasticaState::kSolved:
      return "bent";
    case ElasticaState::kSeveral:
      return "several";
    case ElasticaState::kNone:
      return "none";
    case ElasticaState::kNotConverged:
    case ElasticaState::kBadInput:
      break;
  }
  return "cannot tell";
}

void ReportBending(const BendingAnswers& answers, v1::BendingReport& report) {
  if (answers.bare) ReportOne(*answers.bare, *report.mutable_bare());
  if (answers.finished) ReportOne(*answers.finished, *report.mutable_finished());
  for (const FrequencyLoss& loss : answers.losses) {
    v1::FrequencyLoss& to = *report.add_losses();
    to.set_id(loss.id);
    to.set_at(loss.at.ToString());
    to.set_hz(loss.hz);
  }
  Put(answers.train_costs_hz, kAsIs, [&](double hz) { report.set_train_costs_hz(hz); });
  if (answers.bare) report.set_modulus_from(ModulusWord(answers.modulus_from));
}

}  // namespace withy
