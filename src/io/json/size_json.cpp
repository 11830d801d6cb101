#include "fluewright/io/report/report_size.hpp"
#include "io/text/csv_text.hpp"
#include "score_json.hpp"

#include <fmt/core.h>

namespace fluewright {

using Json = json::Value;
using report::json_number;

std::string
size_table_json(const SizeTable& table, std::string_view version, std::string_view file) {
    constexpr int schema = 1;
    Json rows = Json::array();
    for (const SizeRow& row : table.rows) {
        rows.push_back(
            {{"connector", row.connector},
             {"chimney", row.chimney},
             {"connector_diameter_m", json_number(row.connector_m)},
             {"chimney_diameter_m", json_number(row.chimney_m)},
             {"height_m", json_number(row.height_m)},
             {"area_over_outlet", json_number(row.area_over_outlet)},
             {"passes", row.ruled_out_by.empty()},
             {"ruled_out_by", row.ruled_out_by.empty() ? Json() : Json(row.ruled_out_by)},
             {"present", row.present},
             {"suggested", row.suggested},
             {"states", row.score ? report::score_json(table.present, *row.score) : Json()}});
    }
    const Json whole{{"schema", schema},
                     {"program", "fluewright"},
                     {"version", version},
                     {"file", file},
                     {"title", table.present.title},
                     {"sentence", table.sentence},
                     {"present_height_m", json_number(table.present_height_m)},
                     {"suggested", table.suggested ? Json(*table.suggested) : Json()},
                     {"rows", std::move(rows)}};
    return json::indented_text(whole) + '\n';
}

std::string size_table_csv(const SizeTable& table) {
    std::string out = fmt::format("connector,chimney,connector_diameter_m,chimney_diameter_m,"
                                  "height_m,area_over_outlet,ruled_out_by,present,suggested,{}\r\n",
                                  report::score_csv_heading());
    for (const SizeRow& row : table.rows) {
        const std::string head = fmt::format("{},{},{},{},{},{},{},{},{}",
                                             csv_field(row.connector),
                                             csv_field(row.chimney),
                                             row.connector_m,
                                             row.chimney_m,
                                             row.height_m,
                                             row.area_over_outlet,
                                             csv_field(row.ruled_out_by),
                                             row.present ? "yes" : "no",
                                             row.suggested ? "yes" : "no");
        if (row.score) {
            report::append_score_csv(out, table.present, *row.score, head);
        } else {
            out += head + ",,,,,,,,,\r\n";
        }
    }
    return out;
}

} // namespace fluewright
