#pragma once

#include "fluewright/model/run/case.hpp"

#include <string>
#include <vector>

/// The run as the standard methods see it: a connector and a chimney, each of a few stretches with
/// one section, one wall and one zone, and a sum of loss coefficients on that section's velocity.
namespace fluewright {

struct MethodStretch {
    bool connector{};
    std::size_t section{}; ///< the first one with a length: it stands for size, wall and zone
    int first_part{};      ///< in the file's run, from 0; -1 for the outlet
    int last_part{};
    double length_m{};
    double rise_m{};
    double zeta{};

    [[nodiscard]] const Section& at(const Case& c) const { return c.sections[section]; }
};

/// The loss coefficient a method gives the section of this index, on that section's own velocity.
using LossRule = double (*)(const Case& resolved, std::size_t section);

/// Index of the section where the chimney of the run begins; where it has none 0, since the methods
/// know no run without a chimney.
[[nodiscard]] std::size_t chimney_section(const Case& resolved);

[[nodiscard]] std::vector<MethodStretch> stretches_of(const Case& resolved, LossRule rule);

/// "connector, parts 1 to 3"
[[nodiscard]] std::string stretch_title(const MethodStretch& stretch);

/// Straight pipe behind a section up to the next turn [m].
[[nodiscard]] double straight_behind_m(const Case& resolved, std::size_t section);

/// The same installation in one weather of the method's choosing.
struct MethodWeather {
    double outdoor_temperature_k;
    double air_pressure_pa;
    double room_pressure_pa;
};

[[nodiscard]] Case in_weather(const Case& resolved, const MethodWeather& weather);

} // namespace fluewright
