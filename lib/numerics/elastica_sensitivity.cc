#include <cmath>
#include <vector>

#include "elastica_elements.h"
#include "withy/numerics/elastica.h"

namespace withy {
namespace {

// Enough for derivatives: the shape itself is not solved anew.
constexpr int kDegree = 6;

std::vector<double> EndsOfArcs(const Elastica& shape) {
  std::vector<double> ends;
  for (std::size_t k = 0; k < shape.points.size(); k += Elastica::kArc) ends.push_back(shape.points[k].s);
  return ends;
}

// The bubbles are the Legendre coefficients of the slope, which is M / EI.
void SetAngles(const Beam& beam, const ElasticaLoad& load, const Elastica& shape, ElasticaElements& elements) {
  const LobattoTable& lobatto = Lobatto();
  ChainFunction& angle = elements.angle();
  for (std::size_t e = 0; e < elements.mesh().size(); ++e) {
    const BeamElement& element = elements.mesh()[e];
    const BeamPoint* point = &shape.points[e * Elastica::kArc];
    double* value = angle.of(e);
    value[0] = point[Elastica::kArc].angle - point[0].angle;
    for (int k = 0; k < LobattoTable::kNodes; ++k) {
      const double stiffness = SectionAt(beam, load, element, lobatto.t[k]).stiffness;
      const double slope = element.length() * point[k].moment / stiffness;
      for (int j = 1; j < kDegree; ++j) value[j] += (2 * j + 1) * lobatto.Weight(k) * slope * lobatto.legendre[k][j];
    }
  }
  angle.end = shape.tip().angle;
}

// What one measure of the free end answers, given its adjoint: the response to a moment spread over the beam.
struct Answers {
  double load = 0, gravity = 0, clamp_angle = 0;
};

Answers AnswersOf(const Beam& beam, const ElasticaLoad& load, const Elastica& shape,
                  const std::vector<BeamElement>& mesh, const ChainFunction& adjoint) {
  const LobattoTable& lobatto = Lobatto();
  const double turned = shape.tip().angle + load.follower_angle;
  const double follower_x = load.follower * std::cos(turned), follower_y = load.follower * std::sin(turned);
  Answers answers;
  double left = 0;
  for (std::size_t e = 0; e < mesh.size(); ++e) {
    const double* value = adjoint.of(e);
    for (int k = 0; k < LobattoTable::kNodes; ++k) {
      double at = left + value[0] * lobatto.t[k];
      for (int j = 1; j < kDegree; ++j) at += value[j] * lobatto.bubble[k][j];
      at *= mesh[e].length() * lobatto.Weight(k);
      const BeamSection section = SectionAt(beam, load, mesh[e], lobatto.t[k]);
      const double angle = shape.points[e * Elastica::kArc + static_cast<std::size_t>(k)].angle;
      const double c = std::cos(angle), s = std::sin(angle), mass = section.mass_beyond;
      answers.load += at * ((load.force_y + follower_y) * c - (load.force_x + follower_x) * s);
      answers.gravity += at * mass * (load.gravity_y * c - load.gravity_x * s);
      // Turned as a whole, the beam meets dead forces at another angle; a follower turns with it.
      answers.clamp_angle -= at * (section.force_x * c + section.force_y * s);
    }
    left += value[0];
  }
  answers.load += load.moment * adjoint.end;
  return answers;
}

}  // namespace

// A measure J(theta) of the free end changes by -a . dR, where K^T a = dJ/dtheta and K = dR/dtheta.
ElasticaSensitivity SensitivityOf(const Beam& beam, const ElasticaLoad& load, const Elastica& solved) {
  ElasticaSensitivity sensitivity;
  sensitivity.to_stiffness.resize(beam.pieces.size());
  if (solved.points.size() < 2) return sensitivity;
  ElasticaElements elements(beam, load, MeshOf(beam, load, EndsOfArcs(solved)), kDegree);
  SetAngles(beam, load, solved, elements);
  elements.Factor(1, ElasticaElements::kColumns);
  const struct {
    int column;
    double ElasticaSensitivity::Tip::*of;
    double rigid;  // by the clamp angle, of the beam turned as a whole
  } measures[] = {{ElasticaElements::kTipX, &ElasticaSensitivity::Tip::x, -solved.tip().y},
                  {ElasticaElements::kTipY, &ElasticaSensitivity::Tip::y, solved.tip().x},
                  {ElasticaElements::kColumns, &ElasticaSensitivity::Tip::angle, 1}};
  ChainFunction adjoint(elements.mesh().size());
  for (const auto& measure : measures) {
    elements.SolveTransposed(measure.column, adjoint);
    const Answers answers = AnswersOf(beam, load, solved, elements.mesh(), adjoint);
    sensitivity.to_load.*measure.of = answers.load;
    sensitivity.to_gravity.*measure.of = answers.gravity;
    sensitivity.to_clamp_angle.*measure.of = measure.rigid + answers.clamp_angle;
    for (std::size_t e = 0; e < elements.mesh().size(); ++e) {
      const auto piece = static_cast<std::size_t>(elements.mesh()[e].piece);
      sensitivity.to_stiffness[piece].*measure.of -= elements.StiffnessProduct(e, adjoint);
    }
  }
  return sensitivity;
}

}  // namespace withy
