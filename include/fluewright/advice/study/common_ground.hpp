#pragma once

#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/core/fault.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// What several layouts are compared under: one set of weathers and one of rules. A file that
/// leaves out the day on which it fails, or the rules it breaks, is no better for it.
namespace fluewright {

struct NamedInstallation {
    std::string name; ///< as the file is called
    Installation written;
};

struct CommonGround {
    std::vector<Installation> installations; ///< each with the weathers of all, in one order
    std::string rules;                       ///< id of catalog::rule_bodies(), for all
    std::vector<std::string> added;          ///< what was added to which file, a sentence each
};

/// A file of them that cannot be resolved.
struct UnreadLayout {
    std::size_t index{};
    Faults faults;
};

/// Weathers are the same by name and values; of two that share the name alone, the later takes that
/// of its file beside it. `rules` is the choice of the user: where empty, those of the first file
/// that names any stand for all, else those of the units.
[[nodiscard]] Result<CommonGround, UnreadLayout>
common_ground(std::span<const NamedInstallation> files,
              const std::string& rules,
              std::optional<UnitSystem> units);

} // namespace fluewright
