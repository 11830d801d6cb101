#pragma once

#include "fluewright/advice/trial/trial.hpp"
#include "seen/evidence.hpp"

/// What is wrong by design: the run as the file describes it, against a cured one.
namespace fluewright::diagnosis {

struct DesignCause {
    const Cause* cause{};
    std::optional<Trial> cured; ///< nothing for the design as a whole
    double share{};             ///< of the trouble that this cause accounts for
};

/// How much of the trouble an installation without hidden causes predicts, 0 to 1: the likeliest
/// symptom among those seen, or, where only readings were taken, whether it falls short.
[[nodiscard]] double trouble_of(const Installation& written,
                                const Case& resolved,
                                const std::vector<Evidence>& evidence);

/// The flaws of the design by what curing each of them takes from the trouble; shares sum to 1.
[[nodiscard]] std::vector<DesignCause> design_causes(const Installation& written,
                                                     const Case& resolved,
                                                     const std::vector<Evidence>& evidence);

} // namespace fluewright::diagnosis
