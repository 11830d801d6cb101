#pragma once

#include "chart.hpp"
#include "fluewright/advice/study/sweep.hpp"

namespace fluewright::chart {

/// Draft, and how far the door may be opened, over one quantity.
[[nodiscard]] std::string sweep_lines(const Sweep& sweep);

/// Least margin over two quantities.
[[nodiscard]] std::string sweep_map(const Sweep& sweep);

/// The scale a quantity of the sweep is drawn in.
[[nodiscard]] UnitScale scale_of(const Sweep& sweep, std::size_t which);

/// An axis over a quantity of the sweep: its label with the unit.
[[nodiscard]] Axis axis_of(const Sweep& sweep, std::size_t which);

} // namespace fluewright::chart
