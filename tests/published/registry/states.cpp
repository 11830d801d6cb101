#include "fluewright/model/states/states.hpp"

#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/warmup/tended.hpp"
#include "registry.hpp"

#include <filesystem>
#include <fstream>
#include <map>
#include <stdexcept>
#include <vector>

namespace published {
namespace {

using namespace fluewright;

constexpr double ice_point_of_states_k = 273.15;
constexpr double gram_of_states_kg = 1e-3;

/// One installation of the file the reference reads too. The reference has no leaks.
Case resolved_of(const std::string& text) {
    const auto read = read_installation(text);
    if (!read) {
        throw std::runtime_error(read.error().front().fault.message);
    }
    auto resolved = resolve(read.value());
    if (!resolved) {
        throw std::runtime_error(resolved.error().front().message);
    }
    for (Section& section : resolved.value().sections) {
        section.joint_leak_m2 = 0.0;
    }
    return std::move(resolved).value();
}

const std::vector<Case>& all_cases() {
    static const std::vector<Case> cases = [] {
        std::ifstream in(std::filesystem::path(FLUEWRIGHT_TREE)
                         / "tests/published/reference/state_installations.jsonl");
        std::vector<Case> read;
        for (std::string line; std::getline(in, line);) {
            read.push_back(resolved_of(line));
        }
        return read;
    }();
    return cases;
}

StateKind kind_of(const std::string& name) {
    static const std::map<std::string, StateKind> kinds{
        {"high_fire", StateKind::high_fire},
        {"low_fire", StateKind::low_fire},
        {"free_burn", StateKind::free_burn},
        {"door_open_high", StateKind::door_open_high},
        {"door_open_embers", StateKind::door_open_embers},
        {"idle", StateKind::idle},
        {"cold_start", StateKind::cold_start}};
    return kinds.at(name);
}

struct Solved {
    const Case* resolved;
    StateResult state;
};

Solved solved(const Inputs& in) {
    const Case& c = all_cases().at(static_cast<std::size_t>(in.number("installation")));
    const StateKind kind = kind_of(in.text("state"));
    const FlueModel model(c, surroundings_of(c, 0, fire_of(kind)));
    return {&c, solve_state(model, kind, Detail::totals)};
}

/// A check that reads one figure of a solved state.
Check figure(const char* quantity, const char* unit, double (*read)(const Solved&)) {
    return {quantity, unit, [read](const Inputs& in) { return read(solved(in)); }};
}

} // namespace

void add_state_checks(Registry& registry) {
    registry["state_draft"] =
        figure("draft", "Pa", [](const Solved& s) { return s.state.draft_pa; });
    registry["state_room_pressure"] =
        figure("room pressure", "Pa", [](const Solved& s) { return s.state.room.pressure_pa; });
    registry["state_flow"] = figure("mass flow", "g/s", [](const Solved& s) {
        return s.state.gas_flow_kg_s / gram_of_states_kg;
    });
    registry["state_capacity"] = figure("mass flow", "g/s", [](const Solved& s) {
        return s.state.capacity_kg_s * s.resolved->appliance.high.gas_per_fuel_kg_kg
               / gram_of_states_kg;
    });
    registry["state_box_temperature"] = figure("gas temperature", "degC", [](const Solved& s) {
        return s.state.door.box_temperature_k - ice_point_of_states_k;
    });
    registry["state_opening_share"] = figure(
        "share of the opening", "-", [](const Solved& s) { return s.state.door.opening_share; });
    registry["state_opening_share_mixed"] =
        figure("share of the opening", "-", [](const Solved& s) {
            return s.state.door.opening_share_mixed;
        });
    registry["state_tended_temperature"] = figure("gas temperature", "degC", [](const Solved& s) {
        const FlueModel model(*s.resolved, surroundings_of(*s.resolved, 0, Fire::burning));
        return tended_temperature_k(model, GasChoice::high_fire, 0.5) - ice_point_of_states_k;
    });
    registry["state_turning"] = figure("mean temperature of the flue", "degC", [](const Solved& s) {
        return s.state.cold.turning_k - ice_point_of_states_k;
    });
    registry["state_preheat"] =
        figure("duration", "s", [](const Solved& s) { return s.state.cold.duration_s; });
}

} // namespace published
