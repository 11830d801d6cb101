#pragma once

#include "fluewright/core/fault.hpp"
#include "stretches.hpp"

#include <optional>
#include <string>
#include <string_view>

/// What lies in the box, against what the run asks for.
namespace fluewright::parts {

/// A fitting the run asks for.
struct WantedFitting {
    StockKind kind{};
    std::string wall; ///< empty where any does, as of caps and thimbles
    double diameter_m{};
    std::optional<double> to_diameter_m;
    std::optional<double> angle_rad;
    std::optional<PipeEnd> heater_end; ///< where the file states it
    std::optional<PipeEnd> chimney_end;
};

/// Takes one such fitting out of the box; false where there is none.
[[nodiscard]] bool take_fitting(const Job& job, const WantedFitting& wanted);

/// Why a straight of the box cannot lie in a stretch; empty where it can.
[[nodiscard]] std::string
why_not(const StockPiece& piece, const PipeStretch& stretch, bool socketed, UnitSystem units);

/// Whether the pipe of a stretch widens to a socket at its chimney end, so that its plain end is
/// the one to cut.
[[nodiscard]] bool is_socketed(const Job& job, const PipeStretch& stretch);

/// Lists what is left in the box, and why.
void leftovers(const Job& job);

} // namespace fluewright::parts
