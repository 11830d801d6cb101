#pragma once

#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <string>
#include <vector>

/// Dangers that stand in the run as it is drawn. Answers that are not about them lead with them:
/// whoever acts on a list of parts, a warm-up or a diagnosis must have read them first.
namespace fluewright {

struct PresentDanger {
    std::string id; ///< of the finding
    int part{-1};   ///< index in the run, or -1
    std::string title;
    std::string place;
    std::string message;
    std::string remedy;
};

/// In the order in which `check` tells them. `solution` is of Detail::stations.
[[nodiscard]] std::vector<PresentDanger>
present_dangers(const Installation& written, const Case& resolved, const Solution& solution);

/// The same of checks that have been made: those of checks_of_file().
[[nodiscard]] std::vector<PresentDanger> present_dangers(const Checked& checked, UnitSystem units);

/// Every check, by the rules that the file asks for.
[[nodiscard]] Checked
checks_of_file(const Installation& written, const Case& resolved, const Solution& solution);

/// What checks of dangers ask for that the file does not tell, in words of the rule; the weightiest
/// first.
[[nodiscard]] std::vector<std::string> open_dangers(const Checked& checked, UnitSystem units);

} // namespace fluewright
