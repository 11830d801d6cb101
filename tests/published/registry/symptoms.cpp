#include "advice/diagnosis/seen/evidence.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <map>
#include <stdexcept>

namespace published {
namespace {

using namespace fluewright;

constexpr double zero_celsius_k = 273.15;
constexpr double hour_of_symptom_s = 3600.0;
constexpr double right_angle = 1.5707963267948966;

Part elbow() {
    Part part;
    part.part = PartKind::elbow;
    part.angle_rad = right_angle;
    part.build = Build::gored;
    return part;
}

Part zoned(Part part, Zone zone) {
    part.zone = zone;
    return part;
}

/// A stove on a run of 4 m that has little to spare, but lacks nothing: elbow, damper, tee,
/// screened cap. A run with much to spare bears most causes unnoticed.
Installation sound_run() {
    Installation written;
    written.site.weather.push_back(rebuilt::calm(zero_celsius_k + 3.0));
    written.site.room.temperature_k = 20.0 + zero_celsius_k;
    written.site.room.pressure_pa = -1.5;
    Appliance& a = written.appliance;
    a.type = ApplianceType::stove;
    a.fuel.name = "beech";
    a.fuel.moisture = 0.17;
    a.outlet.diameter_m = 0.15;
    a.outlet.height_m = 0.8;
    a.burn_rate_kg_s.high = 3.0 / hour_of_symptom_s;
    a.burn_rate_kg_s.low = 2.4 / hour_of_symptom_s;
    a.efficiency = {.low = 0.66, .high = 0.74};
    a.draft_needed_pa.high = 12.0;
    a.draft_needed_pa.low = 6.0;
    a.door.width_m = 0.33;
    a.door.height_m = 0.24;
    Part first = zoned(rebuilt::up(1.2, "double-wall connector"), Zone::room);
    first.diameter_m = 0.15;
    Part damper;
    damper.part = PartKind::damper;
    damper.blade_angle_rad = 0.0;
    Part tee;
    tee.part = PartKind::tee;
    tee.flow = TeeFlow::side;
    tee.cleanout = true;
    Part cap;
    cap.part = PartKind::cap;
    cap.build = Build::plain;
    cap.mesh_m = 0.012;
    written.run = {first,
                   damper,
                   elbow(),
                   rebuilt::across(0.5, "double-wall connector"),
                   tee,
                   zoned(rebuilt::up(2.6, "insulated 25 mm"), Zone::outdoors),
                   cap};
    return written;
}

Part& chimney_of(Installation& written) {
    return written.run[written.run.size() - 2];
}

using Change = void (*)(Installation&, double);

/// Causes that a file can tell, by a word of the table.
const std::map<std::string, Change>& changes() {
    static const std::map<std::string, Change> rows{
        {"none", [](Installation&, double) {}},
        {"narrow", [](Installation& w, double size) { chimney_of(w).diameter_m = 0.15 * size; }},
        {"short", [](Installation& w, double metres) { chimney_of(w).up_m = metres; }},
        {"tall_in_frost",
         [](Installation& w, double metres) {
             chimney_of(w).up_m = metres;
             w.site.weather.front().outdoor_temperature_k = zero_celsius_k - 15.0;
         }},
        {"crooked",
         [](Installation& w, double elbows) {
             for (int i = 0; i < static_cast<int>(elbows); ++i) {
                 w.run.insert(w.run.begin() + 3,
                              {rebuilt::across(0.8, "single-wall steel"), elbow()});
             }
         }},
        {"bare_outside",
         [](Installation& w, double metres) {
             chimney_of(w).wall = "single-wall steel";
             chimney_of(w).up_m = metres;
             w.site.weather.front().outdoor_temperature_k = zero_celsius_k - 10.0;
         }},
        {"bare_outside_mild",
         [](Installation& w, double celsius) {
             chimney_of(w).wall = "single-wall steel";
             w.site.weather.front().outdoor_temperature_k = zero_celsius_k + celsius;
         }},
        {"wide",
         [](Installation& w, double size) {
             chimney_of(w).diameter_m = 0.15 * size;
             chimney_of(w).wall = "unlined masonry";
         }},
        {"wide_mild",
         [](Installation& w, double celsius) {
             chimney_of(w).diameter_m = 0.3;
             chimney_of(w).wall = "unlined masonry";
             w.site.weather.front().outdoor_temperature_k = zero_celsius_k + celsius;
         }},
        {"mild",
         [](Installation& w, double celsius) {
             w.site.weather.front().outdoor_temperature_k = zero_celsius_k + celsius;
         }},
        {"bare_in_room",
         [](Installation& w, double metres) {
             w.run.front().up_m = metres;
             w.run.front().wall = "single-wall steel";
             w.site.weather.front().outdoor_temperature_k = zero_celsius_k - 5.0;
         }},
        {"hood_in_tight_house", [](Installation& w, double litres_s) {
             w.site.room.pressure_pa.reset();
             w.site.house.volume_m3 = 250.0;
             w.site.house.air_changes_50_pa_1_s = 1.5 / hour_of_symptom_s;
             w.site.house.fans.push_back({.name = "hood", .flow_m3_s = litres_s / 1000.0});
         }}};
    return rows;
}

Observation seen_as(const std::string& symptom) {
    Observation seen;
    if (symptom.starts_with("smoke-")) {
        seen.smoke = from_word<SmokePlace>(symptom.substr(6));
    }
    seen.sluggish = symptom == "sluggish" ? Flag{true} : Flag{};
    seen.roaring = symptom == "roaring" ? Flag{true} : Flag{};
    seen.drips = symptom == "drips" ? Flag{true} : Flag{};
    seen.smell_when_idle = symptom == "smell" ? Flag{true} : Flag{};
    return seen;
}

/// Share of people who would report the symptom where the cause is there with this size.
double share_with_symptom(const Inputs& in) {
    Installation written = sound_run();
    const auto change = changes().find(in.text("cause"));
    const double size = in.number("size");
    std::vector<diagnosis::CauseAt> hidden;
    if (change != changes().end()) {
        change->second(written, size);
    }
    const Case c = rebuilt::resolved(written);
    if (change == changes().end()) {
        const diagnosis::Cause* cause = diagnosis::find_cause(in.text("cause"));
        const auto places =
            cause == nullptr ? std::vector<diagnosis::Place>{} : diagnosis::places_of(*cause, c);
        if (places.empty()) {
            throw std::runtime_error("no such cause here: " + in.text("cause"));
        }
        hidden.push_back({cause, places.back(), size});
    }
    const double gust_pa = in.number_or("gust_pa", 0.0);
    if (gust_pa > 0.0) {
        hidden.push_back({diagnosis::find_cause("downdraft"), {}, gust_pa});
    }
    auto altered = diagnosis::alter(written, c, hidden);
    if (!altered) {
        throw std::runtime_error("the cause cannot be built in");
    }
    diagnosis::Solver solver(std::move(*altered), {1.0, 1.0});
    Observation seen = seen_as(in.text("symptom"));
    const bool windy = in.text("cause") == "downdraft" || gust_pa > 0.0;
    seen.wind = windy ? Choice<WindState>{WindState::windy} : std::nullopt;
    const diagnosis::Evidence evidence = diagnosis::evidence_of(seen, 0, written, c).front();
    std::map<diagnosis::Situation, diagnosis::Predictions> known;
    for (const diagnosis::Situation& situation : diagnosis::needs(evidence, c)) {
        known.emplace(situation, solver.predict(situation));
    }
    const double x =
        diagnosis::predicted(evidence,
                             solver.altered(),
                             [&](const diagnosis::Situation& s) -> const diagnosis::Prediction& {
                                 return known.at(s).front();
                             });
    return diagnosis::likelihood(evidence, x, solver.altered());
}

} // namespace

void add_symptom_checks(Registry& registry) {
    registry["share_with_symptom"] = {
        "share that would report the symptom", "-", share_with_symptom};
}

} // namespace published
