#include "fluewright/io/report/parts_text.hpp"
#include "io/text/csv_text.hpp"
#include "json_number.hpp"
#include "trade_json.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

using Json = json::Value;
using report::json_number;

constexpr int parts_schema = 1;

Json lines_json(const PartsList& list) {
    Json all = Json::array();
    for (const PartsLine& line : list.lines) {
        all.push_back(
            {{"what", line.what},
             {"size", line.size},
             {"count", json_number(line.count)},
             {"unit", line.unit},
             {"weight_kg", line.weight_kg > 0.0 ? json_number(line.weight_kg) : Json(nullptr)},
             {"at_hand", line.at_hand},
             {"where", line.where}});
    }
    return all;
}

Json cuts_json(const PartsList& list) {
    Json all = Json::array();
    for (const Cut& cut : list.cuts) {
        all.push_back({{"place", cut.place},
                       {"piece", cut.piece},
                       {"length_m", json_number(cut.length_m)},
                       {"from_m", json_number(cut.from_m)},
                       {"from_offcut", cut.from_offcut},
                       {"at_hand", cut.at_hand},
                       {"measure", cut.measure}});
    }
    return all;
}

Json stretches_json(const PartsList& list) {
    Json all = Json::array();
    for (const PipeStretch& s : list.stretches) {
        Json parts = Json::array();
        for (const int part : s.parts) {
            parts.push_back(part + 1);
        }
        all.push_back({{"place", s.place},
                       {"parts", std::move(parts)},
                       {"wall", s.wall},
                       {"diameter_m", json_number(s.diameter_m)},
                       {"drawn_m", json_number(s.drawn_m)},
                       {"between_m", json_number(s.between_m)},
                       {"lap_m", json_number(s.lap_m)},
                       {"pieces_m", s.pieces_m},
                       {"telescopes", s.telescopes},
                       {"off_m", json_number(s.off_m)},
                       {"note", s.note}});
    }
    return all;
}

Json growth_json(const PartsList& list) {
    Json all = Json::array();
    for (const Growth& g : list.growth) {
        all.push_back({{"place", g.place},
                       {"length_m", json_number(g.length_m)},
                       {"grows_m", json_number(g.grows_m)},
                       {"mean_wall_k", json_number(g.mean_wall_k)},
                       {"free", g.free},
                       {"where", g.where}});
    }
    return all;
}

} // namespace

std::string parts_json(const PartsList& list, const PartsReportOptions& options) {
    const Json whole{{"schema", parts_schema},
                     {"program", {{"name", "fluewright"}, {"version", options.version}}},
                     {"file", options.file},
                     {"title", options.title},
                     {"parts", lines_json(list)},
                     {"cuts", cuts_json(list)},
                     {"stretches", stretches_json(list)},
                     {"joints", report::joints_json(list.joints)},
                     {"growth", growth_json(list)},
                     {"totals",
                      {{"weight_kg", json_number(list.weight_kg)},
                       {"bought_m", json_number(list.bought_m)},
                       {"offcut_m", json_number(list.offcut_m)},
                       {"exact", list.exact}}},
                     {"assumed", list.assumed}};
    return json::indented_text(whole) + '\n';
}

std::string parts_csv(const PartsList& list) {
    std::string out = "kind,what,size,count,unit,length_m,from_m,weight_kg,at_hand,where,note\n";
    for (const PartsLine& line : list.lines) {
        out += fmt::format("part,{},{},{},{},,,{},{},{},\n",
                           csv_field(line.what),
                           csv_field(line.size),
                           format_number(line.count, 6),
                           line.unit,
                           line.weight_kg > 0.0 ? format_number(line.weight_kg, 4) : "",
                           line.at_hand ? "yes" : "no",
                           csv_field(line.where));
    }
    for (const Cut& cut : list.cuts) {
        out += fmt::format("cut,{},,1,,{},{},,{},{},{}\n",
                           csv_field(fmt::format("piece {}", cut.piece)),
                           format_number(cut.length_m, 6),
                           format_number(cut.from_m, 6),
                           cut.at_hand ? "yes" : "no",
                           csv_field(cut.place),
                           csv_field(cut.measure));
    }
    return out;
}

} // namespace fluewright
