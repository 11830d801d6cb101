#include "fluewright/core/constants.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "registry.hpp"

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <vector>

namespace published {
namespace {

using namespace fluewright;

struct Marched {
    double top_c;
    double top_wall_c;
    double draft_pa;
};

/// One installation of the file the reference reads too, at high fire. The reference has neither
/// leaks nor wind at the chimney top.
Marched marched(const std::string& text) {
    const auto read = read_installation(text);
    if (!read) {
        throw std::runtime_error(read.error().front().fault.message);
    }
    auto resolved = resolve(read.value());
    if (!resolved) {
        throw std::runtime_error(resolved.error().front().message);
    }
    Case& c = resolved.value();
    for (Section& section : c.sections) {
        section.joint_leak_m2 = 0.0;
    }
    Surroundings around = surroundings_of(c, 0, Fire::burning);
    around.top_pressure_pa = 0.0;
    const FlueModel model(c, around);
    const StateResult state = solve_state(model, StateKind::high_fire, Detail::stations);
    return {.top_c = state.flow.top_temperature_k - constants::celsius_zero_k,
            .top_wall_c = state.stations.back().inner_wall_k - constants::celsius_zero_k,
            .draft_pa = state.draft_pa};
}

std::vector<Marched> all_marched() {
    std::ifstream in(std::filesystem::path(FLUEWRIGHT_TREE)
                     / "tests/published/reference/march_installations.jsonl");
    std::vector<Marched> results;
    for (std::string line; std::getline(in, line);) {
        results.push_back(marched(line));
    }
    return results;
}

const Marched& result_of(const Inputs& in) {
    static const std::vector<Marched> results = all_marched();
    return results.at(static_cast<std::size_t>(in.number("installation")));
}

} // namespace

void add_march_checks(Registry& registry) {
    registry["march_top_temperature"] = {
        "gas temperature", "degC", [](const Inputs& in) { return result_of(in).top_c; }};
    registry["march_top_wall"] = {
        "wall temperature", "degC", [](const Inputs& in) { return result_of(in).top_wall_c; }};
    registry["march_draft"] = {
        "draft", "Pa", [](const Inputs& in) { return result_of(in).draft_pa; }};
}

} // namespace published
