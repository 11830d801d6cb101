#pragma once

#include "fluewright/model/run/case.hpp"

#include <vector>

/// Room pressure from the balance of the house's air.   [theory eq. 31]
namespace fluewright {

enum class Fans : std::uint8_t { running, off };

/// The air in and round the house in one weather.
struct HouseWeather {
    double outdoor_density_kg_m3{};
    double room_density_kg_m3{};
    double wind_m_s{}; ///< at the chimney top
};

/// A house in one weather. Air comes in through leaks and openings where the house is below the
/// pressure outside them and goes out where it is above; fans and the fire take their share.
///
///   sum of air in = sum of air out + fans + fire
///
/// With height z over the outlet, p(z) = p + (rho_o - rho_i) g z, and outside an opening stands the
/// wind's pressure on its side. The balance falls with p throughout: the root is one.
class HouseAir {
public:
    HouseAir() = default;
    HouseAir(const HouseCase& house, const HouseWeather& weather);

    /// Whether the case tells of a house at all.
    [[nodiscard]] bool known() const { return known_; }

    /// Whether a fan moves air through its shell.
    [[nodiscard]] bool has_fans() const { return exhaust_kg_s_ > 0.0 || supply_kg_s_ > 0.0; }

    /// Air that comes in less air that goes out [kg/s] with the room at `room_pa` against outdoors
    /// at the height of the outlet, and the fire taking `taken_kg_s` of room air.
    [[nodiscard]] double
    surplus_kg_s(double room_pa, double taken_kg_s, Fans fans = Fans::running) const;

    /// The same, and how it changes with the room's pressure [kg/s per Pa]: never up.
    struct Balance {
        double surplus_kg_s;
        double slope_kg_s_pa;
    };

    [[nodiscard]] Balance
    balance(double room_pa, double taken_kg_s, Fans fans = Fans::running) const;

    /// The room pressure at which the house is in balance [Pa]. `near_pa` is where it is looked for
    /// first.
    [[nodiscard]] double
    room_pressure_pa(double taken_kg_s, Fans fans = Fans::running, double near_pa = 0.0) const;

    /// Area of a plain opening at the height of the outlet, out of the wind, with which the room
    /// comes to `room_pa`, which must be below outdoors; 0 where it is there without.
    [[nodiscard]] double inlet_area_m2(double room_pa, double taken_kg_s) const;

    /// Height of the level without a pressure difference, over the outlet [m]; 0 with no difference
    /// of density.
    [[nodiscard]] double neutral_height_m(double room_pa) const;

private:
    /// One place where air passes: cracks by the power law, or a plain opening.
    struct Gap {
        double height_m;         ///< over the outlet
        double coefficient_m3_s; ///< 0: plain opening
        double area_m2;          ///< of a plain opening
        double wind_pa;          ///< outside it
    };

    /// Mass flow through cracks at 1 Pa over their coefficient, of the air on either side.
    struct CrackFlow {
        double in_kg_m3;
        double out_kg_m3;
    };

    void add_gap(const Gap& gap);
    /// Whether the air in a gap is about still at one of these pressures of the room.
    [[nodiscard]] bool turns_between(double one_pa, double other_pa) const;
    void add_shell(const HouseCase& house, double wind_head_pa);

    bool known_{};
    double outdoor_density_kg_m3_{};
    double room_density_kg_m3_{};
    double exponent_{};
    CrackFlow crack_{};
    double exhaust_kg_s_{};
    double supply_kg_s_{};
    std::vector<Gap> gaps_;
};

} // namespace fluewright
