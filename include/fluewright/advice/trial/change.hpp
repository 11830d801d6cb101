#pragma once

#include "fluewright/advice/diagnosis/cause_id.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/result.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

/// What may be tried on an installation, each as a value. Whoever proposes something, whether a
/// remedy, a size, a value of a sweep or the cure of a cause, says it as a Change, so that all of
/// them are made, solved and judged alike.
namespace fluewright {

/// Nothing: the installation as its file has it.
struct AsItStands {};

/// Other round pipe wherever a size can be chosen, and where given another height.
struct OtherPipe {
    double connector_m{}; ///< inside diameter
    double chimney_m{};
    std::optional<double>
        height_m{}; ///< of the chimney top over the outlet, by the topmost upright
};

/// Another clay liner in every masonry part of a chimney still to be built; an open hearth then
/// leads into its whole section.
struct OtherClayLiner {
    std::string liner; ///< its trade name
};

/// One number of the file with another value.
struct OtherValue {
    VariedKey key;
    double value{}; ///< SI
};

/// A flaw of the design gone that no remedy takes away: the weather of a colder day, masonry of
/// another section, a top in clear wind, or pipe turned round.
struct FlawGone {
    diagnosis::CauseId cause{}; ///< of the kind "design"
};

using Change = std::variant<AsItStands, Remedy, OtherPipe, OtherClayLiner, OtherValue, FlawGone>;

/// The installation with the change made, in the form a file would hold: written out and read again
/// it is the same. Failure: why it cannot be made, a sentence without its full stop.
[[nodiscard]] Result<Installation, std::string> changed(const Change& change,
                                                        const Installation& written);

/// Several changes, one after the other; first the values that pointers of the file lead to.
[[nodiscard]] Result<Installation, std::string> changed(std::span<const Change> changes,
                                                        const Installation& written);

} // namespace fluewright
