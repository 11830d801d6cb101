#pragma once

#include "advice/diagnosis/altered.hpp"
#include "fluewright/model/march/march.hpp"

#include <array>
#include <vector>

/// What an installation with its causes shows in a situation.
namespace fluewright::diagnosis {

/// At the outlet, behind each part, at the chimney top.
struct Point {
    double draft_pa{}; ///< the flue below the air round it
    double gas_temperature_k{};
    double inner_k{}; ///< of the wall a probe sees here; 0: none is near
    double velocity_m_s{};
    double surface_k{};
    double gas_share{1.0}; ///< of the fire's gas in what flows here
};

struct Prediction {
    double draft_pa{}; ///< at the outlet, against the room
    double room_pressure_pa{};
    double joints_pa{};     ///< greatest pressure against the room at a joint in the room
    double flow_share{1.0}; ///< flow over that of a high fire in the file
    double opening_short{}; ///< share of the door's opening wanted less that which may be opened
    double coldest_wall_k{};
    std::vector<Point> points;
};

/// The coldest wall that what runs out at a point can come from: that above it, or any where the
/// point is the outlet [K].
[[nodiscard]] double coldest_above_k(const Prediction& prediction, std::size_t point);

/// How hot the fire really is, as multiples of the rise of the gas temperature in the file; between
/// these nodes and beyond them everything is taken as a straight line.
inline constexpr std::size_t heat_nodes = 2;
using HeatFactors = std::array<double, heat_nodes>;
using Predictions = std::array<Prediction, heat_nodes>;

/// Solves one altered installation in situation after situation.
class Solver {
public:
    Solver(Altered altered, const HeatFactors& factors);

    [[nodiscard]] Predictions predict(const Situation& situation);

    [[nodiscard]] const Altered& altered() const { return altered_; }

private:
    [[nodiscard]] Prediction solve(const FlueModel& model, const Situation& situation) const;
    void set_heat(double factor);

    Altered altered_;
    HeatFactors factors_;
    Firing high_; ///< at factor 1
    Firing low_;
    std::vector<FlueModel> models_; ///< one for each weather used
    std::vector<std::size_t> model_weather_;
};

} // namespace fluewright::diagnosis
