#pragma once

#include "fluewright/model/march/surroundings.hpp"
#include "fluewright/model/march/wall_heat.hpp"

#include <limits>
#include <memory>
#include <span>
#include <vector>

/// Steady one-dimensional flow from the outlet to the chimney top.   [theory eq. 14 to 20]
namespace fluewright {

/// Which of the two gases of the case flows.
enum class GasChoice : std::uint8_t { high_fire, low_fire };

/// What enters the run at the outlet.
struct GasStream {
    GasChoice gas{GasChoice::high_fire};
    double air_share{}; ///< kg room air per kg mixture, beyond the fire's own excess air
    double flow_kg_s{};
    double temperature_k{};
};

/// What is known at one end of a section. Pressures against the air outdoors at the same height.
struct Station {
    std::size_t section{};
    double distance_m{}; ///< along the run from the outlet
    double height_m{};   ///< over the outlet
    double gas_temperature_k{};
    double inner_wall_k{};
    double inner_wall_start_k{}; ///< near the lower end of a straight; else 0
    double outer_wall_k{};
    double velocity_m_s{};
    double reynolds{};
    double flow_kg_s{};
    double pressure_pa{};         ///< static, against outdoor air at this height
    double pressure_in_zone_pa{}; ///< against the air of the zone the section is in
    /// Pressure at the lower end of the section, where its joint is, against the air round it.
    double joint_pressure_pa{};
    double leak_kg_s{}; ///< through that joint: into the flue positive
};

/// Sums over the run; the pressures obey
///   top = outlet + buoyancy - friction - fittings - acceleration.
struct MarchResult {
    double outlet_pressure_pa{};
    double top_pressure_pa{};
    double buoyancy_pa{};
    double friction_pa{};
    double fittings_pa{};
    double acceleration_pa{};
    double top_temperature_k{};
    double top_flow_kg_s{};
    double top_velocity_m_s{};
    double top_air_share{};
    double greatest_flux_kg_m2s{}; ///< flow over area where that is greatest
    double heat_loss_w{};          ///< through the walls
    double enthalpy_in_w{};        ///< at the outlet
    double enthalpy_leak_w{};      ///< carried in by leaks, less what they carry out
    double enthalpy_out_w{};       ///< at the chimney top
    double leak_in_kg_s{};
    double leak_out_kg_s{};
    double leak_from_room_kg_s{}; ///< what joints and openings in the room take of its air, net
    /// Within a plain opening, as of a draft hood, against the air before it: smoke comes out where
    /// it is above nought. Of the worst one; below any pressure where there is none.
    double opening_pressure_pa{-std::numeric_limits<double>::infinity()};
    bool meets_top{true}; ///< solve(): whether the root was found

    /// What the flow costs on its way.
    [[nodiscard]] double loss_pa() const { return friction_pa + fittings_pa + acceleration_pa; }
};

/// What a run stands between: pressures against the air outdoors at the height of the outlet.
struct EndPressures {
    double outlet_pa{};
    double room_pa{};
};

/// How a march answers to those two, to a few hundredths: for Newton's method.
struct MarchSlopes {
    double top_per_outlet{1.0}; ///< pressure at the chimney top
    double top_per_room{};
    double leak_per_outlet_kg_s_pa{}; ///< MarchResult::leak_from_room_kg_s
    double leak_per_room_kg_s_pa{};
};

/// What the wall of one straight still holds of the fire before.   [theory eq. 68]
struct WallMemory {
    double inner_start_k{}; ///< near its lower end
    double inner_end_k{};   ///< at its upper end
    double kept_w_m2k{}; ///< heat per kelvin that the wall has cooled below that; 0: nothing held
};

/// A case in one weather, prepared so that a march allocates nothing.
class FlueModel {
public:
    FlueModel(const Case& resolved, const Surroundings& surroundings);

    /// The same case in other air; takes over what the change of air leaves as it is.
    FlueModel(const FlueModel& model, const Surroundings& surroundings);

    /// The same case and air with walls that still hold the heat of a fire before; one entry for
    /// each section of the case.
    FlueModel(const FlueModel& model, std::vector<WallMemory> memory);

    /// Marches from the outlet between given pressures. `stations`, when not empty, holds
    /// station_count() entries and is filled in flow order: the outlet, then the downstream end of
    /// each section. `slopes` are those of a run with leaks; of a tight one they are known.
    ///
    /// Scheme   Gauss collocation with two or three points in ln(T - T_ambient) over the cube root
    ///          of the distance from the last disturbance, which takes the entry effect's corner
    ///          away; buoyancy and friction over the same points
    MarchResult march(const GasStream& stream,
                      const EndPressures& ends,
                      std::span<Station> stations = {},
                      MarchSlopes* slopes = nullptr) const;

    /// The same in the room of the model.
    MarchResult march(const GasStream& stream,
                      double outlet_pressure_pa,
                      std::span<Station> stations = {}) const;

    /// The march whose top meets the pressure outdoors (and the wind's) in the room of the model.
    /// Without leaks the pressure is a sum and one march is enough; with leaks the outlet pressure
    /// is a root.
    MarchResult solve(const GasStream& stream, std::span<Station> stations = {}) const;

    /// Draft at the outlet against the room [Pa] of a solved march.
    [[nodiscard]] double draft_pa(const MarchResult& result) const {
        return surroundings_.room_pressure_pa - result.outlet_pressure_pa;
    }

    /// Draft at the outlet of gas at rest of one density from outlet to chimney top [Pa].
    [[nodiscard]] double uniform_lift_pa(double density_kg_m3) const;

    [[nodiscard]] std::size_t station_count() const { return case_->sections.size() + 1; }

    [[nodiscard]] const Surroundings& surroundings() const { return surroundings_; }

    [[nodiscard]] const Case& resolved() const { return *case_; }

    [[nodiscard]] bool has_leaks() const { return layout_->has_leaks; }

private:
    struct Prepared {
        std::size_t heat;     ///< index into the heats
        std::size_t emission; ///< index into emissions[gas]
        // Of a straight:
        double start_m;     ///< distance from the last disturbance, and the tenth of a diameter
        double xi_start;    ///< the cube root of that
        double xi_length;   ///< and what it grows by till the end
        double entry_scale; ///< of the entry factor over xi squared
    };

    struct Flow;
    class Straight;

    /// What does not depend on the weather; models of one case share it.
    struct Layout {
        std::vector<Prepared> sections;
        std::vector<std::size_t> heat_owners; ///< the first section of each wall place
        std::array<std::vector<EmissionFit>, 2> emissions;
        bool has_leaks{};
    };

    using Heats = std::vector<std::shared_ptr<const WallHeat>>;

    [[nodiscard]] static Layout layout_of(const Case& resolved);
    static void add_emissions(const Case& resolved, Layout& layout);
    [[nodiscard]] Heats heats_of(const Heats* before) const;
    [[nodiscard]] bool wall_may_be_colder(std::size_t section) const;
    [[nodiscard]] double hottest_gas_k() const;
    void march_straight(Flow& flow, const Section& section, const Prepared& prepared) const;
    void pass_joint(Flow& flow, const Section& section) const;
    double leak_out(Flow& flow, const Section& section, double excess_pa, double head_pa) const;
    double leak_in(Flow& flow, const Section& section, double excess_pa, double head_pa) const;
    void pass_fitting(Flow& flow, const Section& section) const;
    [[nodiscard]] double zone_pressure_pa(const Flow& flow, Zone zone) const;
    [[nodiscard]] Station station_at(const Flow& flow, std::size_t section) const;

    const Case* case_;
    Surroundings surroundings_;
    std::shared_ptr<const Layout> layout_;
    std::shared_ptr<const Heats> heats_;
    std::vector<WallMemory> memory_; ///< empty: walls in balance with the gas
};

} // namespace fluewright
