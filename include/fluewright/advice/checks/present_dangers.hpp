#pragma once

#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <string>
#include <vector>

/// Dangers that stand in the run as it is drawn, and what leaves fire undecided. Answers that are
/// not about them lead with them: whoever acts on a list of parts, a warm-up or a diagnosis must
/// have read them first.
namespace fluewright {

struct PresentDanger {
    std::string id; ///< of the finding
    int part{-1};   ///< index in the run, or -1
    std::string title;
    std::string place;
    std::string message;
    std::string remedy;
};

/// Of checks_of_file(), in the order in which `check` tells them.
[[nodiscard]] std::vector<PresentDanger> present_dangers(const Checked& checked);

/// Every check, by the rules that the file asks for. `solution` is of Detail::stations.
[[nodiscard]] Checked
checks_of_file(const Installation& written, const Case& resolved, const Solution& solution);

/// "2 checks are undetermined, as the file does not say; first: `alarms`; required: ...": what
/// leaves fire open. Empty where nothing does.
[[nodiscard]] std::string open_dangers_words(const CheckResults& results, UnitSystem units);

/// The same as an answer that is not about fire leads with it: "Not decided: fire and carbon
/// monoxide. 2 checks ...".
[[nodiscard]] std::string fire_not_decided(const CheckResults& results, UnitSystem units);

/// The same; empty, too, where a danger has been found, which is told instead.
[[nodiscard]] std::string fire_not_decided(const Checked& checked, UnitSystem units);

} // namespace fluewright
