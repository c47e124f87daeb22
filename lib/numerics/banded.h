// Linear equations whose matrix is a narrow band: Gaussian elimination with partial pivoting (Golub and Van Loan,
// Matrix Computations, 4th ed., section 4.3.3). Cost linear in their number. For bands of a dozen columns many times
// faster than a sparse solver for any pattern: there is nothing to analyse.
#ifndef WITHY_LIB_NUMERICS_BANDED_H_
#define WITHY_LIB_NUMERICS_BANDED_H_

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace withy {

class BandedMatrix {
 public:
  // Entries may stand up to `below` places left and `above` places right of the diagonal.
  BandedMatrix(std::size_t size, std::size_t below, std::size_t above)
      : size_(size),
        below_(below),
        right_(above + below),
        width_(2 * below + above + 1),
        rows_(size * width_),
        pivot_(size) {}

  void Clear() { std::fill(rows_.begin(), rows_.end(), 0.0); }
  double& At(std::size_t row, std::size_t column) { return rows_[row * width_ + (column + below_ - row)]; }

  // Eliminates in place. False where it is singular or has what is not a number.
  bool Factor();
  // After Factor: the sign of the determinant.
  bool negative() const { return negative_; }
  // After Factor: from the right-hand side to the solution.
  void Solve(std::vector<double>& side) const;

 private:
  const double& At(std::size_t row, std::size_t column) const { return rows_[row * width_ + (column + below_ - row)]; }

  std::size_t size_, below_, right_, width_;
  std::vector<double> rows_;
  std::vector<std::size_t> pivot_;
  bool negative_ = false;
};

inline bool BandedMatrix::Factor() {
  negative_ = false;
  for (std::size_t k = 0; k < size_; ++k) {
    const std::size_t last = std::min(k + below_, size_ - 1), end = std::min(k + right_, size_ - 1) + 1;
    std::size_t best = k;
    for (std::size_t row = k + 1; row <= last; ++row) {
      if (std::abs(At(row, k)) > std::abs(At(best, k))) best = row;
    }
    pivot_[k] = best;
    if (best != k) {
      std::swap_ranges(&At(k, k), &At(k, k) + (end - k), &At(best, k));
      negative_ = !negative_;
    }
    const double pivot = At(k, k);
    if (!std::isfinite(pivot) || pivot == 0) return false;
    negative_ = negative_ != (pivot < 0);
    for (std::size_t row = k + 1; row <= last; ++row) {
      double& factor = At(row, k);
      if (factor == 0) continue;
      factor /= pivot;
      const double* from = &At(k, k);
      double* to = &factor;
      for (std::size_t j = 1; j < end - k; ++j) to[j] -= factor * from[j];
    }
  }
  return true;
}

inline void BandedMatrix::Solve(std::vector<double>& side) const {
  for (std::size_t k = 0; k < size_; ++k) {
    std::swap(side[k], side[pivot_[k]]);
    const std::size_t last = std::min(k + below_, size_ - 1);
    for (std::size_t row = k + 1; row <= last; ++row) side[row] -= At(row, k) * side[k];
  }
  for (std::size_t k = size_; k-- > 0;) {
    const std::size_t end = std::min(k + right_, size_ - 1) + 1;
    for (std::size_t j = k + 1; j < end; ++j) side[k] -= At(k, j) * side[j];
    side[k] /= At(k, k);
  }
}

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_BANDED_H_
