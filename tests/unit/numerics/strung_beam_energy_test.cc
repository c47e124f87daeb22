// A second method without friction: the shape of least energy. Angles at equal stations with straight lines between
// them;
//
//   energy = sum of EI (angle_(j+1) - angle_j)^2 / (2 h) + tension (length of the line from the reel to the last ring
//            - far direction . centre of the last ring)
//
// is made least by Newton, its matrix from differences of the gradient, under a tension that grows in steps. Halved
// stations make the error four times less, then the next term sixteen times: the limit is extrapolated (Richardson
// 1911). The line may run in space: its length is then that in space.
#include <gtest/gtest.h>

#include <Eigen/Cholesky>
#include <cmath>
#include <vector>

#include "unit/numerics/strung_rods.h"

namespace withy {
namespace {

class Links {
 public:
  Links(const StrungRod& rod, int links) : rod_(rod), links_(links), h_(rod.beam.length() / links), angle_(links + 1) {
    angle_.setConstant(rod.load.clamp_angle);
  }

  // True where the shape is stable: the matrix of second derivatives is positive definite.
  bool Relax(double tension) {
    bool stable = false;
    for (int round = 0; round < 30; ++round) {
      const Eigen::VectorXd lack = Gradient(angle_, tension);
      Eigen::MatrixXd second(links_, links_);
      for (int j = 1; j <= links_; ++j) {
        Eigen::VectorXd more = angle_, less = angle_;
        more[j] += 1e-5;
        less[j] -= 1e-5;
        second.col(j - 1) = (Gradient(more, tension) - Gradient(less, tension)) / 2e-5;
      }
      const Eigen::LDLT<Eigen::MatrixXd> solver((second + second.transpose()) / 2);
      stable = solver.isPositive();
      Eigen::VectorXd step = -solver.solve(lack);
      const double largest = step.lpNorm<Eigen::Infinity>();
      if (largest > 0.3) step *= 0.3 / largest;
      angle_.tail(links_) += step;
      if (largest < 1e-11) break;
    }
    return stable;
  }

  struct Shape {
    double x = 0, y = 0, angle = 0, clamp_moment = 0;
  };
  // The moment at the clamp by the slope of the angle there, to second order in the length of a link.
  Shape Found() const {
    Shape shape;
    for (int i = 0; i < links_; ++i) {
      shape.x += h_ * std::cos((angle_[i] + angle_[i + 1]) / 2);
      shape.y += h_ * std::sin((angle_[i] + angle_[i + 1]) / 2);
    }
    shape.angle = angle_[links_];
    shape.clamp_moment =
        rod_.beam.pieces.front().StiffnessAt(0) * (-3 * angle_[0] + 4 * angle_[1] - angle_[2]) / (2 * h_);
    return shape;
  }

 private:
  struct Centre {
    double x, y, z;
  };

  double StiffnessAt(double s) const {
    for (const BeamPiece& piece : rod_.beam.pieces) {
      if (s <= piece.s1) return piece.StiffnessAt(s);
    }
    return 0;
  }

  Eigen::VectorXd Gradient(const Eigen::VectorXd& angle, double tension) const {
    const StrungLoad& load = rod_.load;
    std::vector<Centre> centres{{load.reel_s * std::cos(angle[0]) - load.side * load.reel_offset * std::sin(angle[0]),
                                 load.reel_s * std::sin(angle[0]) + load.side * load.reel_offset * std::cos(angle[0]),
                                 0}};
    std::vector<int> stations{0};
    double x = 0, y = 0;
    int at = 0;
    for (const BeamRing& ring : rod_.rings) {
      const int station = static_cast<int>(std::lround(ring.s / h_));
      for (; at < station; ++at) {
        x += h_ * std::cos((angle[at] + angle[at + 1]) / 2);
        y += h_ * std::sin((angle[at] + angle[at + 1]) / 2);
      }
      const double across = load.side * ring.offset * std::cos(ring.turned);
      centres.push_back({x - across * std::sin(angle[station]), y + across * std::cos(angle[station]),
                         ring.offset * std::sin(ring.turned)});
      stations.push_back(station);
    }
    Eigen::VectorXd gradient = Eigen::VectorXd::Zero(links_ + 1);
    for (int i = 0; i < links_; ++i) {
      const double moment = StiffnessAt((i + 0.5) * h_) * (angle[i + 1] - angle[i]) / h_;
      gradient[i + 1] += moment;
      gradient[i] -= moment;
    }
    AddLine(angle, tension, centres, stations, gradient);
    return gradient.tail(links_);
  }

  // From the last ring down: what the line does to all centres beyond a link turns that link.
  void AddLine(const Eigen::VectorXd& angle, double tension, const std::vector<Centre>& centres,
               const std::vector<int>& stations, Eigen::VectorXd& gradient) const {
    const StrungLoad& load = rod_.load;
    const double far = load.clamp_angle - load.far_angle;
    double beyond_x = 0, beyond_y = 0, out_x = std::cos(far), out_y = std::sin(far);
    for (std::size_t k = centres.size() - 1; k > 0; --k) {
      const Centre &a = centres[k - 1], &b = centres[k];
      const double length = std::hypot(b.x - a.x, b.y - a.y, b.z - a.z);
      const double in_x = (b.x - a.x) / length, in_y = (b.y - a.y) / length;
      const double at_x = tension * (in_x - out_x), at_y = tension * (in_y - out_y);  // energy by the place of the ring
      const BeamRing& ring = rod_.rings[k - 1];
      const double across = load.side * ring.offset * std::cos(ring.turned), turn = angle[stations[k]];
      gradient[stations[k]] -= across * (at_x * std::cos(turn) + at_y * std::sin(turn));
      beyond_x += at_x;
      beyond_y += at_y;
      for (int i = stations[k] - 1; i >= stations[k - 1]; --i) {
        const double middle = (angle[i] + angle[i + 1]) / 2;
        const double by = h_ * (beyond_y * std::cos(middle) - beyond_x * std::sin(middle));
        gradient[i] += by / 2;
        gradient[i + 1] += by / 2;
      }
      out_x = in_x;
      out_y = in_y;
    }
  }

  const StrungRod& rod_;
  int links_;
  double h_;
  Eigen::VectorXd angle_;
};

Links::Shape Limit(const StrungRod& rod) {
  Links::Shape found[3];
  int links = 20;
  for (Links::Shape& shape : found) {
    Links chain(rod, links);
    bool stable = false;
    for (double share : {0.02, 0.05, 0.1, 0.2, 0.4, 0.7, 1.0}) stable = chain.Relax(share * rod.load.tension);
    EXPECT_TRUE(stable);
    shape = chain.Found();
    links *= 2;
  }
  const auto limit = [&](double Links::Shape::*of) {
    const double coarse = found[0].*of, middle = found[1].*of, fine = found[2].*of;
    const double first = (4 * middle - coarse) / 3, second = (4 * fine - middle) / 3;
    return (16 * second - first) / 15;
  };
  return {limit(&Links::Shape::x), limit(&Links::Shape::y), limit(&Links::Shape::angle),
          limit(&Links::Shape::clamp_moment)};
}

void ExpectLeastEnergy(const StrungRod& rod) {
  const StrungBeam bent = rod.Solve();
  ASSERT_EQ(bent.state, ElasticaState::kSolved) << bent.why;
  const Links::Shape limit = Limit(rod);
  EXPECT_NEAR(bent.tip().x, limit.x, 3e-7);
  EXPECT_NEAR(bent.tip().y, limit.y, 3e-7);
  EXPECT_NEAR(bent.tip().angle, limit.angle, 6e-6);
  EXPECT_NEAR(bent.nodes[0].moment, limit.clamp_moment, 1e-4);
}

TEST(StrungBeamEnergyTest, RingsOutsideOfTheBend) {
  ExpectLeastEnergy(RodWithRings(+1, 15, 90));
}

TEST(StrungBeamEnergyTest, RingsInsideOfTheBend) {
  ExpectLeastEnergy(RodWithRings(-1, 15, 90));
}

TEST(StrungBeamEnergyTest, PulledBackwards) {
  ExpectLeastEnergy(RodWithRings(-1, 12, 135));
}

TEST(StrungBeamEnergyTest, StraightPullBendsByTheOffsetsAlone) {
  ExpectLeastEnergy(RodWithRings(-1, 25, 0));
}

// Rings that wind about the rod, and one ring alone that is turned across it: the line runs in space.
TEST(StrungBeamEnergyTest, TurnedRings) {
  ExpectLeastEnergy(RodWithRings(+1, 15, 90, 2.0));
  StrungRod rod = RodWithRings(+1, 15, 60);
  rod.rings[2].turned = std::numbers::pi / 2;
  rod.rings[2].offset = 0.1;
  ExpectLeastEnergy(rod);
}

}  // namespace
}  // namespace withy
