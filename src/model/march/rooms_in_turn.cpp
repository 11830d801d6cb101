// One room after another, and one outlet after another in it, each in a bracket: where the coupled
// search does not settle, and what it is held against.
#include "fluewright/core/numeric/root.hpp"
#include "open_share.hpp"
#include "run_in_room.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// Bracketed root near `start`; `at_start` is the value there.
template <class Miss>
Root root_in_bracket(
    const Miss& miss, double start, double at_start, double widest_pa, double tolerance_pa) {
    constexpr int most_doublings = 40;
    double low = start;
    double high = start;
    double f_low = at_start;
    double f_high = at_start;
    double step = std::clamp(std::abs(at_start), 0.01, widest_pa);
    for (int i = 0; i < most_doublings && f_low > 0.0; ++i, step *= 2.0) {
        high = low;
        f_high = f_low;
        low -= step;
        f_low = miss(low);
    }
    for (int i = 0; i < most_doublings && f_high < 0.0; ++i, step *= 2.0) {
        low = high;
        f_low = f_high;
        high += step;
        f_high = miss(high);
    }
    return find_root(miss,
                     low,
                     high,
                     f_low,
                     f_high,
                     {.x_tolerance = 0.1 * tolerance_pa, .residual_tolerance = tolerance_pa});
}

} // namespace

/// With leaks the flow depends on the pressure it is marched at: the outlet pressure is a root.
/// The higher it is, the less comes in and the more goes out, so that friction falls and the
/// chimney top follows the outlet; far enough up and down the chimney top passes any pressure,
/// whatever the leaks do, and between them the miss is continuous. The bracket grows from the
/// answer of a tight run; with a plain opening it is sought from below. What the opening draws in
/// follows the root of the pressure across it: looks are apart by a share of that.
MarchResult RunInRoom::meet_top(const GasStream& stream,
                                double room_pa,
                                std::span<Station> stations,
                                std::optional<double> near_pa) const {
    constexpr double first_below_pa = 40.0;
    constexpr double least_look_pa = 0.25;
    constexpr double look_share = 0.1;
    constexpr int most_looks = 4000;
    const double wanted_pa = model_->surroundings().top_pressure_pa;
    const auto miss = [&](double outlet_pa) {
        return march(stream, {.outlet_pa = outlet_pa, .room_pa = room_pa}).top_pressure_pa
               - wanted_pa;
    };
    const auto& sections = model_->resolved().sections;
    const bool is_hooded = std::any_of(sections.begin(), sections.end(), has_plain_opening);
    double start_pa = -miss(0.0);
    double widest_pa = 4.0;
    double at_start_pa = 0.0;
    bool is_near = false;
    if (is_hooded && near_pa) {
        start_pa = *near_pa - least_look_pa;
        at_start_pa = miss(start_pa);
        is_near = at_start_pa < 0.0 && miss(*near_pa + least_look_pa) >= 0.0;
        widest_pa = least_look_pa;
    }
    if (is_hooded && !is_near) {
        double below_pa = first_below_pa;
        start_pa = std::min(start_pa, room_pa) - below_pa;
        at_start_pa = miss(start_pa);
        for (int i = 0; i < most_looks && at_start_pa > 0.0; ++i, below_pa *= 2.0) {
            start_pa -= below_pa;
            at_start_pa = miss(start_pa);
        }
        double next_pa = start_pa;
        double at_next_pa = at_start_pa;
        for (int i = 0; i < most_looks && at_next_pa < 0.0; ++i) {
            start_pa = next_pa;
            at_start_pa = at_next_pa;
            widest_pa = std::max(least_look_pa, look_share * std::abs(start_pa - room_pa));
            next_pa = start_pa + widest_pa;
            at_next_pa = miss(next_pa);
        }
    } else if (!is_hooded) {
        at_start_pa = miss(start_pa);
    }
    const Root root = root_in_bracket(
        miss, start_pa, at_start_pa, widest_pa, model_->resolved().top_tolerance_pa);
    MarchResult result = march(stream, {.outlet_pa = root.x, .room_pa = room_pa}, stations);
    result.meets_top = root.converged();
    return result;
}

/// The room pressure that gives itself.
///
/// The lower the room, the less the flue draws, and the less it draws, the higher the room: what
/// the house answers falls where the room rises. Between the idle room and what an idle room's flow
/// makes of it lies the one answer.
double RunInRoom::nested_room_pa(const GasStream& stream,
                                 double air_kg_s,
                                 std::optional<double>& draft_pa) const {
    const HouseAir& house = model_->surroundings().house;
    const bool follows = draft_pa.has_value();
    draft_pa.reset();
    const auto miss = [&](double room_pa) {
        const std::optional<double> near_pa =
            follows && draft_pa ? std::optional{room_pa - *draft_pa} : std::nullopt;
        const MarchResult flow = meet_top(stream, room_pa, {}, near_pa);
        draft_pa = room_pa - flow.outlet_pressure_pa;
        return house.room_pressure_pa(air_kg_s + flow.leak_from_room_kg_s, Fans::running, room_pa)
               - room_pa;
    };
    const double start_pa = house.room_pressure_pa(air_kg_s);
    // The miss falls with the pressure: turned, it rises.
    const auto turned = [&](double room_pa) { return -miss(room_pa); };
    return root_in_bracket(
               turned, start_pa, turned(start_pa), 4.0, model_->resolved().top_tolerance_pa)
        .x;
}

/// One room after another in a bracket, as nested_room_pa, each met by the coupled search, which
/// in a given room has a bracket of its own.
bool RunInRoom::solve_by_rooms(const GasStream& stream,
                               double air_kg_s,
                               std::span<Station> stations,
                               Answer& answer) {
    constexpr double widest_pa = 4.0;
    const HouseAir& house = model_->surroundings().house;
    RunInRoom given(*model_);
    given.memory_ = memory_;
    const auto too_high_pa = [&](double room_pa) {
        given.room_pa_ = room_pa;
        answer = given.solve(stream, air_kg_s);
        return room_pa
               - house.room_pressure_pa(
                   air_kg_s + answer.flow.leak_from_room_kg_s, Fans::running, room_pa);
    };
    const Root root = root_in_bracket(too_high_pa,
                                      room_pa_,
                                      too_high_pa(room_pa_),
                                      widest_pa,
                                      model_->resolved().top_tolerance_pa);
    given.room_pa_ = root.x;
    answer = given.solve(stream, air_kg_s, stations);
    marches_ += given.marches_;
    return root.converged() && answer.flow.meets_top;
}

/// From one room to the next the answer at the chimney top moves little: it is looked for where the
/// last one was, and wholly at the end. Where that finds another, every room is looked at wholly.
RunInRoom::Answer RunInRoom::solve_nested(const GasStream& stream,
                                          double air_kg_s,
                                          std::span<Station> stations) const {
    constexpr double same_pa = 1e-2;
    Answer answer;
    if (!by_house_) {
        answer.room_pa = room_pa_;
        answer.flow = meet_top(stream, answer.room_pa, stations, {});
        return answer;
    }
    std::optional<double> draft_pa = 0.0;
    answer.room_pa = nested_room_pa(stream, air_kg_s, draft_pa);
    answer.flow = meet_top(stream, answer.room_pa, stations, {});
    if (std::abs(answer.draft_pa() - draft_pa.value_or(0.0)) > same_pa) {
        draft_pa.reset();
        answer.room_pa = nested_room_pa(stream, air_kg_s, draft_pa);
        answer.flow = meet_top(stream, answer.room_pa, stations, {});
    }
    return answer;
}

} // namespace fluewright
