#pragma once

#include "fluewright/model/run/case.hpp"

#include <array>

/// Heat from the inner face of a wall to the air around it.
namespace fluewright {

/// One wall in its place.
struct WallPlace {
    const WallBuild* wall{};
    double inside_diameter_m{};
    double ambient_k{};
    double air_pressure_pa{};
    double wind_m_s{};
    double height_m{}; ///< of the wetted height of an upright stretch
    bool upright{true};
    bool rectangular{};
};

struct WallState {
    double flux_w_m2{}; ///< on the inner face, positive outwards
    double inner_k{};
    double outer_k{};
};

/// Solves the layers exactly, from a temperature of the outer face inwards: conduction through
/// cylinders, convection and radiation across air gaps, natural convection, wind and radiation
/// outside. Rectangular flues count 1.1 times the resistance of the cylinder of equal hydraulic
/// diameter (EN 13384-1, shape factor; from memory).   [theory eq. 24, 25]
[[nodiscard]] WallState wall_state_from_outer(const WallPlace& place, double outer_k);

/// The same from the temperature of the inner face; a bracketed search.
[[nodiscard]] WallState wall_state_from_inner(const WallPlace& place, double inner_k);

/// The diameter over the outermost layer [m].
[[nodiscard]] double outside_diameter_m(const WallBuild& wall, double inside_diameter_m);

/// Conductance flux / (inner face - ambient) as a spline over the inner face's temperature, so that
/// the march does not solve the layers anew in every cell. Within 0.1 % of the exact solution from
/// 1 K above ambient up to 1250 K; across an air gap within 1.2 %, because the published
/// correlation of the gap jumps by 0.6 % where its branches meet and the curve swings there.
/// [theory eq. 26]
class WallHeat {
public:
    /// `may_be_colder` tells whether the inner face can be colder than the air around; if not, half
    /// a curve does, and the conductance below ambient is that just above. No inner face gets
    /// hotter than `hottest_k`.
    explicit WallHeat(const WallPlace& place, bool may_be_colder = true, double hottest_k = 1250.0);

    struct Value {
        double flux_w_m2;
        double slope_w_m2k; ///< derivative of the flux by the inner face's temperature
    };

    [[nodiscard]] Value at(double inner_k) const;

    /// The same where a heater warms what is round the wall by `warmer_k`: the conductance of the
    /// wall in its place, times the lesser difference.   [theory eq. 74]
    [[nodiscard]] Value at(double inner_k, double warmer_k) const;

    /// Temperature of the outer face, to the same accuracy.
    [[nodiscard]] double outer_k(double inner_k, double warmer_k = 0.0) const;

    [[nodiscard]] double ambient_k() const { return place_.ambient_k; }

    [[nodiscard]] const WallPlace& place() const { return place_; }

private:
    static constexpr std::size_t most_knots = 28;

    /// One cubic over (u - start), for the conductance and for the share of the temperature drop
    /// that the outer face keeps.
    struct Piece {
        std::array<double, 4> conductance{};
        std::array<double, 4> outer_share{};
    };

    /// Over u = |inner - ambient|^(1/4), in which neither natural convection near ambient nor
    /// radiation far from it is steep.
    struct Branch {
        std::size_t knots{};
        std::array<double, most_knots> start{};
        std::array<Piece, most_knots - 1> piece{};
        double knots_per_u{};

        [[nodiscard]] std::size_t piece_of(double u) const;
    };

    void fill(Branch& branch, double sign, double span_k) const;

    [[nodiscard]] const Branch& branch_of(double difference_k) const {
        return difference_k >= 0.0 || colder_.knots == 0 ? warmer_ : colder_;
    }

    WallPlace place_;
    Branch warmer_;
    Branch colder_;
};

} // namespace fluewright
