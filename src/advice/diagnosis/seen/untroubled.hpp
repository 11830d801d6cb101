#pragma once

#include "evidence.hpp"

#include <optional>

/// What was seen of a run that gives no trouble.
namespace fluewright::diagnosis {

/// Whether nobody complains, while somebody said that something is well or measured that the draft
/// is enough. Nothing seen at all is no trouble either.
[[nodiscard]] bool is_untroubled(const std::vector<Evidence>& evidence,
                                 const ApplianceCase& heater);

/// The least draft at the outlet on a high fire of those measured, where nobody complains, nothing
/// was found bad or got worse, and each is enough, by more than a gauge errs, and not more than the
/// heater can be held at: an index into the evidence.
[[nodiscard]] std::optional<std::size_t> measured_enough(const std::vector<Evidence>& evidence,
                                                         const ApplianceCase& heater);

} // namespace fluewright::diagnosis
