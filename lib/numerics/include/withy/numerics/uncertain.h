// A number with its uncertainty carried to first order.
//
//   Inputs inputs;                                   // one per computation
//   Uncertain length = inputs.Add(2209.8, 1.6);      // 2209.8 +/- 1.6
//   Uncertain twice = length + length;               // +/- 3.2: the same input twice, not two inputs
//   Uncertain ratio = length / twice;                // +/- 0
//
// Each value keeps its derivative with respect to every independent input, times that input's uncertainty; the
// combined uncertainty is the root of the sum of squares (JCGM 100:2008, 5.1.2). The level of confidence of the result is
// that of the inputs: expanded in, expanded out.
//
// Inputs may have names, and a value tells which of them its uncertainty comes from:
//
//   Uncertain side = inputs.Add(3, 0.3, "side"), base = inputs.Add(4, 0.4, "base");
//   for (const auto& [input, of_variance] : (side + base).Shares())
//     inputs.at(input).name, of_variance;            // side 0.36, base 0.64
#ifndef WITHY_NUMERICS_UNCERTAIN_H_
#define WITHY_NUMERICS_UNCERTAIN_H_

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace withy {

// One input's part in the variance of a value.
struct VarianceShare {
  int input = 0;           // in the Inputs that it came from
  double of_variance = 0;  // 0 to 1; those of a value add up to 1
};

class Uncertain {
 public:
  Uncertain() = default;
  Uncertain(double value) : value_(value) {}  // exact
  double value() const { return value_; }
  double plus_minus() const;
  // In the order of the inputs; empty for an exact value, and where its uncertainty is not finite.
  std::vector<VarianceShare> Shares() const;
  Uncertain operator-() const;
  friend Uncertain operator+(const Uncertain& a, const Uncertain& b);
  friend Uncertain operator-(const Uncertain& a, const Uncertain& b);
  friend Uncertain operator*(const Uncertain& a, const Uncertain& b);
  friend Uncertain operator/(const Uncertain& a, const Uncertain& b);
  // Of the expanded uncertainties: Covariance(a, a) is the square of a.plus_minus().
  friend double Covariance(const Uncertain& a, const Uncertain& b);

 private:
  friend class Inputs;
  static Uncertain Combine(double value, const Uncertain& a, double da, const Uncertain& b, double db);
  double value_ = 0;
  std::vector<std::pair<int, double>> parts_;  // (input, derivative times its uncertainty), sorted by input
};

// An independent input as it was added.
struct UncertainInput {
  std::string name;  // whatever the one who added it wrote; may be empty, and stand twice
  double value = 0, plus_minus = 0;
};

// Hands out independent inputs and remembers them. A copy goes on by itself: it knows the inputs so far.
class Inputs {
 public:
  // plus_minus >= 0 in the unit of value; one of 0 is exact, and not remembered.
  Uncertain Add(double value, double plus_minus, std::string name = {});
  // REQUIRES: an input of a value made from these.
  const UncertainInput& at(int input) const { return inputs_[static_cast<std::size_t>(input)]; }

 private:
  std::vector<UncertainInput> inputs_;
};

}  // namespace withy

#endif  // WITHY_NUMERICS_UNCERTAIN_H_
