#pragma once

#include "fluewright/advice/checks/finding.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <string>

/// What a report tells of a check that was not held against anything: nobody with a burner asks
/// about tar and hearths.
namespace fluewright {

/// Whether a check waits for the thickness of a deposit, which a new flue has not yet: nothing of
/// the plan is open by it.
[[nodiscard]] bool waits_for_deposit(const CheckResult& result);

/// Whether a check of something that kills could not be decided, so that fire is not.
[[nodiscard]] bool is_open_danger(const CheckResult& result);

/// Whether a result is worth a word to who has this kind of heater. What was met or missed always
/// is; a check that does not apply, or waits for the thickness of tar, only of the kinds it is
/// about.
[[nodiscard]] bool is_told_to(const CheckResult& result, HeaterKind kind);

/// What a check asks; its row may give a figure in both systems of units, this does in one.
[[nodiscard]] std::string rule_words(const Check& check, UnitSystem units);

} // namespace fluewright
