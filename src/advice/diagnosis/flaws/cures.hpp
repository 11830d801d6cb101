#pragma once

#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/advice/trial/trial.hpp"

#include <vector>

/// Flaws of a design and what the run looks like without them.
namespace fluewright::diagnosis {

/// From which turn on the blade of a damper is in the way, and from which it is as good as shut
/// [rad]; judgement.
inline constexpr double turned_blade_rad = 0.35;
inline constexpr double shut_blade_rad = 1.05;

struct FoundFlaw {
    const Cause* cause{};
    double grade{};     ///< 0: only just no longer sound, 1: glaring
    double weight{1.0}; ///< times what such a flaw weighs: what everybody would put right first
};

/// The flaws of the design that the file shows; judgement from the rules of the trade.
[[nodiscard]] std::vector<FoundFlaw> flaws_of(const Installation& written, const Case& resolved);

/// Whether a flaw lies in the day or the way of firing, and not in the run.
[[nodiscard]] bool is_no_fault_of_the_run(const Cause& flaw);

/// The installation without the flaw named by a cause: one trial for each way to take it away, by
/// the remedies there are for it and where there is none with the flaw itself gone; empty where it
/// does not have the flaw. What comes of each is what a check of the changed installation says.
[[nodiscard]] std::vector<Trial>
cured(const Cause& cause, const Installation& written, const Case& resolved);

} // namespace fluewright::diagnosis
