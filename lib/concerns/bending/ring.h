// How a rod rings, and what each thing on it costs.
#ifndef WITHY_BENDING_RING_H_
#define WITHY_BENDING_RING_H_

#include <optional>
#include <vector>

#include "loaded_beam.h"

namespace withy::bending {

struct Ringing {
  std::vector<double> frequency_hz;  // three, lowest first; empty where the beam is none
  std::optional<Uncertain> first_hz;
  std::vector<double> share_of_thing;  // of each thing, in the first mode: its part of the kinetic energy
};
Ringing RingingOf(const LoadedBeam& rod, std::size_t things);

// What a thing with the share c of the kinetic energy costs of the frequency f: without it f' = f / sqrt(1 - c), by
// Rayleigh's quotient of the unchanged shape; f' - f. Exact to first order in c, and never less than what is lost.
double LossOf(double frequency_hz, double share);

}  // namespace withy::bending

#endif  // WITHY_BENDING_RING_H_
