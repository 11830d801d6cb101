#pragma once

#include "fluewright/model/warmup/warmup.hpp"

#include <optional>

namespace fluewright {

/// Where a quantity that went from `before` to `after` during a step passed zero; empty where it
/// did not rise (or fall) through it.
inline std::optional<double>
crossing(double time_s, double step_s, double before, double after, bool up) {
    if (up ? before >= 0.0 || after < 0.0 : before < 0.0 || after >= 0.0) {
        return std::nullopt;
    }
    return time_s + step_s * before / (before - after);
}

/// The first rise through zero begins the spell, the first fall after it ends it.
inline void note(Spell& spell, double time_s, double step_s, double before, double after) {
    if (!spell.from_s) {
        spell.from_s = crossing(time_s, step_s, before, after, true);
    } else if (!spell.until_s) {
        spell.until_s = crossing(time_s, step_s, before, after, false);
    }
}

} // namespace fluewright
