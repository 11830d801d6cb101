#include "warmup_words.hpp"

#include "fluewright/advice/upkeep/warmup_hints.hpp"
#include "io/report/check_parts.hpp"
#include "io/text/words.hpp"

#include <cmath>
#include <fmt/core.h>

namespace fluewright::report {
namespace {

struct Figures {
    const Style& style;
    HeaterKind kind;

    [[nodiscard]] std::string pressure(double pa) const {
        return format_quantity(pa, Kind::pressure, style.units);
    }

    [[nodiscard]] std::string flow(double kg_s) const {
        return format_quantity(kg_s, Kind::gas_flow, style.units);
    }

    [[nodiscard]] std::string energy(double j) const {
        return format_quantity(j, Kind::energy, style.units);
    }

    /// What holds the fire back at its worst moment.
    [[nodiscard]] std::string reason(const Starving& s) const {
        const std::string wanted =
            fmt::format("that flow would take {} through the heater and {} along the run",
                        pressure(s.heater_pa),
                        pressure(s.run_pa));
        const std::string room =
            s.room_pa < 0.0
                ? fmt::format(", and the room is {} below outdoors", pressure(-s.room_pa))
                : std::string{};
        switch (s.why()) {
        case Starved::by_the_flue:
            return fmt::format(
                "The flue has a downdraft of {}: the gas in it is not warm enough yet to rise{}.",
                pressure(-s.lift_pa),
                room);
        case Starved::by_the_room:
            return fmt::format("The warm flue gives {}, but the room is {} below outdoors; {}. Let "
                               "air into the room.",
                               pressure(s.lift_pa),
                               pressure(-s.room_pa),
                               wanted);
        case Starved::by_the_run:
            return fmt::format(
                "The warm flue gives {}{}, but {}: the run is too narrow or has too many turns.",
                pressure(s.lift_pa),
                room,
                wanted);
        case Starved::by_the_heater:
            break;
        }
        return fmt::format(
            "The warm flue gives {}{}, but {}: the heater requires more at that moment.",
            pressure(s.lift_pa),
            room,
            wanted);
    }

    [[nodiscard]] std::string words(const WarmupHint& hint, const Case& c, double taken_j) const {
        const std::string where =
            hint.section ? "part " + section_words(c, *hint.section) : std::string{"the run"};
        switch (hint.what) {
        case Quicker::preheat:
            return fmt::format(
                "Idle, the flue has a downdraft of {}: warm it and open a window before lighting.",
                pressure(-hint.idle_draft_pa.value_or(0.0)));
        case Quicker::room_air:
            return fmt::format("Idle, the flue has a downdraft of {}: let air into the room{}.",
                               pressure(-hint.idle_draft_pa.value_or(0.0)),
                               c.house.fans_may_run() ? ", and stop fans" : "");
        case Quicker::liner_to_size:
            return fmt::format("From {} on the flue has {} times the area of the collar: a listed "
                               "liner of the collar's size has less wall to warm.",
                               where,
                               format_number(hint.area_over_outlet.value_or(0.0), 2));
        case Quicker::lighter_wall:
            return fmt::format("From {2} on, the walls stored {1} of the {0} that the run took up. "
                               "A light or insulated liner, listed for the fuel, stores less.",
                               energy(taken_j),
                               energy(hint.kept_j.value_or(0.0)),
                               where);
        case Quicker::insulate:
            return fmt::format(
                "Of {} the run took while the fire burned, {} went to cold air from "
                "{} on: insulate or enclose the {} there, clear of anything that can "
                "burn.",
                energy(taken_j),
                energy(hint.lost_j.value_or(0.0)),
                where,
                way_out(kind));
        case Quicker::double_wall:
            return fmt::format("Of {} the run took while the fire burned, the bare pipe gave {} to "
                               "the room from {} on: listed double-wall {} keeps it in the flue.",
                               energy(taken_j),
                               energy(hint.lost_j.value_or(0.0)),
                               where,
                               gas_burners.has(kind) ? "vent" : "connector");
        case Quicker::more_fire:
            break;
        }
        return "No single part of the run causes it: light a brisk fire with the air control open.";
    }
};

} // namespace

std::string minutes(double seconds) {
    return format_number(std::round(seconds / minute_s * 10.0) / 10.0, 4);
}

std::string starved_words(const Case& resolved, const Warmup& course, const Style& style) {
    const Starving& worst = *course.worst_starved;
    const Figures figures{style, kind_of(resolved.appliance)};
    const std::string_view follows =
        is_fed_by_hand(resolved.appliance) ? "it burns lower than planned"
        : figures.kind == HeaterKind::gas_hood
            ? "the burner keeps its rate, and the rest comes out of the draft hood into the room"
            : "the burner keeps its rate, and its gas comes out where the vent lets it";
    return fmt::format("For {} min the draft is less than the fire requires; {}. Worst after {} "
                       "min: {} where {} is required. {}",
                       minutes(course.starved_s),
                       follows,
                       minutes(worst.time_s),
                       figures.flow(worst.flow_kg_s),
                       figures.flow(worst.asked_kg_s),
                       figures.reason(worst));
}

std::vector<std::string>
quicker_words(const Case& resolved, const WarmupInWeather& in, const Style& style) {
    const Figures figures{style, kind_of(resolved.appliance)};
    const double taken_j = taken_while_lit_j(in.course);
    std::vector<std::string> lines;
    for (const WarmupHint& hint : warmup_hints(resolved, in.weather, in.course)) {
        lines.push_back(figures.words(hint, resolved, taken_j));
    }
    return lines;
}

} // namespace fluewright::report
