#include "any_installation.hpp"
#include "fluewright/advice/assessment.hpp"
#include "trial.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

using namespace fluewright;
using namespace fluewright::property;

namespace {

bool are_finite(const Assessment& a) {
    return std::all_of(
        a.solution.states.begin(), a.solution.states.end(), [](const StateResult& state) {
            return std::isfinite(state.draft_pa + state.draft_needed_pa + state.capacity_kg_s
                                 + state.gas_flow_kg_s + state.gas_temperature_k
                                 + state.flow.outlet_pressure_pa + state.flow.heat_loss_w);
        });
}

} // namespace

TEST_CASE("any installation built in code is a fault with its place, or has a finite answer") {
    constexpr std::uint64_t count = some * 6;
    std::size_t answered = 0;
    std::size_t refused = 0;
    for (std::uint64_t seed = 0; seed < count; ++seed) {
        Random random{seed * 7919 + 17};
        const Installation written = any_installation(random, seed);
        AssessOptions options;
        options.size_search = false;
        const Result<Assessment, Faults> assessed = assess(written, options);
        if (assessed) {
            ++answered;
            INFO("seed " << seed << "\n" << file_text(written));
            for (const StateResult& state : assessed->solution.states) {
                UNSCOPED_INFO(name(state.kind)
                              << ": " << state.draft_pa << " Pa, " << state.gas_flow_kg_s
                              << " kg/s, " << state.gas_temperature_k << " K, "
                              << state.flow.heat_loss_w << " W");
            }
            REQUIRE(are_finite(*assessed));
            continue;
        }
        ++refused;
        REQUIRE_FALSE(assessed.error().empty());
        for (const Fault& fault : assessed.error()) {
            INFO("seed " << seed << ": " << fault.message);
            REQUIRE(fault.pointer.starts_with('/'));
            REQUIRE_FALSE(fault.message.empty());
        }
    }
    // Neither outcome is rare, or the test says little.
    REQUIRE(answered > count / 8);
    REQUIRE(refused > count / 8);
}

TEST_CASE("every wrong value is refused where it stands") {
    std::size_t held = 0;
    for (std::uint64_t seed = 0; seed < some * 6; ++seed) {
        Random random{seed * 104729 + 5};
        Installation written = any_installation(random, seed);
        if (!resolve(written)) {
            continue; // names are looked up only where the values are right
        }
        ++held;
        const std::vector<AnyPlace> places = any_places(written);
        const AnyPlace* place = nullptr;
        do {
            place = &random.one_of(places);
        } while (!place->spoil);
        place->spoil(random);
        const Result<Case, Faults> made = resolve(written);
        INFO("seed " << seed << ": " << place->pointer);
        REQUIRE_FALSE(made.has_value());
        for (const Fault& fault : made.error()) {
            UNSCOPED_INFO(fault.pointer << ": " << fault.message);
        }
        REQUIRE(std::any_of(made.error().begin(), made.error().end(), [&](const Fault& fault) {
            return fault.pointer == place->pointer;
        }));
    }
    REQUIRE(held > some);
}
