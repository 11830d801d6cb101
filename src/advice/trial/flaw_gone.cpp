#include "flaw_gone.hpp"

#include "advice/remedies/run_edit.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <optional>
#include <utility>

namespace fluewright {
namespace {

constexpr double mild_k = 283.15;
constexpr double cold_day_k = 273.15;

/// Frost in place of mild weather: the flue is sound, the day is not.
std::optional<Installation> colder_day(const Installation& written, const Case& resolved) {
    Installation better = written;
    bool found = false;
    for (std::size_t i = 0; i < better.site.weather.size(); ++i) {
        if (resolved.weathers[i].outdoor_temperature_k > mild_k) {
            better.site.weather[i].outdoor_temperature_k = cold_day_k;
            found = true;
        }
    }
    return found ? std::optional{std::move(better)} : std::nullopt;
}

/// As wide as the outlet throughout, masonry as well.
std::optional<Installation> as_wide_as_outlet(const Installation& written, const Case& resolved) {
    if (written.run.empty()) {
        return std::nullopt;
    }
    Installation better = run_edit::spelled_out(written);
    for (Part& part : better.run) {
        run_edit::set_diameter(part, resolved.appliance.outlet_diameter_m);
    }
    return run_edit::shortened(std::move(better));
}

/// Every part that lies with its crimped end to the chimney turned round.
std::optional<Installation> crimps_down(const Installation& written) {
    Installation better = run_edit::spelled_out(written);
    bool found = false;
    for (Part& part : better.run) {
        if (run_edit::lies_upside_down(part)) {
            std::swap(part.heater_end, part.chimney_end);
            found = true;
        }
    }
    return found ? std::optional{run_edit::shortened(std::move(better))} : std::nullopt;
}

/// The top where the wind passes over it.
std::optional<Installation> top_in_clear_wind(const Installation& written) {
    if (written.site.top_position != ChimneyTopPosition::adverse) {
        return std::nullopt;
    }
    Installation better = written;
    better.site.top_position = ChimneyTopPosition::clear;
    return better;
}

} // namespace

Result<Installation, std::string> without_flaw(const Installation& written,
                                               diagnosis::CauseId cause) {
    const auto resolved = resolve(written);
    std::optional<Installation> better;
    if (resolved && cause == diagnosis::CauseId::mild_weather) {
        better = colder_day(written, *resolved);
    } else if (resolved && cause == diagnosis::CauseId::too_narrow) {
        better = as_wide_as_outlet(written, *resolved);
    } else if (cause == diagnosis::CauseId::crimps_up) {
        better = crimps_down(written);
    } else if (cause == diagnosis::CauseId::windy_top) {
        better = top_in_clear_wind(written);
    }
    if (!better) {
        return Failure{std::string{"the installation has no such flaw"}};
    }
    better->observed = seen_of_changed_run(better->observed);
    return std::move(*better);
}

} // namespace fluewright
