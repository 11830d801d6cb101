#include "fluewright/model/standards/handbook.hpp"

#include "fluewright/model/states/states.hpp"
#include "fluewright/physics/european_chimney.hpp"
#include "left_out.hpp"
#include "method_terms.hpp"
#include "stretches.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::handbook {
namespace {

constexpr double tee_k = 1.25;
constexpr double screen_k = 0.5;
constexpr double draft_hood_inlet_k = 1.5;

double k_of(const Case& c, std::size_t index) {
    const Section& s = c.sections[index];
    if (index == 0) {
        return c.appliance.type == ApplianceType::draft_hood ? draft_hood_inlet_k : 0.0;
    }
    if (s.loss_given) {
        return s.loss;
    }
    switch (s.kind) {
    case PartKind::elbow:
        return elbow_k(s.turn_rad);
    case PartKind::tee:
        return s.turn_rad > 0.0 ? tee_k : 0.0;
    case PartKind::screen:
        return screen_k;
    case PartKind::reducer: {
        const double ratio = std::min(s.area_m2 / c.sections[index - 1].area_m2, 1.0);
        return 1.0 - ratio * ratio;
    }
    default:
        return s.loss;
    }
}

struct StretchFigures {
    double transmittance_w_m2k;
    double entry_k;
    double mean_k;
    double exit_k;
    double density_kg_m3;
    double velocity_m_s;
    double k;
    double draft_pa;
    double loss_pa;
};

struct Calculation {
    const Case& c;
    const Firing& firing;
    const GasFit& gas;
    double barometer_pa;
    double outdoor_k;
    double heat_input_w;       ///< gross
    double flow_per_heat_kg_j; ///< M
    double flow_kg_s;          ///< w
    std::vector<MethodStretch> parts;
    std::vector<StretchFigures> found;
    double draft_pa{};
    double loss_pa{};

    void follow();

    /// What the house takes off: its room below outdoors while this fire draws its air.
    [[nodiscard]] double building_pa() const {
        const HouseAir house = surroundings_of(c, 0, Fire::burning).house;
        return house.known() ? -house.room_pressure_pa(c.house.outdoor_air ? 0.0 : flow_kg_s)
                             : -c.room_pressure_burning_pa.value_or(0.0);
    }

    [[nodiscard]] double available_pa() const { return draft_pa - loss_pa - building_pa(); }

    /// Heat input whose flow uses up the draft beyond what appliance and building ask, at the same
    /// temperatures: loss grows with the square of the flow.
    [[nodiscard]] double capacity_w() const {
        const double left_pa = draft_pa - building_pa() - firing.draft_needed_pa;
        return left_pa > 0.0 && loss_pa > 0.0 ? heat_input_w * std::sqrt(left_pa / loss_pa) : 0.0;
    }
};

/// The gas cools exponentially along each stretch; each then works at its own mean temperature.
void Calculation::follow() {
    double temperature_k = firing.gas_temperature_k;
    const Surroundings around = surroundings_of(c, 0, Fire::burning);
    for (const MethodStretch& part : parts) {
        const Section& s = part.at(c);
        StretchFigures f{};
        f.transmittance_w_m2k = transmittance_of(c.walls[s.wall]).design_w_m2k;
        f.entry_k = temperature_k;
        const double cp = gas.specific_heat_j_kgk(gas_fit_range.u_of(temperature_k));
        const european::Cooling cooling{
            .entry_k = temperature_k,
            .ambient_k = around.temperature_k[static_cast<std::size_t>(s.zone)],
            .number = f.transmittance_w_m2k * s.perimeter_m * part.length_m / (flow_kg_s * cp)};
        f.mean_k = european::mean_temperature_k(cooling);
        f.exit_k = european::outlet_temperature_k(cooling);
        temperature_k = f.exit_k;
        f.density_kg_m3 = density_kg_m3(barometer_pa, f.mean_k);
        f.velocity_m_s = velocity_m_s(flow_kg_s, f.density_kg_m3, s.area_m2);
        f.k = part.zeta + friction_k(part.length_m, s.diameter_m);
        f.draft_pa = theoretical_draft_pa(barometer_pa, part.rise_m, outdoor_k, f.mean_k);
        f.loss_pa = flow_loss_pa(f.k, f.density_kg_m3, f.velocity_m_s);
        draft_pa += f.draft_pa;
        loss_pa += f.loss_pa;
        found.push_back(f);
    }
}

MethodGroup heat_terms(const Calculation& k) {
    const FuelLine& fuel = fuel_line_of(k.c.appliance);
    TermList list("heat input and flow, fuel as " + std::string{fuel.fuel});
    list.add("B", "barometer", k.barometer_pa, "Pa", of_the_file);
    list.add("To", "outdoor air, warmest weather of the file", k.outdoor_k, "K", of_the_file);
    list.add("I", "heat input, gross", k.heat_input_w, "W", of_the_file);
    list.add("%CO2",
             "carbon dioxide of the dry gas",
             100.0 * k.firing.carbon_dioxide_dry,
             "%",
             of_the_file);
    list.add("a", "line of the fuel: M = a (b + c/%CO2)", fuel.line.a, "kg/MJ", from_memory);
    list.add("b", "", fuel.line.b, "", from_memory);
    list.add("c", "", fuel.line.c, "%", from_memory);
    constexpr double megajoule_j = 1e6;
    list.add("M", "gas per heat input", k.flow_per_heat_kg_j * megajoule_j, "kg/MJ", from_memory);
    list.add("w", "gas flow: I M", k.flow_kg_s, "kg/s", looked_up);
    list.add("Te", "gas at the outlet of the appliance", k.firing.gas_temperature_k, "K", computed);
    if (const auto mean_k = design_mean_temperature_k(k.c.appliance)) {
        list.add("Tm list",
                 "mean gas temperature the handbook lists for sizing",
                 *mean_k,
                 "K",
                 from_memory);
    }
    return list.group;
}

MethodGroup stretch_terms(const Calculation& k, std::size_t i) {
    const MethodStretch& part = k.parts[i];
    const StretchFigures& f = k.found[i];
    const Section& s = part.at(k.c);
    TermList list(stretch_title(part) + ", as "
                  + std::string{transmittance_of(k.c.walls[s.wall]).construction});
    list.add("L", "length", part.length_m, "m", of_the_file);
    list.add("H", "height", part.rise_m, "m", of_the_file);
    list.add("di", "inside diameter, hydraulic", s.diameter_m, "m", of_the_file);
    list.add("U",
             "overall coefficient on the inside area",
             f.transmittance_w_m2k,
             "W/(m2 K)",
             from_memory);
    list.add("Tm", "mean gas temperature", f.mean_k, "K", computed);
    list.add("Te", "gas leaving", f.exit_k, "K", computed);
    list.add(
        "rho", "density: 1.325 B/Tm in inHg, degR, lb/ft3", f.density_kg_m3, "kg/m3", from_memory);
    list.add("V", "velocity: w/(rho A)", f.velocity_m_s, "m/s", computed);
    list.add("k", "resistance: fittings and 0.4 L(ft)/di(in)", f.k, "", from_memory);
    list.add("Dt", "theoretical draft: 0.03413 B H (1/To - 1/Tm)", f.draft_pa, "Pa", looked_up);
    list.add("dp", "flow loss: k rho V^2/2", f.loss_pa, "Pa", from_memory);
    return list.group;
}

MethodGroup balance_terms(const Calculation& k) {
    TermList list("draft and capacity");
    list.add("Dt", "theoretical draft", k.draft_pa, "Pa", looked_up);
    list.add("dp", "flow losses", k.loss_pa, "Pa", from_memory);
    list.add("Db", "building: what the room holds back", k.building_pa(), "Pa", looked_up);
    list.add("Da", "available draft: Dt - dp - Db", k.available_pa(), "Pa", from_memory);
    list.add("Da needed", "draft the appliance needs", k.firing.draft_needed_pa, "Pa", of_the_file);
    list.add("I max", "input capacity at the required draft", k.capacity_w(), "W", from_memory);
    return list.group;
}

std::vector<MethodComparison> comparisons(const Calculation& k, bool high) {
    const FlueModel model(k.c, surroundings_of(k.c, 0, Fire::burning));
    const StateResult state =
        solve_state(model, high ? StateKind::high_fire : StateKind::low_fire, Detail::totals);
    std::vector<MethodComparison> rows{
        {"draft at the outlet against the room (Da)", k.available_pa(), state.draft_pa, "Pa"},
        {"gas flow (w)", k.flow_kg_s, state.gas_flow_kg_s, "kg/s"},
        {"gas at the chimney top",
         k.found.empty() ? 0.0 : k.found.back().exit_k,
         state.flow.top_temperature_k,
         "K"}};
    if (high) {
        const StateResult free = solve_state(model, StateKind::free_burn, Detail::totals);
        const double gross = k.heat_input_w / k.firing.burn_rate_kg_s;
        rows.push_back(
            {"input capacity, gross (I max)", k.capacity_w(), free.capacity_kg_s * gross, "W"});
    }
    return rows;
}

MethodFiring fire(const Case& c, bool high) {
    const ApplianceCase& a = c.appliance;
    const Firing& firing = high ? a.high : a.low;
    Calculation k{.c = c,
                  .firing = firing,
                  .gas = (high ? c.gas_high() : c.gas_low()).products(),
                  .barometer_pa = c.air_pressure_pa,
                  .outdoor_k = c.weathers.front().outdoor_temperature_k,
                  .heat_input_w = firing.burn_rate_kg_s
                                  * combustion::gross_heating_value_j_kg(a.analysis, a.moisture),
                  .flow_per_heat_kg_j =
                      flow_per_heat_kg_j(fuel_line_of(a).line, firing.carbon_dioxide_dry),
                  .flow_kg_s = 0.0,
                  .parts = stretches_of(c, k_of),
                  .found = {}};
    k.flow_kg_s = mass_flow_kg_s(k.heat_input_w, k.flow_per_heat_kg_j);
    k.follow();
    MethodFiring made;
    made.name = high ? "high fire" : "low fire";
    made.groups.push_back(heat_terms(k));
    for (std::size_t i = 0; i < k.parts.size(); ++i) {
        made.groups.push_back(stretch_terms(k, i));
    }
    made.groups.push_back(balance_terms(k));
    made.criteria = {{.symbols = "Da >= Da needed",
                      .meaning = "available draft against what the appliance needs",
                      .have = k.available_pa(),
                      .want = firing.draft_needed_pa,
                      .unit = "Pa",
                      .mark = looked_up},
                     {.symbols = "I max >= I",
                      .meaning = "input capacity against the heat input",
                      .have = k.capacity_w(),
                      .want = k.heat_input_w,
                      .unit = "W",
                      .mark = from_memory}};
    made.comparisons = comparisons(k, high);
    return made;
}

std::size_t warmest_weather(const Case& c) {
    const auto warmest = std::max_element(
        c.weathers.begin(), c.weathers.end(), [](const WeatherCase& a, const WeatherCase& b) {
            return a.outdoor_temperature_k < b.outdoor_temperature_k;
        });
    return static_cast<std::size_t>(warmest - c.weathers.begin());
}

} // namespace

MethodResult calculate(const Case& resolved) {
    Case c = resolved;
    c.weathers = {resolved.weathers[warmest_weather(resolved)]};
    MethodResult result;
    result.id = "handbook";
    result.title = "ASHRAE Handbook, chimney equation";
    result.known_from =
        "second hand from engineers' calculation sheets that quote chapter 35 of the "
        "2016 edition; most coefficients from memory";
    result.firings = {fire(c, true), fire(c, false)};
    result.notes = {
        "The chapter itself was not seen: marks tell which terms rest on quoted figures and which "
        "on memory.",
        "The handbook lists no gas temperature for stoves: the mean comes from the outlet's "
        "temperature, U of each wall and exponential cooling; cp from the gas's composition.",
        "U of black stovepipe is right for brisk fires and high for flows below 10 g/s.",
        "k of elbows, tees, screens and reducers are the handbook's; dampers, caps, steps up and "
        "losses the file gives keep theirs.",
        "The draft at the outlet is a static pressure, so the gas arrives with its velocity and "
        "the "
        "inlet counts 0; behind a draft hood it starts from rest and the inlet counts 1.5."};
    if (tells_of_wind(resolved)) {
        result.notes.emplace_back("Wind is left out: the equation has no term for it. The full "
                                  "physics has the wind of the file.");
    }
    for (std::string& note : left_out_of_methods(resolved)) {
        result.notes.push_back(std::move(note));
    }
    return result;
}

} // namespace fluewright::handbook
