#include "run_in_room.hpp"

#include "open_share.hpp"
#include "shift_stations.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// A step so small leaves next to nothing of the miss, even by slopes that are off by some
/// hundredths: it is taken without another march. One of many only leads the way.
constexpr double last_step_pa = 1e-6;
constexpr double last_step_of_many_pa = 3e-3;
constexpr double last_step_over_corners_pa = 1e-3;

void shift(MarchResult& flow, std::span<Station> stations, double by_pa) {
    flow.outlet_pressure_pa += by_pa;
    flow.top_pressure_pa += by_pa;
    shift_stations(stations, by_pa);
}

/// Both at once: what the chimney top misses and what the room's air misses, over the two
/// pressures.
struct Misses {
    double chimney_top_pa;
    double air_kg_s;
};

struct Step {
    double outlet_pa;
    double room_pa;

    [[nodiscard]] double size_pa() const {
        return std::max(std::abs(outlet_pa), std::abs(room_pa));
    }
};

Step newton_step(const Misses& miss,
                 const MarchSlopes& slopes,
                 double air_per_room_kg_s_pa,
                 bool with_room) {
    if (!with_room) {
        return {slopes.top_per_outlet != 0.0 ? -miss.chimney_top_pa / slopes.top_per_outlet
                                             : std::numeric_limits<double>::infinity(),
                0.0};
    }
    // Top: a d_outlet + b d_room = -miss; air of the house less what is taken: c d_outlet + d
    // d_room = -miss.
    const double a = slopes.top_per_outlet;
    const double b = slopes.top_per_room;
    const double c = -slopes.leak_per_outlet_kg_s_pa;
    const double d = air_per_room_kg_s_pa - slopes.leak_per_room_kg_s_pa;
    const double determinant = a * d - b * c;
    if (determinant == 0.0) {
        return {std::numeric_limits<double>::infinity(), 0.0};
    }
    return {(-miss.chimney_top_pa * d + miss.air_kg_s * b) / determinant,
            (-miss.air_kg_s * a + miss.chimney_top_pa * c) / determinant};
}

/// Between these the outlet's pressure lies; either may be without end.
struct Bracket {
    double low_pa;
    double high_pa;
};

/// A step that stays within the bracket and is no longer than `most_pa`: over a corner, as of a
/// gate, half of what is left, or on in the same way where one end is not known yet.
double inside(const Bracket& bracket, double from_pa, double step_pa, double most_pa) {
    const bool is_closed = std::isfinite(bracket.low_pa) && std::isfinite(bracket.high_pa);
    const double next_pa = from_pa + step_pa;
    if (next_pa > bracket.low_pa && next_pa < bracket.high_pa && std::abs(step_pa) <= most_pa) {
        return step_pa;
    }
    if (is_closed) {
        return 0.5 * (bracket.low_pa + bracket.high_pa) - from_pa;
    }
    const double far_pa = std::min(most_pa, 100.0);
    return bracket.low_pa == from_pa ? far_pa : -far_pa;
}

} // namespace

RunInRoom::Answer RunInRoom::solve(const GasStream& stream,
                                   double air_kg_s,
                                   std::span<Station> stations,
                                   const Expected& expected) {
    const double taken_kg_s = takes_air_ ? std::max(0.0, air_kg_s) : 0.0;
    const HouseAir& house = model_->surroundings().house;
    Answer answer;
    if (!model_->has_leaks()) {
        answer.room_pa =
            by_house_ ? house.room_pressure_pa(taken_kg_s, Fans::running, room_pa_) : room_pa_;
        answer.flow = march(stream, {.outlet_pa = 0.0, .room_pa = answer.room_pa}, stations);
        shift(answer.flow,
              stations,
              model_->surroundings().top_pressure_pa - answer.flow.top_pressure_pa);
    } else {
        const double room_pa =
            by_house_ ? house.room_pressure_pa(taken_kg_s + leaked_kg_s_, Fans::running, room_pa_)
                      : room_pa_;
        const double usual_pa = std::isfinite(memory_.draft_pa)
                                    ? memory_.draft_pa
                                    : model_->resolved().appliance.high.draft_needed_pa;
        const double draft_pa = std::isfinite(expected.draft_pa) ? expected.draft_pa : usual_pa;
        if (search_ == Search::nested
            || !try_coupled(stream,
                            taken_kg_s,
                            stations,
                            {.outlet_pa = room_pa - draft_pa, .room_pa = room_pa},
                            expected.is_one_of_many,
                            answer)) {
            if (search_ == Search::nested || !by_house_
                || !solve_by_rooms(stream, taken_kg_s, stations, answer)) {
                answer = solve_nested(stream, taken_kg_s, stations);
            }
        } else if (may_draw_instead(stream, taken_kg_s, answer)) {
            const Answer other = solve_nested(stream, taken_kg_s, {});
            if (other.flow.meets_top && other.draft_pa() > answer.draft_pa() + last_step_pa) {
                answer = other;
                if (!stations.empty()) {
                    (void)march(
                        stream,
                        {.outlet_pa = other.flow.outlet_pressure_pa, .room_pa = other.room_pa},
                        stations);
                }
            }
        }
    }
    if (answer.flow.meets_top) {
        memory_.draft_pa = answer.draft_pa();
        if (by_house_) {
            room_pa_ = answer.room_pa;
            leaked_kg_s_ = answer.flow.leak_from_room_kg_s;
        }
    }
    return answer;
}

bool RunInRoom::is_smooth() const {
    const auto& sections = model_->resolved().sections;
    return !model_->has_leaks()
           || (search_ == Search::coupled
               && std::none_of(sections.begin(), sections.end(), has_gate));
}

/// Gives up, and says so, where a step leads to worse or the steps do not end.
bool RunInRoom::try_coupled(const GasStream& stream,
                            double air_kg_s,
                            std::span<Station> stations,
                            EndPressures ends,
                            bool is_one_of_many,
                            Answer& answer) {
    constexpr int most_steps = 30;
    constexpr double worst_growth = 4.0; // of the step, over a corner
    constexpr double least_step_to_learn_pa = 1e-5;
    constexpr double least_calibration = 0.8; // beyond that a corner lay between
    const Surroundings& around = model_->surroundings();
    const bool smooth = is_smooth();
    double size_before_pa = std::numeric_limits<double>::infinity();
    Misses before{};
    Step step{};
    MarchSlopes slopes_before;
    double low_pa = -std::numeric_limits<double>::infinity(); // the chimney top is too low there
    double high_pa = std::numeric_limits<double>::infinity();
    for (int i = 0; i < most_steps; ++i) {
        MarchSlopes slopes;
        answer.flow = march(stream, ends, stations, &slopes);
        const HouseAir::Balance house =
            by_house_
                ? around.house.balance(ends.room_pa, air_kg_s + answer.flow.leak_from_room_kg_s)
                : HouseAir::Balance{};
        const Misses miss{answer.flow.top_pressure_pa - around.top_pressure_pa, house.surplus_kg_s};
        if (i > 0 && size_before_pa > least_step_to_learn_pa) {
            const double foretold =
                0.5
                * ((slopes.top_per_outlet + slopes_before.top_per_outlet) * step.outlet_pa
                   + (slopes.top_per_room + slopes_before.top_per_room) * step.room_pa);
            const double off =
                foretold != 0.0 ? (miss.chimney_top_pa - before.chimney_top_pa) / foretold : 0.0;
            memory_.is_calibrated = off > least_calibration && off < 1.0 / least_calibration;
            memory_.calibration = memory_.is_calibrated ? off : 1.0;
        }
        slopes_before = slopes;
        slopes.top_per_outlet *= memory_.calibration;
        slopes.top_per_room *= memory_.calibration;
        step = newton_step(miss, slopes, house.slope_kg_s_pa, by_house_);
        (miss.chimney_top_pa < 0.0 ? low_pa : high_pa) = ends.outlet_pa;
        if (!by_house_) {
            step.outlet_pa = inside(
                {low_pa, high_pa}, ends.outlet_pa, step.outlet_pa, worst_growth * size_before_pa);
        }
        const double size_pa = step.size_pa();
        if (!(size_pa <= worst_growth * size_before_pa)) {
            return false;
        }
        const double small_pa = !is_one_of_many || !memory_.is_calibrated ? last_step_pa
                                : smooth                                  ? last_step_of_many_pa
                                         : last_step_over_corners_pa;
        if (std::max(size_pa, std::abs(miss.chimney_top_pa))
            <= std::max(small_pa, model_->resolved().top_tolerance_pa)) {
            answer.room_pa = ends.room_pa + step.room_pa;
            answer.flow.meets_top = true;
            if (is_one_of_many) {
                answer.flow.outlet_pressure_pa = ends.outlet_pa + step.outlet_pa;
            } else {
                // All pressures by the same, so that their sum still closes.
                shift(answer.flow, stations, around.top_pressure_pa - answer.flow.top_pressure_pa);
            }
            return true;
        }
        ends.outlet_pa += step.outlet_pa;
        ends.room_pa += step.room_pa;
        size_before_pa = size_pa;
        before = miss;
    }
    return false;
}

/// Where much comes out the flue may be cold by that alone. Else: where no smoke comes out yet and
/// the chimney top is too low, and the lower the lower the outlet is, no outlet below that would
/// do.
bool RunInRoom::may_draw_instead(const GasStream& stream,
                                 double air_kg_s,
                                 const Answer& spilling) const {
    constexpr double just_below_pa = 1e-3;
    constexpr double much_of_the_flow = 0.2;
    if (spilling.flow.opening_pressure_pa <= 0.0) {
        return false;
    }
    if (spilling.flow.leak_out_kg_s > much_of_the_flow * stream.flow_kg_s) {
        return true;
    }
    const double room_pa =
        by_house_ ? model_->surroundings().house.room_pressure_pa(air_kg_s) : room_pa_;
    const double outlet_pa = spilling.flow.outlet_pressure_pa + room_pa - spilling.room_pa
                             - spilling.flow.opening_pressure_pa - just_below_pa;
    MarchSlopes slopes;
    const MarchResult flow =
        march(stream, {.outlet_pa = outlet_pa, .room_pa = room_pa}, {}, &slopes);
    return flow.top_pressure_pa >= model_->surroundings().top_pressure_pa
           || slopes.top_per_outlet <= 0.0;
}

} // namespace fluewright
