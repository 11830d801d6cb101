#include "assumptions_json.hpp"
#include "fluewright/io/report/report_warmup.hpp"
#include "io/json/json_text.hpp"
#include "io/text/csv_text.hpp"
#include "io/text/words.hpp"
#include "json_number.hpp"

#include <array>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace {

using Json = json::Value;
using report::json_number;

constexpr int warmup_schema = 1;

/// What does not close is shown to a billionth; below that it is round-off of this machine.
constexpr double below_notice = 1e9;

Json maybe(const std::optional<double>& value) {
    return value ? json_number(*value) : Json(nullptr);
}

Json spell_json(const Spell& spell) {
    return {{"from_s", maybe(spell.from_s)}, {"until_s", maybe(spell.until_s)}};
}

/// The numbers of a moment, in the order of both formats.
struct Column {
    std::string_view key;
    double WarmupMoment::*member;
};

constexpr std::array<Column, 9> columns{{
    {"burn_rate_kg_s", &WarmupMoment::burn_rate_kg_s},
    {"gas_flow_kg_s", &WarmupMoment::gas_flow_kg_s},
    {"outlet_temperature_k", &WarmupMoment::outlet_k},
    {"mouth_temperature_k", &WarmupMoment::mouth_k},
    {"draft_pa", &WarmupMoment::draft_pa},
    {"dew_point_k", &WarmupMoment::dew_point_k},
    {"coldest_wall_k", &WarmupMoment::coldest_wall_k},
    {"mouth_wall_k", &WarmupMoment::mouth_wall_k},
    {"hottest_surface_k", &WarmupMoment::hottest_surface_k},
}};

Json moments_json(const Warmup& w) {
    Json list = Json::array();
    for (const WarmupMoment& m : w.moments) {
        Json json{{"time_s", json_number(m.time_s)}, {"phase", w.phases[m.phase].name}};
        for (const Column& column : columns) {
            json[std::string{column.key}] = json_number(m.*(column.member));
        }
        json["starved"] = m.starved;
        list.push_back(std::move(json));
    }
    return list;
}

Json course_json(const Case& c, const WarmupInWeather& in) {
    const Warmup& w = in.course;
    const WeatherCase& weather = c.weathers[in.weather];
    const auto place = [&](const std::optional<double>& when, std::size_t part) {
        Json json{{"from_s", maybe(when)}, {"last_part", nullptr}};
        if (part < w.parts.size()) {
            json["last_part"] = report::section_words(c, w.parts[part].section);
        }
        return json;
    };
    Json phases = Json::array();
    for (const BurnPhase& phase : w.phases) {
        phases.push_back({{"name", phase.name},
                          {"duration_s", json_number(phase.duration_s)},
                          {"start_kg_s", json_number(phase.start_kg_s)},
                          {"end_kg_s", json_number(phase.end_kg_s)},
                          {"out", phase.out}});
    }
    Json parts = Json::array();
    for (const WarmupPart& part : w.parts) {
        parts.push_back({{"label", report::section_words(c, part.section)},
                         {"section", part.section},
                         {"dry", spell_json(part.dry)},
                         {"clean", spell_json(part.clean)},
                         {"hottest_inner_k", json_number(part.hottest_inner_k)},
                         {"hottest_outer_k", json_number(part.hottest_outer_k)}});
    }
    return {{"weather", weather.name},
            {"outdoor_temperature_k", json_number(weather.outdoor_temperature_k)},
            {"draft_needed_pa", json_number(w.draft_needed_pa)},
            {"draft_met", spell_json(w.draft_met)},
            {"creosote_threshold_k", json_number(w.creosote_threshold_k)},
            {"dry", place(w.dry_s, w.last_dry)},
            {"clean", place(w.clean_s, w.last_clean)},
            {"starved_s", json_number(w.starved_s)},
            {"fire_out_s", maybe(w.fire_out_s)},
            {"after_fire",
             {{"draft_needed_low_pa", json_number(w.draft_needed_low_pa)},
              {"above_low_need_s", maybe(w.holds_low_s)},
              {"above_zero_s", maybe(w.holds_zero_s)}}},
            {"end_s", json_number(w.end_s)},
            {"heat",
             {{"given_j", json_number(w.balance.given_j)},
              {"stored_j", json_number(w.balance.stored_j)},
              {"lost_j", json_number(w.balance.lost_j)},
              {"error",
               json_number(std::round(w.balance.error() * below_notice) / below_notice + 0.0)}}},
            {"phases", std::move(phases)},
            {"parts", std::move(parts)},
            {"moments", moments_json(w)}};
}

} // namespace

std::string warmup_json(const Case& resolved,
                        std::span<const WarmupInWeather> courses,
                        const WarmupReportOptions& options) {
    Json weathers = Json::array();
    for (const WarmupInWeather& in : courses) {
        weathers.push_back(course_json(resolved, in));
    }
    const Json whole{{"schema", warmup_schema},
                     {"program", {{"name", "fluewright"}, {"version", options.version}}},
                     {"file", options.file},
                     {"title", resolved.title},
                     {"draws_in_time", draws_in_time(courses)},
                     {"weathers", std::move(weathers)},
                     {"assumptions",
                      courses.empty()
                          ? Json::array()
                          : report::assumptions_json(courses.front().course.assumptions)}};
    return json::indented_text(whole) + '\n';
}

std::string warmup_csv(const Case& resolved, std::span<const WarmupInWeather> courses) {
    std::string out = "weather,time_s,phase";
    for (const Column& column : columns) {
        out += fmt::format(",{}", column.key);
    }
    out += ",starved\r\n";
    for (const WarmupInWeather& in : courses) {
        for (const WarmupMoment& m : in.course.moments) {
            out += fmt::format("{},{},{}",
                               csv_field(resolved.weathers[in.weather].name),
                               m.time_s,
                               csv_field(in.course.phases[m.phase].name));
            for (const Column& column : columns) {
                out += fmt::format(",{}", m.*(column.member));
            }
            out += m.starved ? ",true\r\n" : ",false\r\n";
        }
    }
    return out;
}

} // namespace fluewright
