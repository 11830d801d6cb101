#include "fluewright/io/json/report_json.hpp"

#include "assumptions_json.hpp"
#include "checks_json.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "io/json/json_text.hpp"
#include "io/text/words.hpp"
#include "json_number.hpp"
#include "tolerances_json.hpp"
#include "trade_json.hpp"

#include <array>

namespace fluewright {
namespace {

using Json = json::Value;
using report::json_number;

constexpr int check_schema = 1;

/// A value under a name of the program, its unit known by the kind only.
std::string key_of(std::string_view name, Kind kind) {
    return std::string{name} + std::string{json_suffix(kind)};
}

Json firing_json(const Firing& fire) {
    return {{"burn_rate_kg_s", json_number(fire.burn_rate_kg_s)},
            {"air_ratio", json_number(fire.air_ratio)},
            {"gas_flow_kg_s", json_number(fire.gas_flow_kg_s)},
            {"gas_temperature_k", json_number(fire.gas_temperature_k)},
            {"heat_in_fuel_w", json_number(fire.heat_in_fuel_w)},
            {"heat_output_w", json_number(fire.heat_output_w)},
            {"heat_to_flue_w", json_number(fire.heat_to_flue_w)},
            {"draft_needed_pa", json_number(fire.draft_needed_pa)},
            {"carbon_dioxide_dry", json_number(fire.carbon_dioxide_dry)},
            {"oxygen_dry", json_number(fire.oxygen_dry)}};
}

Json appliance_json(const ApplianceCase& a) {
    Json json{{"type", name(a.type)},
              {"fuel", a.fuel},
              {"moisture", json_number(a.moisture)},
              {"net_heating_value_j_kg", json_number(a.net_heating_value_j_kg)},
              {"outlet",
               {{"diameter_m", json_number(a.outlet_diameter_m)},
                {"area_m2", json_number(a.outlet_area_m2)},
                {"height_m", json_number(a.outlet_height_m)}}},
              {"high_fire", firing_json(a.high)},
              {"low_fire", firing_json(a.low)},
              {"draft_greatest_pa", json_number(a.draft_greatest_pa)}};
    json["door"] = nullptr;
    if (a.has_door) {
        json["door"] = {{"width_m", json_number(a.door.width_m)},
                        {"height_m", json_number(a.door.height_m)},
                        {"top_below_outlet_m", json_number(a.door.top_below_outlet_m)}};
    }
    return json;
}

Json run_json(const Case& c) {
    Json run = Json::array();
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const Section& s = c.sections[i];
        const bool added = i + 1 == c.sections.size() && report::has_added_mouth(c);
        const bool in_file = s.part >= 0 && !added;
        run.push_back({{"label", report::section_words(c, i)},
                       {"part", in_file ? Json(s.part + 1) : Json(nullptr)},
                       {"kind", name(s.kind)},
                       {"length_m", json_number(s.length_m)},
                       {"rise_m", json_number(s.rise_m)},
                       {"hydraulic_diameter_m", json_number(s.diameter_m)},
                       {"area_m2", json_number(s.area_m2)},
                       {"rectangular", s.rectangular},
                       {"loss", json_number(s.loss)},
                       {"turn_rad", json_number(s.turn_rad)},
                       {"roughness_m", json_number(s.roughness_m)},
                       {"wall", s.wall < c.walls.size() ? Json(c.walls[s.wall].id) : Json(nullptr)},
                       {"zone", name(s.zone)},
                       {"cleanout", s.cleanout}});
    }
    return run;
}

Json input_json(const Case& c, const JsonReportOptions& options) {
    Json weathers = Json::array();
    for (const WeatherCase& w : c.weathers) {
        weathers.push_back({{"name", w.name},
                            {"outdoor_temperature_k", json_number(w.outdoor_temperature_k)},
                            {"wind_m_s", json_number(w.wind_m_s)},
                            {"relative_humidity", json_number(w.relative_humidity)}});
    }
    // With a house the room's pressure is an answer; it stands in each state.
    const auto of_room = [&](double pa) { return c.house.known ? Json(nullptr) : json_number(pa); };
    return {{"file", options.file},
            {"title", c.title},
            {"units", c.units == UnitSystem::us ? "us" : "metric"},
            {"air_pressure_pa", json_number(c.air_pressure_pa)},
            {"room",
             {{"temperature_k", json_number(c.room_temperature_k)},
              {"pressure_burning_pa", of_room(c.room_pressure_burning_pa)},
              {"pressure_standing_pa", of_room(c.room_pressure_standing_pa)},
              {"relative_humidity", json_number(c.room_humidity)}}},
            {"weathers", std::move(weathers)},
            {"appliance", appliance_json(c.appliance)},
            {"run", run_json(c)},
            {"total_rise_m", json_number(c.total_rise_m())}};
}

Json stations_json(const Case& c, const StateResult& state) {
    Json stations = Json::array();
    for (std::size_t i = 0; i < state.stations.size(); ++i) {
        const Station& s = state.stations[i];
        const bool wall = report::has_wall_temperature(c, state, i);
        const bool mouth = i + 1 == state.stations.size();
        stations.push_back(
            {{"label", i == 0 ? std::string{"outlet"} : report::section_words(c, s.section)},
             {"section", s.section},
             {"distance_m", json_number(s.distance_m)},
             {"height_m", json_number(s.height_m)},
             {"gas_temperature_k", json_number(s.gas_temperature_k)},
             {"inner_wall_k", wall ? json_number(s.inner_wall_k) : Json(nullptr)},
             {"outer_wall_k", wall ? json_number(s.outer_wall_k) : Json(nullptr)},
             {"velocity_m_s", json_number(s.velocity_m_s)},
             {"reynolds", json_number(s.reynolds)},
             {"flow_kg_s", json_number(s.flow_kg_s)},
             {"pressure_pa", json_number(s.pressure_pa)},
             {"pressure_in_zone_pa", json_number(s.pressure_in_zone_pa)},
             {"leak_kg_s", json_number(s.leak_kg_s)},
             {"leak",
              mouth ? Json(nullptr)
                    : Json(report::leak_words(s.pressure_in_zone_pa, state.kind))}});
    }
    return stations;
}

Json joints_json(const Case& c, const StateResult& state) {
    Json joints = Json::array();
    for (const report::Joint& joint : report::joints_of(c, state)) {
        joints.push_back({{"under", report::section_words(c, joint.section)},
                          {"height_m", json_number(joint.height_m)},
                          {"pressure_in_zone_pa", json_number(joint.pressure_pa)},
                          {"leak_kg_s", json_number(joint.leak_kg_s)},
                          {"leak", report::leak_words(joint.pressure_pa, state.kind)}});
    }
    return joints;
}

Json budget_json(const MarchResult& flow) {
    return {{"buoyancy_pa", json_number(flow.buoyancy_pa)},
            {"friction_pa", json_number(flow.friction_pa)},
            {"fittings_pa", json_number(flow.fittings_pa)},
            {"acceleration_pa", json_number(flow.acceleration_pa)},
            {"outlet_pressure_pa", json_number(flow.outlet_pressure_pa)},
            {"mouth_pressure_pa", json_number(flow.mouth_pressure_pa)},
            {"heat_loss_w", json_number(flow.heat_loss_w)},
            {"leak_in_kg_s", json_number(flow.leak_in_kg_s)},
            {"leak_out_kg_s", json_number(flow.leak_out_kg_s)}};
}

Json room_json(const Case& c, const StateResult& state) {
    const auto of_house = [&](double value) {
        return c.house.known ? json_number(value) : Json(nullptr);
    };
    return {{"pressure_pa", json_number(state.room.pressure_pa)},
            {"air_taken_kg_s", json_number(state.room.taken_kg_s)},
            {"pressure_without_fire_pa", of_house(state.room.idle_pressure_pa)},
            {"pressure_without_fans_pa", of_house(state.room.pressure_without_fans_pa)},
            {"neutral_height_m", of_house(state.room.neutral_height_m)}};
}

Json cold_start_json(const Case& c, const ColdStart& cold) {
    const bool turns = cold.turning_k > 0.0;
    const auto of_turning = [&](double value) {
        return turns ? json_number(value) : Json(nullptr);
    };
    return {{"standing_draft_pa", json_number(cold.standing_draft_pa)},
            {"draws_by_itself", cold.standing_draft_pa > 0.0},
            {"idle_mean_temperature_k", json_number(cold.idle_mean_k)},
            {"turning_temperature_k", of_turning(cold.turning_k)},
            {"preheat_w", json_number(c.kindling.preheat_w)},
            {"preheat_heat_j", of_turning(cold.heat_j)},
            {"preheat_duration_s", of_turning(cold.duration_s)}};
}

Json state_json(const Case& c, const StateResult& state, const StateVerdict& verdict) {
    const bool computed = report::has_working_point(state);
    const bool fire = state.kind != StateKind::standing;
    const bool door_open = report::is_door_open(state.kind);
    const auto of_flow = [&](double value) {
        return computed ? json_number(value) : Json(nullptr);
    };
    const auto of_fire = [&](double value) { return fire ? of_flow(value) : Json(nullptr); };
    const auto of_need = [&](double value) { return door_open ? Json(nullptr) : of_fire(value); };
    Json json{{"state", name(state.kind)},
              {"weather", c.weathers[state.weather].name},
              {"status", report::name(state.status)},
              {"counts", verdict.counts},
              {"passes", verdict.passes},
              {key_of("spare", verdict.kind), json_number(verdict.spare)},
              {"burn_rate_kg_s", of_fire(state.burn_rate_kg_s)},
              {"gas_flow_kg_s", of_fire(state.gas_flow_kg_s)},
              {"gas_temperature_k", of_fire(state.gas_temperature_k)},
              {"mouth_temperature_k", of_fire(state.flow.mouth_temperature_k)},
              {"mouth_velocity_m_s", of_fire(state.flow.mouth_velocity_m_s)},
              {"draft_pa", of_flow(state.draft_pa)},
              {"draft_needed_pa", of_need(state.draft_needed_pa)},
              {"margin_pa", of_need(state.margin_pa())}};
    if (state.kind == StateKind::free_burn) {
        json["capacity_kg_s"] = json_number(state.capacity_kg_s);
    }
    json["room"] = room_json(c, state);
    if (fire_of(state.kind) == Fire::out) {
        json["cold_start"] = cold_start_json(c, state.cold);
    }
    if (door_open) {
        json["door"] = {{"top_edge_pa", of_flow(state.door.top_edge_pa)},
                        {"face_velocity_m_s", of_flow(state.door.face_velocity_m_s)},
                        {"opening_share", json_number(state.door.opening_share)},
                        {"box_temperature_k", of_flow(state.door.box_temperature_k)}};
    }
    json["budget"] = computed ? budget_json(state.flow) : Json(nullptr);
    json["joints"] = computed ? joints_json(c, state) : Json::array();
    json["stations"] = computed ? stations_json(c, state) : Json::array();
    return json;
}

Json size_json(const SizeAdvice& size) {
    constexpr std::array<std::string_view, 4> outcomes{
        "present is right", "another", "none", "nothing to size"};
    Json trials = Json::array();
    for (const SizeTrial& trial : size.trials) {
        const bool computed = report::was_computed(trial);
        trials.push_back(
            {{"size", trial.id},
             {"diameter_m", json_number(trial.diameter_m)},
             {"area_over_outlet", json_number(trial.area_over_outlet)},
             {"passes", trial.passes},
             {"ruled_out_by", trial.ruled_out_by},
             {"least_spare_pa", computed ? json_number(trial.least_spare_pa) : Json(nullptr)},
             {"least_opening_share",
              computed ? json_number(trial.least_opening_share) : Json(nullptr)}});
    }
    const bool suggests = !size.suggested.empty();
    return {
        {"outcome", outcomes[static_cast<std::size_t>(size.outcome)]},
        {"present", size.present},
        {"suggested", suggests ? Json(size.suggested) : Json(nullptr)},
        {"suggested_diameter_m", suggests ? json_number(size.suggested_diameter_m) : Json(nullptr)},
        {"reason", size.reason},
        {"trials", std::move(trials)}};
}

Json verdict_json(const Assessment& a) {
    Json json{{"works", a.works}, {"sentence", a.sentence}, {"limiting_state", nullptr}};
    if (a.limiting < a.solution.states.size()) {
        const StateResult& state = a.solution.states[a.limiting];
        json["limiting_state"] = {
            {"index", a.limiting},
            {"state", name(state.kind)},
            {"weather", a.installation.weathers[state.weather].name},
            {"draft_pa", json_number(state.draft_pa)},
            {"draft_with_european_heat_pa", json_number(a.limiting_draft_other_pa)}};
    }
    return json;
}

} // namespace

std::string report_json(const Assessment& a, const JsonReportOptions& options) {
    Json states = Json::array();
    for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
        states.push_back(state_json(a.installation, a.solution.states[i], a.verdicts[i]));
    }
    Json whole{{"schema", check_schema},
               {"program", {{"name", "fluewright"}, {"version", options.version}}},
               {"input", input_json(a.installation, options)},
               {"verdict", verdict_json(a)},
               {"states", std::move(states)}};
    whole["size"] = options.size_searched ? size_json(a.size) : Json(nullptr);
    whole["findings"] = report::findings_json(a.findings);
    whole["checks"] = a.body != nullptr ? report::checks_json(a) : Json(nullptr);
    if (options.trade != nullptr) {
        report::add_trade_json(*options.trade, whole);
    }
    whole["tolerances"] = options.tolerances != nullptr
                              ? report::tolerances_json(a, *options.tolerances)
                              : Json(nullptr);
    whole["assumptions"] = report::assumptions_json(a.installation.assumptions);
    whole["cautions"] = cautions();
    // File names may hold any bytes; what is not UTF-8 is replaced, not refused.
    return json::indented_text(whole) + '\n';
}

} // namespace fluewright
