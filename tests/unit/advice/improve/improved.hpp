#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "unit/examples.hpp"

#include <string>
#include <utility>

/// What the tests of improve ask of it.
namespace fluewright {

/// Draft and reloading, with nothing but half a door enough for it: what these runs are made for.
inline constexpr Required states_only{.asked = {false, true, true, false}, .narrow_door = false};

inline Improvement improved(const Installation& in, const ImproveOptions& options = {}) {
    auto result = improve(in, options);
    REQUIRE(result.has_value());
    return std::move(result).value();
}

inline std::string best(const Improvement& made) {
    REQUIRE_FALSE(made.plans.empty());
    std::string ids;
    for (const Remedy& remedy : made.plans.front().steps) {
        ids += (ids.empty() ? "" : " + ") + std::string{effort_of(remedy.kind).id};
    }
    return ids;
}

} // namespace fluewright
