#include "fluewright/model/standards/en13384.hpp"

#include "en13384_run.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/march/dew_points.hpp"
#include "fluewright/model/states/states.hpp"
#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/european_chimney.hpp"
#include "method_terms.hpp"

#include <algorithm>

namespace fluewright::european {
namespace {

constexpr double kilowatt_w = 1e3;
constexpr double gram_kg = 1e-3;

/// One firing under all the conditions of the standard.
struct Calculation {
    const Case& c;
    const Firing& firing;
    const FlueGas& gas;
    GasChoice choice;
    RunTerms draught;
    RunTerms dry;
    RunTerms wet;
    DewPoints dew;
    double needed_at_appliance_pa; ///< PW
    double air_supply_pa;          ///< PB

    [[nodiscard]] double wind_pa() const { return c.top_is_adverse ? adverse_zone_inland_pa : 0.0; }

    /// PZ + PL, PZ, PFV and PZe.
    [[nodiscard]] double calm_pa() const { return draught.draught_pa - draught.resistance_pa; }

    [[nodiscard]] double available_pa() const { return calm_pa() - wind_pa(); }

    [[nodiscard]] double connector_pa() const {
        return draught.connector_resistance_pa - draught.connector_draught_pa;
    }

    [[nodiscard]] double required_pa() const {
        return needed_at_appliance_pa + connector_pa() + air_supply_pa;
    }

    /// PH - PR in frost with nothing added to the resistance.
    [[nodiscard]] double greatest_pa() const {
        double sum = dry.draught_pa;
        for (std::size_t i = 0; i < dry.parts.size(); ++i) {
            if (!dry.parts[i].connector) {
                sum -= dry.found[i].resistance_pa + dry.velocity_change_pa[i];
            }
        }
        return sum;
    }

    [[nodiscard]] double greatest_allowed_pa() const {
        double connector = -dry.connector_draught_pa;
        for (std::size_t i = 0; i < dry.parts.size(); ++i) {
            if (dry.parts[i].connector) {
                connector += dry.found[i].resistance_pa + dry.velocity_change_pa[i];
            }
        }
        return c.appliance.draft_greatest_pa + connector + air_supply_pa;
    }
};

MethodGroup site_terms(const Calculation& k) {
    const Conditions& at = k.draught.conditions;
    TermList list("outdoor air, for the least draft");
    list.add("z",
             "height above sea level",
             atmosphere::altitude_m(k.c.air_pressure_pa),
             "m",
             of_the_file);
    list.add("TL", "outdoor air", at.outdoor_k, "K", from_memory);
    list.add("RL", "gas constant of air", air_gas_constant_j_kgk, "J/(kg K)", from_memory);
    list.add("pL",
             "pressure of outdoor air: 97000 Pa exp(-g z/(RL TL))",
             at.air_pressure_pa,
             "Pa",
             from_memory);
    list.add("rhoL",
             "density of outdoor air: pL/(RL TL)",
             at.outdoor_density_kg_m3,
             "kg/m3",
             from_memory);
    return list.group;
}

MethodGroup gas_terms(const Calculation& k) {
    const ApplianceCase& a = k.c.appliance;
    const FlowFactors factors = flow_factors(a.analysis, a.moisture);
    const double heat_kw = k.firing.heat_in_fuel_w / kilowatt_w;
    const double dioxide_pct = 100.0 * k.firing.carbon_dioxide_dry;
    TermList list("flue gas");
    list.add("QF", "heat in the fuel, net", k.firing.heat_in_fuel_w, "W", of_the_file);
    list.add("sigma(CO2)", "carbon dioxide of the dry gas", dioxide_pct, "%", of_the_file);
    list.add("fm1",
             "flow factor, from the fuel's analysis",
             factors.fm1_g_pct_per_kw_s,
             "g %/(kW s)",
             computed);
    list.add("fm2",
             "flow factor, from the fuel's analysis",
             factors.fm2_g_per_kw_s,
             "g/(kW s)",
             computed);
    list.add("m(fm)",
             "gas flow (fm1/sigma(CO2) + fm2) QF, air dry",
             (factors.fm1_g_pct_per_kw_s / dioxide_pct + factors.fm2_g_per_kw_s) * heat_kw
                 * gram_kg,
             "kg/s",
             computed);
    list.add("m",
             "gas flow taken, air as humid as the room's",
             k.firing.gas_flow_kg_s,
             "kg/s",
             computed);
    list.add("TW", "gas at the outlet of the appliance", k.firing.gas_temperature_k, "K", computed);
    list.add("R",
             "gas constant of the gas, from its composition",
             k.gas.products().gas_constant_j_kgk,
             "J/(kg K)",
             computed);
    list.add("pD", "pressure of its water vapor", k.dew.vapour_pa, "Pa", computed);
    list.add("tp", "its water dew point", k.dew.water_k, "K", from_memory);
    return list.group;
}

MethodGroup stretch_terms(const RunTerms& run, std::size_t i) {
    const Stretch& g = run.given[i];
    const StretchTerms& t = run.found[i];
    const bool connector = run.parts[i].connector;
    TermList list(stretch_title(run.parts[i])
                  + (run.conditions.purpose == Purpose::draught ? ", pressure condition"
                                                                : ", temperature condition"));
    list.add("L", "length", g.length_m, "m", of_the_file);
    list.add(connector ? "HV" : "H", "effective height", g.rise_m, "m", of_the_file);
    list.add("Dh", "hydraulic diameter", g.diameter_m, "m", of_the_file);
    list.add("Dha", "hydraulic diameter outside", g.outside_diameter_m, "m", computed);
    list.add("A", "section", g.area_m2, "m2", computed);
    list.add("r", "roughness", g.roughness_m, "m", from_memory);
    list.add("zeta sum", "single resistances", g.zeta, "", from_memory);
    list.add("1/Lambda", "thermal resistance of the wall", g.resistance_m2k_w, "m2K/W", computed);
    list.add("SH", "wall not warm yet", g.warm_factor, "", from_memory);
    list.add("alpha_a", "outside coefficient", g.outside_w_m2k, "W/(m2 K)", looked_up);
    list.add("Tu", "surroundings", g.ambient_k, "K", from_memory);
    list.add(connector ? "TW" : "Te", "gas entering", g.entry_k, "K", computed);
    list.add(connector ? "TmV" : "Tm", "mean gas temperature", t.mean_k, "K", computed);
    list.add(
        "cp", "specific heat, from the composition", t.specific_heat_j_kgk, "J/(kg K)", computed);
    list.add("lambda_A", "conductivity of the gas", t.conductivity_w_mk, "W/(m K)", from_memory);
    list.add("eta_A", "viscosity of the gas", t.viscosity_pa_s, "Pa s", from_memory);
    list.add("Pr", "Prandtl number", t.prandtl, "", computed);
    list.add(connector ? "rhomV" : "rhom",
             "mean density: pL/(R Tm)",
             t.density_kg_m3,
             "kg/m3",
             looked_up);
    list.add(connector ? "wmV" : "wm", "mean velocity", t.velocity_m_s, "m/s", computed);
    list.add("Re", "Reynolds number; below 2300 taken as 2300", t.reynolds, "", from_memory);
    list.add("psi", "friction factor", t.psi, "", from_memory);
    list.add("psi_smooth", "the same of a smooth wall", t.psi_smooth, "", from_memory);
    list.add("Nu", "Nusselt number", t.nusselt, "", from_memory);
    list.add("alpha_i", "inside coefficient", t.inside_w_m2k, "W/(m2 K)", from_memory);
    list.add(
        connector ? "kV" : "k", "overall coefficient", t.overall_w_m2k, "W/(m2 K)", from_memory);
    list.add(
        connector ? "KV" : "K", "cooling number: U k L/(m cp)", t.cooling_number, "", looked_up);
    list.add(connector ? "Te" : "To", "gas leaving", t.outlet_k, "K", from_memory);
    list.add(connector ? "PHV" : "PH", "draft: H g (rhoL - rhom)", t.draught_pa, "Pa", from_memory);
    list.add(connector ? "PEV" : "PE",
             "friction and single resistances",
             t.resistance_pa,
             "Pa",
             from_memory);
    list.add(connector ? "PGV" : "PG",
             "change of velocity head",
             run.velocity_change_pa[i],
             "Pa",
             from_memory);
    return list.group;
}

MethodGroup pressure_terms(const Calculation& k) {
    TermList list("pressure condition");
    list.add("SE",
             "factor on flow resistance, natural draft",
             catalog::default_of(DefaultId::flow_resistance_factor).value,
             "",
             from_memory);
    list.add("PH", "draft of the chimney", k.draught.draught_pa, "Pa", from_memory);
    list.add("PR", "its resistance: SE PE + SEG PG", k.draught.resistance_pa, "Pa", from_memory);
    if (k.c.top_is_adverse) {
        list.add("PL",
                 "wind; chimney top in an adverse zone inland, EN 13384-1",
                 k.wind_pa(),
                 "Pa",
                 from_memory);
    } else {
        list.add("PL", "wind; the chimney top taken as clear of the roof", 0.0, "Pa", judged);
    }
    list.add("PZ", "draft at the inlet: PH - PR - PL", k.available_pa(), "Pa", looked_up);
    list.add("PHV", "draft of the connector", k.draught.connector_draught_pa, "Pa", from_memory);
    list.add("PRV",
             "its resistance: SE PEV + SEGV PGV",
             k.draught.connector_resistance_pa,
             "Pa",
             from_memory);
    list.add("PFV", "what the connector needs: PRV - PHV", k.connector_pa(), "Pa", from_memory);
    list.add("PW", "what the appliance needs", k.needed_at_appliance_pa, "Pa", of_the_file);
    list.add("PB", "air supply of the room", k.air_supply_pa, "Pa", from_memory);
    list.add("PZe", "draft required at the inlet: PW + PFV + PB", k.required_pa(), "Pa", looked_up);
    return list.group;
}

MethodGroup wall_terms(const RunTerms& run, double wanted_k, std::string_view title) {
    TermList list{std::string{title}};
    list.add("Tuo", "outdoor air", run.conditions.outdoor_k, "K", from_memory);
    list.add("Te", "gas entering the chimney", run.chimney_entry_k, "K", from_memory);
    list.add("Tob", "gas at the chimney top", run.outlet_k, "K", from_memory);
    list.add("kob",
             "overall coefficient at the chimney top, alpha_a 23",
             run.last_overall_w_m2k,
             "W/(m2 K)",
             from_memory);
    list.add("Tiob",
             "inner wall at the chimney top: Tob - (kob/alpha_i)(Tob - Tuo)",
             run.inner_wall_k,
             "K",
             from_memory);
    list.add("Tg", "limit of the wall temperature", wanted_k, "K", from_memory);
    return list.group;
}

std::vector<MethodCriterion> criteria(const Calculation& k, double dry_limit_k) {
    constexpr double frost_k = constants::celsius_zero_k;
    return {{.symbols = "PZ >= PZe",
             .meaning = "draft at the inlet against that required",
             .have = k.available_pa(),
             .want = k.required_pa(),
             .unit = "Pa",
             .mark = looked_up},
            {.symbols = "PZ >= PB",
             .meaning = "draft at the inlet against the air supply",
             .have = k.available_pa(),
             .want = k.air_supply_pa,
             .unit = "Pa",
             .mark = looked_up},
            {.symbols = "Tiob >= Tg",
             .meaning = "inner wall at the chimney top, chimney for dry operation",
             .have = k.dry.inner_wall_k,
             .want = dry_limit_k,
             .unit = "K",
             .mark = looked_up},
            {.symbols = "Tiob >= Tg wet",
             .meaning = "inner wall at the chimney top, chimney that may get wet",
             .have = k.wet.inner_wall_k,
             .want = frost_k,
             .unit = "K",
             .mark = from_memory,
             .counts = false},
            {.symbols = "PZmax <= PZemax",
             .meaning = "greatest draft, in frost, against what the fire can be held at",
             .have = k.greatest_pa(),
             .want = k.greatest_allowed_pa(),
             .at_most = true,
             .unit = "Pa",
             .mark = from_memory,
             .counts = false}};
}

StateResult by_physics(const Calculation& k, const RunTerms& run) {
    const Case c = in_weather(k.c,
                              {.outdoor_temperature_k = run.conditions.outdoor_k,
                               .air_pressure_pa = run.conditions.air_pressure_pa,
                               .room_pressure_pa = -k.air_supply_pa});
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    return solve_state(model,
                       k.choice == GasChoice::high_fire ? StateKind::high_fire
                                                        : StateKind::low_fire,
                       Detail::stations);
}

/// Inner wall at the end of the last pipe.
double last_wall_k(const Case& c, const StateResult& state) {
    for (std::size_t i = c.sections.size(); i-- > 0;) {
        if (c.sections[i].length_m > 0.0) {
            return state.stations[i + 1].inner_wall_k;
        }
    }
    return 0.0;
}

std::vector<MethodComparison> comparisons(const Calculation& k) {
    const StateResult mild = by_physics(k, k.draught);
    const StateResult frost = by_physics(k, k.dry);
    return {
        {k.c.top_is_adverse
             ? "draft at the outlet against the room, in calm air (PZ + PL - PFV - PB)"
             : "draft at the outlet against the room (PZ - PFV - PB)",
         k.calm_pa() - k.connector_pa() - k.air_supply_pa,
         mild.draft_pa,
         "Pa"},
        {"gas at the chimney top, least draft (Tob)",
         k.draught.outlet_k,
         mild.flow.top_temperature_k,
         "K"},
        {"gas at the chimney top, frost (Tob)", k.dry.outlet_k, frost.flow.top_temperature_k, "K"},
        {"inner wall at the chimney top, frost (Tiob)",
         k.dry.inner_wall_k,
         last_wall_k(k.c, frost),
         "K"}};
}

MethodFiring fire(const Case& c, GasChoice choice) {
    const bool high = choice == GasChoice::high_fire;
    const Firing& firing = high ? c.appliance.high : c.appliance.low;
    const FlueGas& gas = high ? c.gas_high() : c.gas_low();
    const GasFit& fit = gas.products();
    const Calculation k{
        .c = c,
        .firing = firing,
        .gas = gas,
        .choice = choice,
        .draught = run_terms(c, firing, fit, Purpose::draught),
        .dry = run_terms(c, firing, fit, Purpose::wall_dry),
        .wet = run_terms(c, firing, fit, Purpose::wall_wet),
        .dew = dew_points_of(c, gas, 0.0, conditions_of(c, Purpose::wall_dry).air_pressure_pa),
        .needed_at_appliance_pa = firing.draft_needed_pa,
        .air_supply_pa =
            std::max(-c.room_pressure_burning_pa.value_or(
                         catalog::default_of(DefaultId::room_pressure_burning_pa).value),
                     0.0)};
    const double dry_limit_k = std::max(k.dew.water_k, k.dew.acid_k);
    MethodFiring made;
    made.name = high ? "high fire" : "low fire";
    made.groups = {site_terms(k), gas_terms(k)};
    for (std::size_t i = 0; i < k.draught.parts.size(); ++i) {
        made.groups.push_back(stretch_terms(k.draught, i));
    }
    made.groups.push_back(pressure_terms(k));
    for (std::size_t i = 0; i < k.dry.parts.size(); ++i) {
        made.groups.push_back(stretch_terms(k.dry, i));
    }
    made.groups.push_back(wall_terms(k.dry, dry_limit_k, "temperature condition, dry operation"));
    made.groups.push_back(
        wall_terms(k.wet, constants::celsius_zero_k, "temperature condition, wet operation"));
    made.criteria = criteria(k, dry_limit_k);
    made.comparisons = comparisons(k);
    return made;
}

/// Whether a heater's own push keeps the run above the pressure of its air.
bool is_under_pressure(const Case& c, const MethodResult& result) {
    return c.appliance.high.draft_needed_pa < 0.0
           && result.not_met_words().find("PZ >= PB") != std::string::npos;
}

} // namespace

MethodResult calculate(const Case& c) {
    MethodResult result;
    result.id = "en13384";
    result.title = "EN 13384-1, chimney with one appliance, negative pressure";
    result.known_from =
        "pages of a national copy of EN 13384-1:2002+A2:2008; most coefficients from "
        "memory";
    result.firings = {fire(c, GasChoice::high_fire), fire(c, GasChoice::low_fire)};
    result.notes = notes_on(c);
    if (is_under_pressure(c, result)) {
        result.beyond =
            "The heater pushes its gas and the run has no draft to take it: a vent under positive "
            "pressure has conditions and tightness of its own, which this method does not hold; "
            "ask for the physics, and for the maker's table.";
        result.notes.insert(result.notes.begin(), result.beyond);
    }
    return result;
}

} // namespace fluewright::european
