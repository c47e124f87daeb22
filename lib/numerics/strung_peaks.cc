#include <cmath>

#include "strung_figures.h"
#include "strung_search.h"
#include "withy/numerics/strung_beam.h"

namespace withy {
namespace {

constexpr int kSamplesOfSection = 16;

}  // namespace

StrungPeaks PeaksOf(const Beam& beam, const std::vector<double>& outer_m, const std::vector<BeamRing>& rings,
                    const StrungLoad& load, const StrungBeam& solved) {
  const StrungCase given(beam, rings, load);
  StrungPeaks peaks;
  if (!Fits(given, solved) || outer_m.size() != 2 * beam.pieces.size()) return peaks;
  for (std::size_t k = 0; k < given.spans(); ++k) {
    const std::vector<BendArc> arcs = ArcsOf(given, solved, k);
    const auto moment = [&](std::size_t arc, double t) { return std::abs(arcs[arc].MomentAt(t)); };
    const auto curvature = [&](std::size_t arc, double t) {
      return moment(arc, t) / beam.pieces[arcs[arc].piece].StiffnessAt(arcs[arc].s0 + t * arcs[arc].length);
    };
    const auto strain = [&](std::size_t arc, double t) {
      return curvature(arc, t) * OuterAt(beam, outer_m, arcs[arc], t) / 2;
    };
    const auto raise = [&](const auto& of, double& peak, double& peak_s) {
      const LeastOnArc least =
          LeastAlong(arcs, kSamplesOfSection, [&](std::size_t arc, double t) { return -of(arc, t); });
      if (-least.value <= peak) return;
      peak = -least.value;
      peak_s = arcs[least.arc].s0 + least.t * arcs[least.arc].length;
    };
    raise(moment, peaks.moment, peaks.moment_s);
    raise(curvature, peaks.curvature, peaks.curvature_s);
    raise(strain, peaks.strain, peaks.strain_s);
  }
  return peaks;
}

}  // namespace withy
