#pragma once

#include "advice/diagnosis/seen/evidence.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/trial/trial.hpp"

/// What is wrong by design: the run as the file describes it, against a cured one.
namespace fluewright::diagnosis {

struct DesignCause {
    const Cause* cause{};
    std::optional<Trial> cured; ///< nothing for the design as a whole
    double share{};             ///< of the trouble that this cause accounts for
};

struct Design {
    /// How much of the trouble the run predicts without hidden causes, 0 to 1: the likeliest
    /// complaint of those seen, or, where only readings were taken, whether it falls short.
    double trouble{};
    /// Its flaws by what curing each of them takes from the trouble; shares sum to 1.
    std::vector<DesignCause> causes;
};

[[nodiscard]] Design
design_of(const Installation& written, const Case& resolved, const std::vector<Evidence>& evidence);

/// Of what was complained of, what an installation without hidden causes is likely to show as well;
/// the likeliest first.
[[nodiscard]] std::vector<LeftTrouble> troubles_left(const Installation& written,
                                                     const Case& resolved,
                                                     const std::vector<Evidence>& evidence);

} // namespace fluewright::diagnosis
