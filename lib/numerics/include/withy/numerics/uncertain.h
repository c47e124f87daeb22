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
#ifndef WITHY_NUMERICS_UNCERTAIN_H_
#define WITHY_NUMERICS_UNCERTAIN_H_

#include <utility>
#include <vector>

namespace withy {

class Uncertain {
 public:
  Uncertain() = default;
  Uncertain(double value) : value_(value) {}  // exact
  double value() const { return value_; }
  double plus_minus() const;
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

// Hands out independent inputs.
class Inputs {
 public:
  // plus_minus >= 0 in the unit of value.
  Uncertain Add(double value, double plus_minus);
  // Two values that are not independent: variances and covariance of (a, b) in squared units; a positive semi-definite
  // matrix up to rounding.
  std::pair<Uncertain, Uncertain> AddPair(double a, double b, double var_a, double var_b, double covariance);

 private:
  int next_ = 0;
};

}  // namespace withy

#endif  // WITHY_NUMERICS_UNCERTAIN_H_
