#pragma once

#include "fluewright/model/march/march.hpp"

#include <cmath>
#include <limits>
#include <optional>

namespace fluewright {

/// How the pressures of a run that lets in air, or stands in a house, are looked for. The coupled
/// search is the fast one; where it does not settle in a house, it is tried in one room after
/// another. Where that does not settle either, and where a test asks, the nested one is taken: a
/// bracket for the room round a bracket for the outlet.
enum class Search : std::uint8_t { coupled, nested };

/// Where nobody knows what the draft will be.
inline constexpr double nothing_foretold_pa = std::numeric_limits<double>::quiet_NaN();

/// A run in its room: what flows in it meets the pressure at the chimney top and, where the house
/// tells the room's pressure, what fire and joints take of the room's air is what the house lets
/// in. [theory eq. 19, 32]
///
/// A run with a draft hood may have two answers for the same fire: it draws and is kept warm by
/// what it draws, or all comes out at the hood and it stays cold. A flue that has been drawing goes
/// on so: the one with the lowest pressure at the outlet is given. Whether it comes to draw at all
/// is asked of the idle flue and of the warm-up.
///
/// Newton's method with the slopes that a march carries along, on the outlet's pressure alone or on
/// those of outlet and room together; it begins where it ended last.
class RunInRoom {
public:
    /// In a room that keeps the pressure the model has.
    explicit RunInRoom(const FlueModel& model, Search search = Search::coupled)
        : model_(&model), search_(search), room_pa_(model.surroundings().room_pressure_pa) {}

    /// In the room of its house, where that is known. `takes_air`: whether the fire burns air of
    /// the room.
    [[nodiscard]] static RunInRoom
    in_house(const FlueModel& model, bool takes_air, Search search = Search::coupled) {
        RunInRoom run(model, search);
        run.by_house_ = model.surroundings().house.known();
        run.takes_air_ = takes_air;
        return run;
    }

    struct Answer {
        MarchResult flow;
        double room_pa{};

        /// At the outlet, against the room.
        [[nodiscard]] double draft_pa() const { return room_pa - flow.outlet_pressure_pa; }
    };

    /// What is known of an answer beforehand.
    struct Expected {
        double draft_pa{nothing_foretold_pa};
        bool is_one_of_many{}; ///< of a search, which needs it to some 1e-6 Pa only
    };

    /// With the fire taking `air_kg_s`. MarchResult::meets_top tells whether an answer was found.
    Answer solve(const GasStream& stream,
                 double air_kg_s,
                 std::span<Station> stations,
                 const Expected& expected);

    Answer solve(const GasStream& stream, double air_kg_s, std::span<Station> stations = {}) {
        return solve(stream, air_kg_s, stations, Expected{});
    }

    [[nodiscard]] const FlueModel& model() const { return *model_; }

    /// How often the run was marched so far: what an answer costs, the same on any machine.
    [[nodiscard]] std::size_t marches() const { return marches_; }

    /// What one state in one weather tells the same state in the next about where to look.
    struct Memory {
        double draft_pa{nothing_foretold_pa}; ///< of the last answer
        /// What a step changed at the chimney top over what the slopes foretold: as much from one
        /// flow to the next.
        double calibration{1.0};
        bool is_calibrated{};
    };

    [[nodiscard]] const Memory& memory() const { return memory_; }

    void remember(const Memory& memory) { memory_ = memory; }

    /// The same room with another model of the run.
    [[nodiscard]] RunInRoom of(const FlueModel& model) const {
        RunInRoom run(*this);
        run.model_ = &model;
        return run;
    }

    /// Whether what the run does has no corners over its flow: the gate of a regulator has. The
    /// nested search takes all leaks to have them.
    [[nodiscard]] bool is_smooth() const;

    /// What a balance over the flow may be off by, as a share of it.
    [[nodiscard]] double accepted_share() const { return search_ == Search::coupled ? 1e-5 : 1e-8; }

private:
    [[nodiscard]] bool try_coupled(const GasStream& stream,
                                   double air_kg_s,
                                   std::span<Station> stations,
                                   EndPressures ends,
                                   bool is_one_of_many,
                                   Answer& answer);
    [[nodiscard]] bool solve_by_rooms(const GasStream& stream,
                                      double air_kg_s,
                                      std::span<Station> stations,
                                      Answer& answer);
    [[nodiscard]] bool
    may_draw_instead(const GasStream& stream, double air_kg_s, const Answer& spilling) const;
    [[nodiscard]] Answer
    solve_nested(const GasStream& stream, double air_kg_s, std::span<Station> stations) const;
    /// `draft_pa` is that of the last room looked at; where it is given, each is looked for near
    /// the one before.
    [[nodiscard]] double
    nested_room_pa(const GasStream& stream, double air_kg_s, std::optional<double>& draft_pa) const;
    [[nodiscard]] MarchResult meet_top(const GasStream& stream,
                                       double room_pa,
                                       std::span<Station> stations,
                                       std::optional<double> near_pa) const;

    /// Every march is counted.
    [[nodiscard]] MarchResult march(const GasStream& stream,
                                    const EndPressures& ends,
                                    std::span<Station> stations = {},
                                    MarchSlopes* slopes = nullptr) const {
        ++marches_;
        return model_->march(stream, ends, stations, slopes);
    }

    const FlueModel* model_;
    mutable std::size_t marches_{};
    Search search_;
    bool by_house_{};
    bool takes_air_{true};
    double room_pa_; ///< where the house tells it, of the last answer
    double leaked_kg_s_{};
    Memory memory_;
};

} // namespace fluewright
