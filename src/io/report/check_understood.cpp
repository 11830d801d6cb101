#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/physics/openings.hpp"
#include "io/text/words.hpp"

#include <cmath>
#include <fmt/core.h>

namespace fluewright::report {
namespace {

constexpr std::size_t understood_inset = 2;

class Understood {
public:
    Understood(const Case& resolved, const Style& style) : case_(resolved), style_(style) {}

    [[nodiscard]] std::string text() const {
        const ApplianceCase& a = case_.appliance;
        TextTable facts({{}, {.wraps = true}});
        facts.add({{"heater"},
                   {fmt::format("{}, outlet {} inside, {} above the floor",
                                name(a.type),
                                case_.sections.empty() ? shown(a.outlet_diameter_m, Kind::length)
                                                       : inside(case_.sections.front()),
                                shown(a.outlet_height_m, Kind::length))}});
        facts.add(
            {{"fuel"},
             {fmt::format("{}{}, {} net as fired",
                          a.fuel,
                          a.moisture > 0.0 ? ", moisture " + shown(a.moisture, Kind::moisture) : "",
                          shown(a.net_heating_value_j_kg, Kind::heating_value))}});
        facts.add({{a.has_low_fire ? "high fire" : "fire"}, {firing(a.high)}});
        if (a.has_low_fire) {
            facts.add({{"low fire"}, {firing(a.low)}});
        }
        if (a.has_door) {
            const bool open = has_open_front(a);
            const double flue = open ? flue_over_opening(case_) : 0.0;
            facts.add({{open ? "opening" : "door"},
                       {fmt::format("{} wide, {} high, top edge {} below the outlet{}",
                                    shown(a.door.width_m, Kind::length),
                                    shown(a.door.height_m, Kind::length),
                                    shown(a.door.top_below_outlet_m, Kind::length),
                                    flue > 0.0 ? "; the flue has 1:" + format_number(1.0 / flue, 2)
                                                     + " of it"
                                               : "")}});
        }
        facts.add({{"room"},
                   {fmt::format("{}, {}; air pressure {}",
                                shown(case_.room_temperature_k, Kind::temperature),
                                room_pressure(),
                                air_pressure())}});
        if (case_.house.known) {
            facts.add({{"house"}, {house()}});
        }
        facts.add({{"run"}, {run()}});
        return facts.text(style_, understood_inset) + '\n' + parts().text(style_, understood_inset);
    }

private:
    [[nodiscard]] std::string shown(double si, Kind kind) const {
        return quantity(si, kind, style_);
    }

    [[nodiscard]] std::string room_pressure() const {
        return case_.house.known ? std::string{"pressure from the balance of the house"}
                                 : signed_quantity(case_.room_pressure_burning_pa.value_or(0.0),
                                                   Kind::pressure,
                                                   style_)
                                       + " against outdoors while burning";
    }

    [[nodiscard]] std::string house() const {
        const HouseCase& h = case_.house;
        double open_m2 = 0.0;
        for (const HouseOpeningCase& opening : h.openings) {
            open_m2 += opening.area_m2;
        }
        constexpr double test_pa = 50.0;
        std::string text =
            fmt::format("{} high, leaks {} at 50 Pa",
                        shown(h.height_m, Kind::length),
                        shown(openings::leakage_m3_s(h.leak_m3_s, h.leak_exponent, test_pa),
                              Kind::volume_flow));
        text += h.exhaust_m3_s > 0.0 ? ", fans take out " + shown(h.exhaust_m3_s, Kind::volume_flow)
                                     : "";
        text +=
            h.supply_m3_s > 0.0 ? ", fans bring in " + shown(h.supply_m3_s, Kind::volume_flow) : "";
        text += open_m2 > 0.0 ? ", open to outdoors " + shown(open_m2, Kind::area) : "";
        return text + (h.outdoor_air ? ", the fire has an air duct of its own" : "");
    }

    [[nodiscard]] std::string air_pressure() const {
        return format_in_unit(
            case_.air_pressure_pa, Kind::pressure, style_.units == UnitSystem::us ? "inHg" : "hPa");
    }

    [[nodiscard]] std::string firing(const Firing& fire) const {
        return fmt::format(
            "{} of fuel, {} of useful heat, {} times the air needed, {} of gas at {}",
            shown(fire.burn_rate_kg_s, Kind::mass_rate),
            shown(fire.heat_output_w, Kind::power),
            format_number(fire.air_ratio),
            shown(fire.gas_flow_kg_s, Kind::gas_flow),
            shown(fire.gas_temperature_k, Kind::temperature));
    }

    [[nodiscard]] std::string run() const {
        double length_m = 0.0;
        double turns_rad = 0.0;
        for (const Section& section : case_.sections) {
            length_m += section.length_m;
            turns_rad += section.turn_rad;
        }
        return fmt::format("{} from outlet to chimney top, {} along the pipe, {}",
                           shown(case_.total_rise_m(), Kind::length),
                           shown(length_m, Kind::length),
                           turns_rad > 0.0
                               ? "turns of " + shown(turns_rad, Kind::angle) + " together"
                               : "no turns");
    }

    /// The circle's diameter, or the sides of a rectangle.
    [[nodiscard]] std::string inside(const Section& section) const {
        if (!section.rectangular) {
            return shown(section.diameter_m, Kind::length);
        }
        const double half_sum = section.perimeter_m / 4.0;
        const double half_difference =
            std::sqrt(std::fmax(0.0, half_sum * half_sum - section.area_m2));
        return fmt::format("{} x {}",
                           shown(half_sum + half_difference, Kind::length),
                           shown(half_sum - half_difference, Kind::length));
    }

    [[nodiscard]] TextTable parts() const {
        TextTable table({{.heading = "part"},
                         {.heading = "length", .align = Align::right},
                         {.heading = "rise", .align = Align::right},
                         {.heading = "inside", .align = Align::right},
                         {.heading = "loss", .align = Align::decimal},
                         {.heading = "in"},
                         {.heading = "wall", .wraps = true}});
        for (std::size_t i = 0; i < case_.sections.size(); ++i) {
            const Section& section = case_.sections[i];
            const bool long_enough = section.length_m > 0.0;
            table.add({{section_words(case_, i)},
                       {long_enough ? shown(section.length_m, Kind::length) : ""},
                       {long_enough ? shown(section.rise_m, Kind::length) : ""},
                       {inside(section)},
                       {section.loss > 0.0 ? format_number(section.loss) : ""},
                       {std::string{name(section.zone)}},
                       {section.wall < case_.walls.size() ? case_.walls[section.wall].id : ""}});
        }
        return table;
    }

    const Case& case_;
    const Style& style_;
};

} // namespace

std::string understood_text(const Assessment& a, const Style& style) {
    return heading("Understood", style) + Understood{a.installation, style}.text();
}

} // namespace fluewright::report
