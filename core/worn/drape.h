// How the sewn cloth falls: projective dynamics (Bouaziz, Martin, Liu, Kavan and Pauly, SIGGRAPH
// 2014) with a Cholesky factor that is made once and again only when enough of what touches the
// body or is drawn out has changed, and Nesterov's acceleration, restarted where it leads astray
// (O'Donoghue and Candes, Found. Comput. Math. 15, 2015). It seeks the rest; how fast cloth swings
// is not simulated. Lengths in cm, masses in g, forces in dyn.
//
// A state is a value; step() makes the next one and depends on nothing else, so that the same
// states come from the same binary. Builds for other processors may differ in the last digits.
#pragma once

#include "worn/sewing.h"

#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>
#include <memory>

namespace scye {

using Points = Eigen::Matrix<double, Eigen::Dynamic, 3>; // a row a point

struct Contact {
  bool on = false;
  Vec3 anchor = Vec3::Zero(); // where it sticks
};

struct DrapeState {
  Points x, before;    // now, and a step ago
  double momentum = 1; // of Nesterov's sequence
  std::vector<Contact> contacts;
  std::vector<char> held;   // points whose contact is in the factor, 2: firmly
  std::vector<char> taut;   // triangles that are stiffer in it for being drawn out, 2: to their end
  double rms = 0, most = 0; // cm moved in the last step
  int steps = 0;
};

struct DrapeSettings {
  double gravity = 981;       // cm/s^2; 0 while it is sewn
  double timeStep = 1.0 / 30; // s; the cloth's mass damps each step as if it took so long
  bool accelerated = true;
  bool firm = true; // what tight cloth presses through its own gap is pushed out; not while sewn
  double mostMove = 1e9;      // cm a step
  double friction = 0.4;      // Coulomb's, cloth on cloth (common practice: 0.3 to 0.8)
  double touchStrength = 2e4; // dyn/cm of a contact for each cm^2 of cloth that it holds
};

class Drape {
public:
  explicit Drape(std::shared_ptr<const SewnGarment> garment);

  [[nodiscard]] const SewnGarment& garment() const { return *g_; }
  [[nodiscard]] DrapeState step(const DrapeState& state, const Obstacle& body,
                                const DrapeSettings& settings);
  // What the cloth has stored, and its height: erg. Contacts do not count.
  [[nodiscard]] double energy(const Points& x, double gravity = 981) const;
  [[nodiscard]] int factorisations() const { return factorisations_; }
  // A state at rest at these places.
  [[nodiscard]] DrapeState at(Points x) const;

private:
  using Sparse = Eigen::SparseMatrix<double>;
  void assemble();
  void factorise(const DrapeState& state, const DrapeSettings& settings);
  void project(const Points& x, const std::vector<char>& taut, Points& pull) const;
  void touch(DrapeState& state, const Points& x, const Obstacle& body,
             const DrapeSettings& settings, Points& pull, std::vector<char>& loose) const;

  std::shared_ptr<const SewnGarment> g_;
  Sparse across_, other_; // for x, and for y and z, without inertia and contacts
  Eigen::SimplicialLDLT<Sparse> factorX_, factorYZ_;
  std::vector<char> factoredHeld_, factoredTaut_;
  double factoredStep_ = -1;
  int factorisations_ = 0;
};

// How far the cloth resists in each part: factors of its stiffness.
struct FabricFactors {
  double course = 1, wale = 1, bias = 1;
};
[[nodiscard]] FabricFactors fabricFactors(Fabric fabric);

} // namespace scye
