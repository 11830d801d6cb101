#pragma once

#include "fluewright/advice/remedies/remedy_kind.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Changes to an installation that can be made with parts, tools or habits.
namespace fluewright {

/// The row of the kind: its id, title, effort and what it may worsen.
[[nodiscard]] const catalog::RemedyEffort& effort_of(RemedyKind kind);

struct Remedy {
    RemedyKind kind{};
    double amount{};         ///< of what changes, SI: a diameter, a height, a share, a pressure
    double other{};          ///< a second amount, where the change has two
    std::string word{};      ///< a wall or a build, where the change is one of words or needs one
    std::string place{};     ///< in words: "straight 3 and 5", "the fuel"
    std::string what{};      ///< an order for the fitter, without a final stop
    std::string caution{};   ///< what stands against doing it here; empty else
    double length_m{};       ///< of the pipe or wall it touches; for the effort and the price
    double other_length_m{}; ///< of a raised top, the pipe of another wall that goes with it
    double effort{};         ///< by the table
};

/// What it may worsen: that of its kind, and of a top raised in another wall that of the wall, too.
[[nodiscard]] std::string may_worsen(const Remedy& remedy);

/// The changes that mean something for this installation, in the order of the kinds. `present` is
/// the same installation, resolved.
[[nodiscard]] std::vector<Remedy> possible_remedies(const Installation& written,
                                                    const Case& present);

/// The wall in which a top is raised: its own, which is empty, but factory-built chimney where bare
/// pipe stands outdoors, since nobody builds more of that.
[[nodiscard]] std::string_view wall_of_raised_top(const Case& present);

/// The installation with the change made, as in_short() has it; nothing where the change does not
/// apply to it. What was observed on the old installation is left out, but for an alarm. Works on
/// what is written or on the outcome of another remedy.
[[nodiscard]] std::optional<Installation> apply(const Remedy& remedy,
                                                const Installation& installation);

/// Whether a change only takes away what is wrong with a run: it opens, sweeps, closes, cleans or
/// stops.
[[nodiscard]] bool undoes_a_fault(RemedyKind kind);

/// Whether a change holds a draft that is too strong: a damper or a regulator.
[[nodiscard]] bool holds_the_draft(const Remedy& remedy);

/// Whether two changes can be made together and mean more than one of them.
[[nodiscard]] bool go_together(const Remedy& first, const Remedy& second);

/// The same installation in its shortest form, as a file holds it: what carries on from part to
/// part is not repeated.
[[nodiscard]] Installation in_short(const Installation& installation);

} // namespace fluewright
