#include "cli/first_plan/plan_questions.hpp"

#include "cli/first_plan/plan_answers.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace fluewright::cli {
namespace {

/// Room for an elbow or for what else stands between two heights.
constexpr double least_gap_m = 0.1;
constexpr double nearest_chimney_m = 0.1;
constexpr double farthest_chimney_m = 10.0;
constexpr double highest_ceiling_m = 30.0;
constexpr double highest_top_m = 50.0;

template <class T>
Allowed allowed_by_field(std::string_view key, std::string_view why) {
    const FieldInfo& field = find_field<T>(key)->info;
    return {.least = field.lowest, .most = field.highest, .why = why};
}

bool always(const FirstPlan& /*plan*/) {
    return true;
}

bool has_collar(const FirstPlan& plan) {
    return !plan.is_fireplace();
}

bool is_open(const FirstPlan& plan) {
    return plan.is_fireplace();
}

bool goes_across(const FirstPlan& plan) {
    return plan.goes_across();
}

bool goes_into_masonry(const FirstPlan& plan) {
    return plan.way == PlanWay::masonry || plan.is_fireplace();
}

bool goes_through_ceiling(const FirstPlan& plan) {
    return plan.way != PlanWay::wall;
}

bool has_bare_pipe(const FirstPlan& plan) {
    return plan.has_bare_pipe();
}

bool passes_wall(const FirstPlan& plan) {
    return plan.has_bare_pipe() && plan.way == PlanWay::wall;
}

/// Half of what the pipe is wide; nothing of a fireplace, whose flue has no collar.
double half_pipe_m(const FirstPlan& plan) {
    return has_collar(plan) ? 0.5 * plan.collar.value : 0.0;
}

/// A place above which the next one must lie: the upper side of a pipe that goes level.
double height_before_ceiling_m(const FirstPlan& plan) {
    return plan.goes_across() ? plan.entry_height.value + half_pipe_m(plan)
                              : plan.collar_height.value + least_gap_m;
}

/// What pipe is made in; a collar beyond it is a slip of the unit.
Allowed allowed_by_trade() {
    const auto [least, most] = std::minmax_element(
        catalog::trade_sizes().begin(),
        catalog::trade_sizes().end(),
        [](const auto& a, const auto& b) { return a.inside_diameter_m < b.inside_diameter_m; });
    return {.least = least->inside_diameter_m,
            .most = most->inside_diameter_m,
            .why = "no pipe of the trade is like that"};
}

/// The farthest that the wall can be from the upright pipe, with the chimney on its other side.
double farthest_wall_m(const FirstPlan& plan) {
    return plan.distance.value - 2.0 * half_pipe_m(plan);
}

std::optional<std::string> take_length(std::string_view typed,
                                       const Allowed& allowed,
                                       FirstPlan& plan,
                                       Said FirstPlan::*member) {
    return take_quantity(typed, Kind::length, allowed, plan.units(), plan.*member);
}

std::optional<std::string> take_heater(std::string_view typed, FirstPlan& plan) {
    std::size_t place = 0;
    auto why = take_word(typed, plan_heater_words, place);
    if (!why) {
        plan.heater = static_cast<PlanHeater>(place);
    }
    return why;
}

std::optional<std::string> take_way(std::string_view typed, FirstPlan& plan) {
    std::size_t place = 0;
    if (auto why = take_word(typed, plan_way_words, place)) {
        return why;
    }
    if (plan.is_fireplace() && static_cast<PlanWay>(place) == PlanWay::wall) {
        return "That does not fit: the flue of an open fireplace begins above its throat and goes "
               "up. It can be up or masonry.";
    }
    plan.way = static_cast<PlanWay>(place);
    return std::nullopt;
}

std::string words_of_fire(const FirstPlan& plan) {
    switch (plan.heater) {
    case PlanHeater::masonry_heater:
        return "How much wood is one charge, such as 15 kg or 33 lb?";
    case PlanHeater::oil_boiler:
    case PlanHeater::gas_hood:
        return "How big is the burner? Its heat input, such as 20 kW or 68000 Btu/h:";
    case PlanHeater::pellet_stove:
        return "How big is it? Heat output such as 8 kW, or pellets an hour such as 1.5 kg/h:";
    default:
        return "How big is it? By its plate or manual: heat output such as 8 kW, or fuel an hour "
               "such as 2.5 kg/h. Without either: the room in the firebox, such as 40 L:";
    }
}

std::string words_of_entry(const FirstPlan& plan) {
    return fmt::format("How high above the floor does the pipe enter the {}?",
                       plan.way == PlanWay::wall ? "wall" : "masonry chimney");
}

std::optional<std::string> take_front(std::string_view typed, FirstPlan& plan) {
    return take_section(typed,
                        false,
                        allowed_by_field<Door>("width", "no front of a fireplace is like that"),
                        plan.units(),
                        plan.front);
}

std::optional<std::string> take_flue(std::string_view typed, FirstPlan& plan) {
    return take_section(typed,
                        true,
                        allowed_by_field<Part>("diameter", "no flue is like that"),
                        plan.units(),
                        plan.flue);
}

std::optional<std::string> take_collar(std::string_view typed, FirstPlan& plan) {
    return take_length(typed, allowed_by_trade(), plan, &FirstPlan::collar);
}

std::optional<std::string> take_collar_height(std::string_view typed, FirstPlan& plan) {
    Allowed allowed = allowed_by_field<Outlet>("height", "the heater stands on the floor");
    if (plan.is_fireplace()) {
        allowed.least = std::max(allowed.least, plan.front.depth.value);
        allowed.why = "the throat is above the opening";
    }
    return take_length(typed, allowed, plan, &FirstPlan::collar_height);
}

std::optional<std::string> take_distance(std::string_view typed, FirstPlan& plan) {
    return take_length(typed,
                       {.least = std::max(nearest_chimney_m, 2.0 * half_pipe_m(plan)),
                        .most = farthest_chimney_m,
                        .why = "it goes from the flue collar to the middle of the chimney"},
                       plan,
                       &FirstPlan::distance);
}

std::optional<std::string> take_entry(std::string_view typed, FirstPlan& plan) {
    return take_length(
        typed,
        {.least = plan.collar_height.value + rise_across_m(plan) + least_gap_m,
         .most = highest_ceiling_m,
         .why = "the pipe rises from the flue collar, and by 20 mm for each meter it goes across"},
        plan,
        &FirstPlan::entry_height);
}

std::optional<std::string> take_ceiling(std::string_view typed, FirstPlan& plan) {
    return take_length(typed,
                       {.least = height_before_ceiling_m(plan),
                        .most = highest_ceiling_m,
                        .why = plan.goes_across()
                                   ? "the ceiling is above the place where the pipe enters"
                               : plan.is_fireplace() ? "the ceiling is above the throat"
                                                     : "the ceiling is above the flue collar"},
                       plan,
                       &FirstPlan::ceiling);
}

std::optional<std::string> take_roof(std::string_view typed, FirstPlan& plan) {
    const bool outside = plan.way == PlanWay::wall;
    return take_length(
        typed,
        {.least = outside ? height_before_ceiling_m(plan) : plan.ceiling.value,
         .most = highest_top_m - least_gap_m,
         .why = outside ? "the roof is above the place where the pipe goes through the wall"
                        : "the roof is not under the ceiling"},
        plan,
        &FirstPlan::roof);
}

std::optional<std::string> take_top(std::string_view typed, FirstPlan& plan) {
    return take_length(typed,
                       {.least = plan.roof.value + least_gap_m,
                        .most = highest_top_m,
                        .why = "the chimney top is above the roof"},
                       plan,
                       &FirstPlan::top);
}

/// Takes what may be left out.
std::optional<std::string> take_of_roof(std::string_view typed,
                                        const char* key,
                                        std::string_view why,
                                        UnitSystem units,
                                        std::optional<Said>& to) {
    Said taken;
    auto refused = take_quantity(
        typed, find_field<Roof>(key)->info.kind, allowed_by_field<Roof>(key, why), units, taken);
    if (!refused) {
        to = std::move(taken);
    }
    return refused;
}

std::optional<std::string> take_pitch(std::string_view typed, FirstPlan& plan) {
    return take_of_roof(typed, "pitch", "no roof is like that", plan.units(), plan.pitch);
}

std::optional<std::string> take_ridge(std::string_view typed, FirstPlan& plan) {
    return take_of_roof(
        typed, "distance_to_ridge", "no roof is like that", plan.units(), plan.ridge);
}

std::optional<std::string> take_clearance(std::string_view typed, FirstPlan& plan) {
    Said taken;
    Allowed allowed = allowed_by_field<Part>("clearance", "no pipe stands like that");
    if (passes_wall(plan) && plan.pass != PassThrough::noncombustible_wall
        && farthest_wall_m(plan) < allowed.most) {
        allowed.most = std::max(allowed.least, farthest_wall_m(plan));
        allowed.why = "the wall it goes through is nearer, between pipe and chimney";
    }
    auto refused = take_quantity(typed, Kind::length, allowed, plan.units(), taken);
    if (!refused) {
        plan.clearance = std::move(taken);
    }
    return refused;
}

std::optional<std::string> take_pass(std::string_view typed, FirstPlan& plan) {
    std::size_t place = 0;
    auto why = take_word(typed, plan_pass_words, place);
    if (!why) {
        plan.pass = static_cast<PassThrough>(place);
    }
    return why;
}

/// The words of a question that are the same for every plan.
template <const auto& text>
std::string fixed(const FirstPlan& /*plan*/) {
    return text;
}

constexpr char collar_words[] =
    "What is the inside diameter of the flue collar, such as 150 mm or 6 in?";
constexpr char distance_words[] = "How far is it, level, from the flue collar to the middle of the "
                                  "chimney, such as 0.6 m or 2 ft?";
constexpr char front_words[] =
    "How big is the opening of the fireplace, width x height, such as 700 mm x 600 mm?";
constexpr char ceiling_words[] = "How high above the floor is the highest ceiling the chimney goes "
                                 "through, such as 2.5 m or 8 ft?";
constexpr char top_words[] = "How high above the floor is the chimney top?";
constexpr char pitch_words[] = "What is the slope of the roof, such as 35 deg?";
constexpr char clearance_words[] =
    "How far is the single-wall pipe, at its nearest, from anything combustible: wall, ceiling, "
    "furniture? Such as 460 mm or 18 in:";
constexpr char ridge_words[] =
    "How far is it, level, from the chimney to the ridge, such as 2.5 m or 8 ft?";

std::string words_of_heater(const FirstPlan& /*plan*/) {
    return fmt::format("What kind of heater is it? ({})", fmt::join(plan_heater_words, ", "));
}

std::string words_of_way(const FirstPlan& plan) {
    return plan.is_fireplace()
               ? "Where does the run go? (up: a factory-built chimney; masonry: a masonry chimney)"
               : "Where does the run go? (up: through the roof; wall: through the wall and up "
                 "outside; masonry: into a masonry chimney)";
}

std::string words_of_pass(const FirstPlan& /*plan*/) {
    return fmt::format("How does the pipe go through the wall? ({})",
                       fmt::join(plan_pass_words, ", "));
}

std::string words_of_collar_height(const FirstPlan& plan) {
    return plan.is_fireplace() ? "How high above the hearth is the throat, where the flue begins?"
                               : "How high above the floor is the middle of the flue collar, such "
                                 "as 0.8 m or 32 in?";
}

std::string words_of_flue(const FirstPlan& plan) {
    return fmt::format("How wide is the {} inside: a diameter, or two sides such as 200 mm x "
                       "200 mm?",
                       plan.way == PlanWay::masonry ? "masonry chimney" : "chimney");
}

std::string words_of_roof(const FirstPlan& plan) {
    return plan.way == PlanWay::wall
               ? "How high above the floor is the roof where the chimney passes it?"
               : "How high above the floor does the chimney leave the roof, on its upper side? The "
                 "same as the ceiling where there is no attic.";
}

constexpr std::array questions{
    PlanQuestion{&option::plan_heater, always, words_of_heater, take_heater},
    PlanQuestion{&option::plan_way, always, words_of_way, take_way},
    PlanQuestion{&option::plan_collar, has_collar, fixed<collar_words>, take_collar},
    PlanQuestion{&option::plan_front, is_open, fixed<front_words>, take_front},
    PlanQuestion{&option::plan_fire, has_collar, words_of_fire, take_fire},
    PlanQuestion{&option::plan_collar_height, always, words_of_collar_height, take_collar_height},
    PlanQuestion{&option::plan_distance, goes_across, fixed<distance_words>, take_distance},
    PlanQuestion{&option::plan_entry, goes_across, words_of_entry, take_entry},
    PlanQuestion{&option::plan_flue, goes_into_masonry, words_of_flue, take_flue},
    PlanQuestion{&option::plan_ceiling, goes_through_ceiling, fixed<ceiling_words>, take_ceiling},
    PlanQuestion{&option::plan_roof, always, words_of_roof, take_roof},
    PlanQuestion{&option::plan_top, always, fixed<top_words>, take_top},
    PlanQuestion{&option::plan_pitch, always, fixed<pitch_words>, take_pitch, true},
    PlanQuestion{&option::plan_ridge, always, fixed<ridge_words>, take_ridge, true},
    PlanQuestion{&option::plan_pass, passes_wall, words_of_pass, take_pass, true},
    PlanQuestion{
        &option::plan_clearance, has_bare_pipe, fixed<clearance_words>, take_clearance, true}};

} // namespace

std::span<const PlanQuestion> plan_questions() {
    return questions;
}

} // namespace fluewright::cli
