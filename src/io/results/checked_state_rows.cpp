#include "finding_rows.hpp"
#include "io/text/words.hpp"
#include "state_rows.hpp"

#include <cmath>

namespace fluewright::results {

namespace {

using Maybe = std::optional<double>;

struct RoomRow {
    const StateRow& of;
};

struct ColdRow {
    const StateRow& of;
};

Maybe of_house(const RoomRow& r, double value) {
    return r.of.installation.house.known && std::isfinite(value) ? Maybe{value} : Maybe{};
}

Maybe of_turning(const ColdRow& c, double value) {
    return c.of.state.cold.turning_k > 0.0 && std::isfinite(value) ? Maybe{value} : Maybe{};
}

Maybe end_of(const CheckedState& c, double DraftEnds::*end) {
    return c.ends != nullptr && c.figures.is_solved() && std::isfinite(c.ends->*end)
               ? Maybe{c.ends->*end}
               : Maybe{};
}

constexpr std::string_view leak_meaning = "what the joint does at that pressure";

} // namespace

std::vector<StationRow> stations_of(const StateRow& s) {
    std::vector<StationRow> rows;
    for (std::size_t i = 0; s.is_solved() && i < s.state.stations.size(); ++i) {
        rows.push_back({s, i});
    }
    return rows;
}

std::vector<JointRow> joints_of(const StateRow& s) {
    std::vector<JointRow> rows;
    if (s.is_solved()) {
        for (const report::Joint& joint : report::joints_of(s.installation, s.state)) {
            rows.push_back({s, joint});
        }
    }
    return rows;
}

std::vector<CheckedState> checked_states(const Assessment& a) {
    std::vector<CheckedState> rows;
    for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
        const bool has_ends = i < a.draft_ends.size() && a.draft_ends[i];
        rows.push_back({.figures = {a.installation, a.solution.states[i], a.verdicts[i]},
                        .ends = has_ends ? &*a.draft_ends[i] : nullptr});
    }
    return rows;
}

template <>
const Record<RoomRow>& record_of<RoomRow>() {
    static const Record<RoomRow> record{
        "room_air",
        "the air of the room in a state",
        {{"pressure",
          Kind::pressure,
          "against outdoors at the height of the outlet",
          [](const RoomRow& r) { return r.of.state.room.pressure_pa; }},
         {"air_taken",
          Kind::gas_flow,
          "room air taken by the fire and by joints and openings of the run",
          [](const RoomRow& r) { return r.of.state.room.taken_kg_s; }},
         {"pressure_without_fire",
          Kind::pressure,
          "with no fire; null without a house",
          [](const RoomRow& r) { return of_house(r, r.of.state.room.idle_pressure_pa); }},
         {"pressure_without_fans",
          Kind::pressure,
          "with this fire and every fan off; null without a house",
          [](const RoomRow& r) { return of_house(r, r.of.state.room.pressure_without_fans_pa); }},
         {"neutral_height",
          Kind::length,
          "neutral level above the outlet; null without a house",
          [](const RoomRow& r) { return of_house(r, r.of.state.room.neutral_height_m); }}}};
    return record;
}

template <>
const Record<ColdRow>& record_of<ColdRow>() {
    static const Record<ColdRow> record{
        "cold_start",
        "the flue with no fire, and what turns it where it is reversed",
        {{"idle_draft",
          Kind::pressure,
          "at the outlet, the air in the flue as warm as its surroundings",
          [](const ColdRow& c) { return c.of.state.cold.idle_draft_pa; }},
         {"draws_by_itself",
          "whether that draft is upwards",
          [](const ColdRow& c) { return c.of.state.cold.idle_draft_pa > 0.0; }},
         {"idle_mean_temperature",
          Kind::temperature,
          "mean over height of that air",
          [](const ColdRow& c) { return c.of.state.cold.idle_mean_k; }},
         {"turning_temperature",
          Kind::temperature,
          "mean temperature at which the air begins to rise",
          [](const ColdRow& c) { return of_turning(c, c.of.state.cold.turning_k); }},
         {"preheat",
          Kind::power,
          "heat sent up the flue to turn it",
          [](const ColdRow& c) { return c.of.installation.kindling.preheat_w; }},
         {"preheat_heat",
          Kind::energy,
          "heat that takes",
          [](const ColdRow& c) { return of_turning(c, c.of.state.cold.heat_j); }},
         {"preheat_duration",
          Kind::duration,
          "time that takes; negative where no heat does it",
          [](const ColdRow& c) { return of_turning(c, c.of.state.cold.duration_s); }}}};
    return record;
}

namespace {

std::optional<double> share_at(const DoorResult& door, std::size_t moment) {
    return door.moments.empty() ? std::optional<double>{}
                                : std::optional{door.moments[moment].share_by_velocity};
}

} // namespace

template <>
const Record<DoorResult>& record_of<DoorResult>() {
    static const Record<DoorResult> record{
        "open_door",
        "what the opened door does",
        {Column<DoorResult>{"top_edge",
                            Kind::pressure,
                            "room less firebox at the upper edge of the opening; smoke stays in "
                            "while it is positive",
                            [](const DoorResult& d) { return d.top_edge_pa; }}
             .with_sign(),
         {{"face_velocity", "air in"},
          Kind::speed,
          "of the air over the whole opening",
          [](const DoorResult& d) { return d.face_velocity_m_s; }},
         {{"box_temperature", "firebox"},
          Kind::temperature,
          "in the firebox",
          [](const DoorResult& d) { return d.box_temperature_k; }},
         {{"opened_at_once", "at once"},
          Kind::fraction,
          "how far the door may be opened at once, by mean face velocity; over 1: wholly",
          [](const DoorResult& d) { return share_at(d, 0); }},
         {"opened_after_20_s",
          Kind::fraction,
          "the same after 20 s",
          [](const DoorResult& d) { return share_at(d, 1); }},
         {{"opened_in_mixed_box", "if mixed"},
          Kind::fraction,
          "how far a minute after, if smoke and air mix throughout the firebox: the cautious end",
          [](const DoorResult& d) { return d.opening_share_mixed; }},
         {"wide_open",
          Kind::duration,
          "how long it may stand wide open; null where longer than a minute, or not looked at",
          [](const DoorResult& d) {
              return d.moments.empty() ? std::optional<double>{}
                                       : if_finite(wide_open_s(d.moments));
          }}}};
    return record;
}

template <>
const Record<MarchResult>& record_of<MarchResult>() {
    static const Record<MarchResult> record{
        "budget",
        "sums over the run: chimney top = outlet + buoyancy - friction - fittings - acceleration",
        {{"buoyancy", Kind::pressure, "lift of the warm gas", &MarchResult::buoyancy_pa},
         {"friction", Kind::pressure, "lost along the pipe", &MarchResult::friction_pa},
         {"fittings", Kind::pressure, "lost in elbows and other parts", &MarchResult::fittings_pa},
         {"acceleration",
          Kind::pressure,
          "taken up by the speed of the gas",
          &MarchResult::acceleration_pa},
         {"outlet_pressure",
          Kind::pressure,
          "static, at the outlet, against outdoors",
          &MarchResult::outlet_pressure_pa},
         {"top_pressure",
          Kind::pressure,
          "static, at the chimney top, against outdoors",
          &MarchResult::top_pressure_pa},
         {"heat_loss", Kind::power, "through the walls", &MarchResult::heat_loss_w},
         {"leak_in",
          Kind::gas_flow,
          "air through joints into the flue",
          &MarchResult::leak_in_kg_s},
         {"leak_out",
          Kind::gas_flow,
          "gas through joints out of the flue",
          &MarchResult::leak_out_kg_s}}};
    return record;
}

template <>
const Record<JointRow>& record_of<JointRow>() {
    static const Record<JointRow> record{
        "joint_pressure",
        "a joint in a state",
        {{{"place", "joint under"},
          "the part above it",
          [](const JointRow& j) {
              return report::section_words(j.of.installation, j.joint.section);
          }},
         {"height",
          Kind::length,
          "above the outlet",
          [](const JointRow& j) { return j.joint.height_m; }},
         Column<JointRow>{{"pressure_in_zone", "against the\nair round it"},
                          Kind::pressure,
                          "in the flue against the air round the joint",
                          [](const JointRow& j) { return j.joint.pressure_pa; }}
             .with_sign(),
         Column<JointRow>{"leak",
                          Kind::gas_flow,
                          "into the flue positive",
                          [](const JointRow& j) { return j.joint.leak_kg_s; }}
             .with_sign(),
         {{"leak_words", "a leak here"}, leak_meaning, [](const JointRow& j) {
              return report::leak_words(
                  j.of.installation, j.joint.section, j.joint.pressure_pa, j.of.state.kind);
          }}}};
    return record;
}

template <>
const Record<StationRow>& record_of<StationRow>() {
    static const Record<StationRow> record{
        "station",
        "the outlet, or the upper end of a section of the run",
        {{{"place", "up to and with"},
          "the section that ends here",
          [](const StationRow& s) {
              return s.at == 0 ? std::string{"outlet"}
                               : report::section_words(s.of.installation, s.station().section);
          }},
         {"section",
          "index into the run, from 0",
          [](const StationRow& s) { return s.station().section; }},
         {"distance",
          Kind::length,
          "along the run from the outlet",
          [](const StationRow& s) { return s.station().distance_m; }},
         {"height",
          Kind::length,
          "above the outlet",
          [](const StationRow& s) { return s.station().height_m; }},
         {{"gas_temperature", "gas"},
          Kind::temperature,
          "of the gas",
          [](const StationRow& s) { return s.station().gas_temperature_k; }},
         {{"inner_wall", "inside"},
          Kind::temperature,
          "face of the wall towards the gas; null where the section has no length",
          [](const StationRow& s) { return s.wall(s.station().inner_wall_k); }},
         {{"outer_wall", "outside"},
          Kind::temperature,
          "face of the wall towards its surroundings",
          [](const StationRow& s) { return s.wall(s.station().outer_wall_k); }},
         {{"velocity", "speed"},
          Kind::speed,
          "of the gas",
          [](const StationRow& s) { return s.station().velocity_m_s; }},
         {"reynolds", "Reynolds number", [](const StationRow& s) { return s.station().reynolds; }},
         {"flow",
          Kind::gas_flow,
          "gas that passes",
          [](const StationRow& s) { return s.station().flow_kg_s; }},
         {"pressure",
          Kind::pressure,
          "static, against outdoors at this height",
          [](const StationRow& s) { return s.station().pressure_pa; }},
         Column<StationRow>{{"pressure_in_zone", "pressure"},
                            Kind::pressure,
                            "static, against the air round the section",
                            [](const StationRow& s) { return s.station().pressure_in_zone_pa; }}
             .with_sign(),
         {"leak",
          Kind::gas_flow,
          "through the joint at the lower end of the section, into the flue positive",
          [](const StationRow& s) { return s.station().leak_kg_s; }},
         {{"leak_words", "a leak here"},
          "what a joint here does at that pressure; null at the chimney top",
          [](const StationRow& s) -> std::optional<std::string_view> {
              if (s.at + 1 == s.of.state.stations.size()) {
                  return {};
              }
              return report::leak_words(s.of.installation,
                                        s.station().section,
                                        s.station().pressure_in_zone_pa,
                                        s.of.state.kind);
          }}}};
    return record;
}

template <>
const Record<CheckedState>& record_of<CheckedState>() {
    static const Record<CheckedState> record = [] {
        std::vector<Column<CheckedState>> columns;
        for (const Column<StateRow>& column : record_of<StateRow>().columns()) {
            columns.push_back(
                {column, [&column](const CheckedState& c) { return column.get(c.figures); }});
        }
        columns.push_back(
            {{"draft_least_heat", "least heat"},
             Kind::pressure,
             "if the gas gives the pipe the least heat one can defend: floored "
             "forced flow alone; null but with a fire behind a shut door",
             [](const CheckedState& c) { return end_of(c, &DraftEnds::least_heat_pa); }});
        columns.push_back(
            {{"draft_most_heat", "most heat"},
             Kind::pressure,
             "if it gives it the most: turbulent flow opposed by its cooled layer; "
             "null likewise",
             [](const CheckedState& c) { return end_of(c, &DraftEnds::most_heat_pa); }});
        columns.push_back({"room", "the air of the room", [](const CheckedState& c) {
                               return RoomRow{c.figures};
                           }});
        columns.push_back({"cold_start",
                           "of the states without a fire; null else",
                           [](const CheckedState& c) -> std::optional<ColdRow> {
                               if (fire_of(c.figures.state.kind) != Fire::out) {
                                   return {};
                               }
                               return ColdRow{c.figures};
                           }});
        columns.push_back({"door",
                           "of the states with the door open; null else",
                           [](const CheckedState& c) -> const DoorResult* {
                               return c.figures.is_door() && c.figures.is_solved()
                                          ? &c.figures.state.door
                                          : nullptr;
                           }});
        columns.push_back({"budget",
                           "sums over the run; null where nothing was solved",
                           [](const CheckedState& c) -> const MarchResult* {
                               return c.figures.is_solved() ? &c.figures.state.flow : nullptr;
                           }});
        columns.push_back({"joints", "every joint from the outlet up", [](const CheckedState& c) {
                               return joints_of(c.figures);
                           }});
        columns.push_back({"stations",
                           "the outlet and the upper end of each section",
                           [](const CheckedState& c) { return stations_of(c.figures); }});
        return Record<CheckedState>{"checked_state",
                                    "one condition in one weather, with what happens along the run",
                                    std::move(columns)};
    }();
    return record;
}

} // namespace fluewright::results
