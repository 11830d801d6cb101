#include "fluewright/io/report/report_sweep.hpp"
#include "io/text/csv_text.hpp"
#include "score_json.hpp"

#include <fmt/core.h>

namespace fluewright {

using Json = json::Value;
using report::json_number;

namespace {

Json over_json(const Varied& varied) {
    return {{"name", varied.key.name},
            {"label", varied.key.label},
            {"kind", name(varied.key.kind)},
            {"unit", si_unit(varied.key.kind)},
            {"pointers", varied.key.pointers},
            {"values", varied.values}};
}

} // namespace

std::string sweep_json(const Sweep& sweep, std::string_view version, std::string_view file) {
    constexpr int schema = 1;
    Json over = Json::array();
    for (const Varied& varied : sweep.over) {
        over.push_back(over_json(varied));
    }
    Json turns = Json::array();
    for (const SweepTurn& turn : sweep.turns) {
        turns.push_back({{"at", json_number(turn.at)},
                         {"passes", turn.passes_above ? "above" : "below"},
                         {"falls_short", turn.state}});
    }
    Json points = Json::array();
    for (const SweepPoint& point : sweep.points) {
        points.push_back(
            {{"at", point.at},
             {"passes", point.passes()},
             {"least_relative_spare", point.score ? json_number(point.score->least_spare) : Json()},
             {"states", point.score ? report::score_json(sweep.shape, *point.score) : Json()},
             {"fault", point.fault.empty() ? Json() : Json(point.fault)}});
    }
    const Json whole{{"schema", schema},
                     {"program", "fluewright"},
                     {"version", version},
                     {"file", file},
                     {"title", sweep.present.title},
                     {"sentence", sweep.sentence},
                     {"over", std::move(over)},
                     {"turns", std::move(turns)},
                     {"points", std::move(points)}};
    return json::indented_text(whole) + '\n';
}

std::string sweep_csv(const Sweep& sweep) {
    std::string out;
    for (const Varied& varied : sweep.over) {
        out += csv_field(varied.key.name + std::string{json_suffix(varied.key.kind)}) + ',';
    }
    out += fmt::format("all_pass,{}\r\n", report::score_csv_heading());
    for (const SweepPoint& point : sweep.points) {
        std::string head;
        for (const double value : point.at) {
            head += fmt::format("{},", value);
        }
        head += point.passes() ? "yes" : "no";
        if (point.score) {
            report::append_score_csv(out, sweep.shape, *point.score, head);
        } else {
            out += head + ',' + csv_field(point.fault) + ",,,,,,,,\r\n";
        }
    }
    return out;
}

} // namespace fluewright
