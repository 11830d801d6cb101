#pragma once

#include "../catch.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "installation_text.hpp"
#include "random_installation.hpp"

#include <fmt/format.h>

/// What the property tests share: a random installation resolved, and how to report one that fails.
namespace fluewright::property {

/// How many installations the large tests take; unoptimised builds take fewer.
#ifdef NDEBUG
inline constexpr std::uint64_t many = 10000;
inline constexpr std::uint64_t some = 1000;
#else
inline constexpr std::uint64_t many = 400;
inline constexpr std::uint64_t some = 100;
#endif

struct Trial {
    std::uint64_t seed;
    Installation written;
    Case resolved;
};

/// Resolves an installation the generator made or a test changed; what cannot be resolved is a
/// fault of the test.
inline Case resolved(const Installation& written) {
    auto result = resolve(written);
    if (!result) {
        FAIL(result.error().front().pointer << ": " << result.error().front().message << "\n"
                                            << file_text(written));
    }
    return std::move(result).value();
}

inline Trial trial(std::uint64_t seed) {
    Installation written = random_installation(seed);
    Case made = resolved(written);
    return {seed, std::move(written), std::move(made)};
}

/// Ends the test with the installation as an input file.
[[noreturn]] inline void fail(const Trial& trial, const std::string& what) {
    FAIL("seed " << trial.seed << ": " << what << "\n" << file_text(trial.written));
    std::abort();
}

inline FlueModel burning(const Case& resolved, std::size_t weather = 0) {
    return {resolved, surroundings_of(resolved, weather, Fire::burning)};
}

inline GasStream stream_of(const Case& resolved, GasChoice gas) {
    const Firing& firing =
        gas == GasChoice::high_fire ? resolved.appliance.high : resolved.appliance.low;
    return {.gas = gas,
            .air_share = 0.0,
            .flow_kg_s = firing.gas_flow_kg_s,
            .temperature_k = firing.gas_temperature_k};
}

inline constexpr std::array<GasChoice, 2> both_fires{GasChoice::high_fire, GasChoice::low_fire};

} // namespace fluewright::property
