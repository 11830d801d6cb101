#pragma once

#include "fluewright/advice/checks/check.hpp"
#include "fluewright/core/quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the checks came to, and what is wrong or could be.
namespace fluewright {

/// What would have to hold at one place where the file does not tell.
struct Asked {
    std::string place;                ///< in words; empty where it is about the whole
    int part{-1};                     ///< index in the run, or -1
    std::string words;                ///< "distance to what burns at least 457 mm"
    std::vector<std::string> missing; ///< keys that would decide it, as pointers into the file
};

/// One check of one installation.
struct CheckResult {
    const Check* check{};
    CheckOutcome outcome{CheckOutcome::does_not_apply};
    std::string
        place;    ///< in words: "elbow 2", "the chimney top"; empty where it is about the whole
    int part{-1}; ///< index in the run, or -1
    std::string state; ///< "high fire, frost"; empty where it holds always
    Kind kind{Kind::number};
    std::optional<double> figure;     ///< of the installation, SI
    std::optional<double> limit;      ///< SI
    double weight{};                  ///< how far past the limit, for order; negative where met
    std::string message;              ///< one sentence with the figures, or why it does not apply
    std::string remedy;               ///< what to do here; empty: the general remedy
    std::vector<std::string> missing; ///< keys that would decide it, as pointers into the file
    std::vector<Asked> asked; ///< what it would ask where the file does not tell, place by place
};

using CheckResults = std::vector<CheckResult>;

/// All checks of one matter at one place that were not met. Place, state, figure, limit, message
/// and remedy are those of the weightiest.
struct Finding {
    const Matter* matter{};
    Severity severity{}; ///< the worst of the sources not met
    Harm harm{};         ///< harm_of()
    std::string place;
    int part{-1}; ///< index in the run, or -1
    std::string state;
    std::string message; ///< in the units of the report
    std::string remedy;  ///< what to do here; empty: the general remedy
    Kind kind{Kind::number};
    std::optional<double> figure;
    std::optional<double> limit;
    double weight{}; ///< how far past the limit, for order within a severity
    /// The checks behind it, weightiest first; then those of the same matter that are met by a
    /// figure of their own.
    CheckResults sources;

    [[nodiscard]] std::string_view what_to_do() const {
        return remedy.empty() ? matter->remedy : std::string_view{remedy};
    }
};

using Findings = std::vector<Finding>;

} // namespace fluewright
