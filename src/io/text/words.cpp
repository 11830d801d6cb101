#include "words.hpp"

#include "fluewright/advice/checks/joint_air.hpp"
#include "fluewright/advice/opening_words.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright::report {

std::string state_words(const Case& resolved, const StateResult& state) {
    return fmt::format(
        "{}, {}",
        condition_word(resolved, state.kind),
        state.weather < resolved.weathers.size() ? resolved.weathers[state.weather].name : "");
}

bool has_added_top(const Case& resolved) {
    return std::any_of(resolved.assumptions.begin(),
                       resolved.assumptions.end(),
                       [](const Assumption& assumption) { return assumption.pointer == "/run"; });
}

std::string section_words(const Case& resolved, std::size_t section) {
    const auto& sections = resolved.sections;
    const Section& here = sections[section];
    if (here.kind == PartKind::collar) {
        return std::string{name(PartKind::collar)};
    }
    const bool last = section + 1 == sections.size();
    if (last && has_added_top(resolved)) {
        return "chimney top";
    }
    const bool step = !last && sections[section + 1].part == here.part;
    return fmt::format("{} {}", here.part + 1, step ? "step" : name(here.kind));
}

std::vector<Joint> joints_of(const Case& resolved, const StateResult& state) {
    std::vector<Joint> joints;
    const auto& sections = resolved.sections;
    for (std::size_t i = 1; i < sections.size() && i + 1 < state.stations.size(); ++i) {
        const bool added_top = i + 1 == sections.size() && has_added_top(resolved);
        if (sections[i].part == sections[i - 1].part || added_top) {
            continue;
        }
        const Station& behind = state.stations[i + 1];
        joints.push_back({.section = i,
                          .height_m = state.stations[i].height_m,
                          .pressure_pa = joint_air(resolved, state, i).over_pa,
                          .leak_kg_s = behind.leak_kg_s});
    }
    return joints;
}

bool leaks_indoors(const Case& resolved, std::size_t section) {
    const Zone below = resolved.sections[section - std::min<std::size_t>(section, 1)].zone;
    return resolved.sections[section].zone != Zone::outdoors || below != Zone::outdoors;
}

std::string_view
leak_words(const Case& resolved, std::size_t section, double pressure_in_zone_pa, StateKind state) {
    if (pressure_in_zone_pa <= 0.0) {
        return "draws air in";
    }
    if (!leaks_indoors(resolved, section)) {
        return "lets gas out into the open";
    }
    return state == StateKind::idle ? "lets air out" : "lets smoke out";
}

bool has_working_point(const StateResult& state) {
    return state.status == Status::solved;
}

bool has_wall_temperature(const Case& resolved, const StateResult& state, std::size_t station) {
    const Section& section = resolved.sections[state.stations[station].section];
    return station > 0 && section.length_m > 0.0;
}

bool was_computed(const SizeTrial& trial) {
    const auto is_set = [](double value) { return value < 0.0 || value > 0.0; };
    return trial.works || is_set(trial.least_spare_pa) || is_set(trial.least_opening_share);
}

} // namespace fluewright::report
