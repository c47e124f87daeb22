#include "sought.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "withy/sections/material.h"

namespace withy::bending {
namespace {

// A wall read this near an end, as a share of the length, is that of the end: a bore is seen at its face, or just
// behind it.
constexpr double kAtTheEnd = 0.01;
// Where neither the design nor its material says more: between glass and carbon laminate. Only where the search starts.
constexpr double kStartModulusPa = 80e9, kStartDensity = 1600, kStartWallRatio = 0.1;
// A wall where the search starts leaves a bore: a search finds a thick wall from a thin one, and sticks the other way.
constexpr double kLargestStartRatio = 0.25;

MeasuredWalls MeasuredWallsOf(const Section& section) {
  MeasuredWalls walls;
  const double length = section.length->value.meters();
  for (const Station& station : section.taper.stations) {
    if (station.wall_source != Source::kMeasured || !station.at || !(station.wall || station.inner)) continue;
    const double at = station.at->meters(), outer = section.outer.At(at);
    const double wall = station.wall ? station.wall->meters() : (outer - station.inner->meters()) / 2;
    if (!(wall > 0) || at < 0 || at > length || (!walls.knots.empty() && at < walls.knots.back().x)) continue;
    walls.knots.push_back({at, wall});
    // What the table says of its diameters holds for a wall that says nothing.
    const double plus_minus = station.wall_plus_minus_m.value_or(section.taper.diameter_plus_minus_m.value_or(0));
    walls.deviations_m.push_back(plus_minus / 2);
    walls.butt |= at <= kAtTheEnd * length;
    walls.tip |= at >= (1 - kAtTheEnd) * length;
  }
  return walls;
}

double StartWall(const Section& section, const SectionAnswer& answer, bool tip) {
  const double at = tip ? section.outer.end() : section.outer.begin();
  const double outer = section.outer.At(at, tip ? Profile::Limit::kLeft : Profile::Limit::kRight);
  double ratio = kStartWallRatio;
  if (!section.wall.empty()) {
    const Profile::Knot& nearest = tip ? section.wall.knots().back() : section.wall.knots().front();
    ratio = nearest.y / section.outer.At(nearest.x);
  } else if (!answer.frusta.empty() && answer.frusta.front().outer0 > 0) {
    const Frustum& f = answer.frusta.front();
    ratio = (f.outer0 - f.inner0) / 2 / f.outer0;
  }
  return outer * std::clamp(ratio, 0.01, kLargestStartRatio);
}

// Of a wall that is written at that end.
std::optional<double> SaidWall(const Section& section, bool tip) {
  if (section.wall.empty()) return std::nullopt;
  const double length = section.length->value.meters(), near = kAtTheEnd * length;
  const Profile::Knot& knot = tip ? section.wall.knots().back() : section.wall.knots().front();
  return std::abs(knot.x - (tip ? length : 0)) <= near ? std::optional(knot.y) : std::nullopt;
}

bool SameLaminate(const Section& a, const Section& b) {
  return a.material == b.material && a.shape == b.shape;
}

bool IsMeasured(const Maybe<double>& value) {
  return value && value->value > 0 && value->source == Source::kMeasured;
}

// Modulus or density: of each section that measured it, and one for all others of a laminate.
class Laminates {
 public:
  Laminates(const Rod& rod, std::vector<Assumption>& assumptions) : rod_(rod), assumptions_(assumptions) {}

  void Add(int position, UnknownKind kind, SoughtFigures& sought) {
    const Section& section = At(position);
    const bool modulus = kind == UnknownKind::kModulus;
    const Maybe<double>& value = modulus ? section.modulus_pa : section.density_kg_m3;
    const bool measured = IsMeasured(value);
    if (!measured) {
      for (Sought& other : sought.figures) {
        if (other.kind != kind || other.held || !SameLaminate(At(other.sections.front()), section)) continue;
        other.sections.push_back(position);
        if (modulus) AssumeShared(section);
        return;
      }
    }
    Sought figure;
    figure.kind = kind;
    figure.sections = {position};
    figure.at = section.at.Field(modulus ? "modulus" : "density");
    figure.value = Start(section, value, modulus);
    if (value && value->value > 0) figure.said = value->value;
    figure.held = measured;
    if (measured) figure.held_deviation = value->plus_minus.value_or(0) / 2 / value->value;
    sought.figures.push_back(std::move(figure));
  }

 private:
  const Section& At(int position) const { return rod_.blank.sections[rod_.blank.assembled[position]]; }

  static double Start(const Section& section, const Maybe<double>& value, bool modulus) {
    if (value && value->value > 0) return value->value;
    if (modulus) {
      const auto table = ModulusOfMaterial(section.material);
      return table ? table->pa : kStartModulusPa;
    }
    const auto table = DensityOfMaterial(section.material);
    return table ? table->kg_m3 : kStartDensity;
  }

  void AssumeShared(const Section& section) {
    assumptions_.push_back({section.at.Field("modulus"), "modulus and density as of the sections before it",
                            "sections of one material are made alike: common practice, no source"});
  }

  const Rod& rod_;
  std::vector<Assumption>& assumptions_;
};

void AddWall(int position, const Section& section, const SectionAnswer& answer, UnknownKind kind, bool held,
             const MeasuredWalls& walls, SoughtFigures& sought) {
  const bool tip = kind == UnknownKind::kWallAtTip;
  Sought figure;
  figure.kind = kind;
  figure.sections = {position};
  figure.at = WallPath(section, tip);
  figure.held = held;
  figure.said = SaidWall(section, tip);
  if (held) figure.said = tip ? walls.knots.back().y : walls.knots.front().y;
  figure.value = held ? *figure.said : StartWall(section, answer, tip);
  if (held) figure.held_deviation = (tip ? walls.deviations_m.back() : walls.deviations_m.front()) / figure.value;
  // One wall for all of it must leave a bore at the tip, too.
  if (kind == UnknownKind::kWall) figure.value = std::min(figure.value, StartWall(section, answer, true));
  sought.figures.push_back(std::move(figure));
}

void AddWalls(int position, const Section& section, const SectionAnswer& answer, WallModel model,
              SoughtFigures& sought) {
  const MeasuredWalls& walls = sought.walls.back();
  if (section.shape != Shape::kTube) return;
  if (model == WallModel::kPerSection && !walls.butt && !walls.tip) {
    AddWall(position, section, answer, UnknownKind::kWall, false, walls, sought);
    return;
  }
  AddWall(position, section, answer, UnknownKind::kWallAtButt, walls.butt, walls, sought);
  AddWall(position, section, answer, UnknownKind::kWallAtTip, walls.tip, walls, sought);
}

}  // namespace

FieldPath WallPath(const Section& section, bool tip) {
  const auto& stations = section.taper.stations;
  if (stations.empty()) return {};
  const auto lies_before = [](const Station& a, const Station& b) {
    return a.at.value_or(Length()).meters() < b.at.value_or(Length()).meters();
  };
  const auto [first, last] = std::minmax_element(stations.begin(), stations.end(), lies_before);
  return section.taper.PathOf(tip ? *last : *first).Field("wall");
}

int SectionShownFor(const Sought& figure, const Rod& rod) {
  const std::vector<int>& assembled = rod.blank.assembled;
  const bool whole = assembled.size() > 1 && figure.sections.size() == assembled.size();
  return whole ? -1 : assembled[figure.sections.front()];
}

SoughtFigures SoughtIn(const Rod& rod, const SectionsAnswers& sections, WallModel wall,
                       std::vector<Assumption>& assumptions) {
  SoughtFigures sought;
  Laminates laminates(rod, assumptions);
  for (int k = 0; k < static_cast<int>(rod.blank.assembled.size()); ++k) {
    const Section& section = rod.blank.sections[rod.blank.assembled[k]];
    sought.walls.push_back(MeasuredWallsOf(section));
    sought.diameter_deviation_m.push_back(section.taper.diameter_plus_minus_m.value_or(0) / 2);
    laminates.Add(k, UnknownKind::kModulus, sought);
    laminates.Add(k, UnknownKind::kDensity, sought);
    AddWalls(k, section, sections.sections[k], wall, sought);
  }
  return sought;
}

}  // namespace withy::bending
