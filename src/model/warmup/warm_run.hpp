#pragma once

#include "fluewright/model/march/surroundings.hpp"
#include "fluewright/model/warmup/burn_plan.hpp"
#include "fluewright/model/warmup/storing_wall.hpp"

#include <vector>

/// The run in cells, with gas and walls solved together in one implicit stage.
namespace fluewright {

struct WarmGas {
    double flow_kg_s{};
    double temperature_k{}; ///< at the outlet
    double air_share{};     ///< beyond high fire
    double outlet_pa{};     ///< a guess for the static pressure at the outlet, for joints
};

/// How the gas flow follows from the draft: flow = the lesser of what is asked and what the
/// resistance lets through; of a burner what is asked.
struct FlowControl {
    double asked_kg_s{};           ///< endless with the fire out
    double resistance_pa_s2_kg2{}; ///< draft over flow squared; of a stopped fan its vanes
    double fan_pa{};               ///< what a running fan pushes with
    double room_pressure_pa{};     ///< where no house tells it
    bool room_by_house{};
    double room_air_share{}; ///< of the flow: what the fire takes out of the room
    bool tended{};           ///< whether somebody turns the damper where draft is too strong
    bool kindled{};          ///< lit with paper and small wood, which turns a flue that hangs
    bool pushed{};           ///< a burner's gas, which flows as asked whatever the draft
};

/// What passes the wall of a cell.
struct CellHeat {
    double given_w{}; ///< by the gas
    double lost_w{};  ///< to the air around
};

struct WarmStage {
    double flow_kg_s{};
    double open_flow_kg_s{}; ///< what the resistance would let through
    double draft_pa{};
    double outlet_pa{}; ///< static, against the air outdoors
    double top_k{};
    double dew_point_k{};
    double given_w{}; ///< by the gas, between outlet and chimney top
    double lost_w{};  ///< to the air around
    std::vector<CellHeat> cells;
    double lift_pa{}; ///< of the gas at rest, the room at the pressure outdoors
    double room_pa{};
    double run_resistance_pa_s2_kg2{}; ///< loss along the run over flow squared
    bool settled{};                    ///< whether flow, pressures and walls agree with each other
};

/// Whether the flue draws less than the fire of the moment asks.
[[nodiscard]] inline bool wants_air(const WarmStage& stage, const FireDemand& demand) {
    return !demand.out && stage.open_flow_kg_s < demand.gas_flow_kg_s;
}

/// Whether a burner's gas flows as it is made: always, but above a hood of its own. A hood that is
/// a part of the run lets out itself what the flue does not take.
[[nodiscard]] bool flows_as_made(const Case& resolved);

class WarmRun {
public:
    WarmRun(const Case& resolved, const Surroundings& surroundings, int cells_factor);

    struct Cell {
        std::size_t section;
        std::size_t wall;       ///< index into walls()
        std::size_t first_node; ///< in the vector of all temperatures
        double length_m;
        double rise_m;
        double entry;      ///< mean entry factor
        double height_m;   ///< of its middle over the outlet
        double distance_m; ///< of its middle along the run from the outlet
    };

    [[nodiscard]] const std::vector<Cell>& cells() const { return cells_; }

    [[nodiscard]] const StoringWall& wall_of(const Cell& cell) const { return walls_[cell.wall]; }

    /// Every node at the temperature of the zone round it.
    [[nodiscard]] std::vector<double> cold() const;

    /// Heat held by all walls above 0 K [J].
    [[nodiscard]] double heat_j(const std::vector<double>& nodes_k) const;

    /// One implicit stage of `step_s` from `start_k`. `nodes_k` comes with a guess and leaves with
    /// the answer; `gas.flow_kg_s` is the guess for the flow.
    WarmStage solve(const WarmGas& gas,
                    const FlowControl& control,
                    double step_s,
                    const std::vector<double>& start_k,
                    std::vector<double>& nodes_k) const;

private:
    struct Passage;

    void pass_cell(const Cell& cell,
                   double step_s,
                   const std::vector<double>& start_k,
                   std::vector<double>& nodes_k,
                   Passage& passage) const;
    void pass_fitting(const Section& section, Passage& passage) const;
    void pass_joint(const Section& section, Passage& passage) const;
    [[nodiscard]] double room_pressure_pa(const FlowControl& control, const Passage& passage) const;
    WarmStage settle(const WarmGas& gas,
                     const FlowControl& control,
                     double step_s,
                     const std::vector<double>& start_k,
                     std::vector<double>& nodes_k,
                     Passage& passage) const;
    void follow(const WarmGas& gas,
                double step_s,
                const std::vector<double>& start_k,
                std::vector<double>& nodes_k,
                Passage& passage) const;

    /// Where a straight begins.
    struct Start {
        double since_disturbance_m;
        double height_m;
        double distance_m;
    };

    void add_cells(std::size_t section, const Start& start, int factor);

    const Case* case_;
    Surroundings around_;
    std::vector<StoringWall> walls_;
    std::vector<std::size_t> wall_of_section_;
    std::vector<EmissionFit> emissions_;
    std::vector<std::size_t> emission_of_section_;
    std::vector<Cell> cells_;
    std::size_t node_count_{};
    bool leaks_{};
    bool damper_for_strong_draft_{};
};

} // namespace fluewright
