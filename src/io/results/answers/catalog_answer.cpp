#include "fluewright/io/reference/catalog_report.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/results.hpp"

#include <algorithm>

namespace fluewright::results {
namespace {

/// The records of one table, made from its columns: that of the answer, and that of a row.
struct TableInfo {
    RecordInfo row;
    RecordInfo answer;
};

std::string key_of(const CatalogColumn& column) {
    return std::string{column.name} + std::string{json_suffix(column.kind)};
}

json::Value value_of(const CatalogCell& cell) {
    if (const auto* words = std::get_if<std::string_view>(&cell)) {
        return *words;
    }
    if (const auto* number = std::get_if<double>(&cell)) {
        return *number;
    }
    return {};
}

/// A column holds numbers where any of its cells is one, and may be null where any is empty.
Shape shape_of(const CatalogTable& table, std::size_t column) {
    const auto any = [&](auto what) {
        return std::any_of(table.rows.begin(), table.rows.end(), [&](const auto& row) {
            return std::holds_alternative<decltype(what)>(row[column]);
        });
    };
    return {.holds = any(double{}) ? Holds::number : Holds::text,
            .may_be_null = any(std::monostate{})};
}

RecordInfo row_info(const CatalogTable& table) {
    RecordInfo info{.name = "catalog_" + std::string{table.id} + "_row",
                    .meaning = std::string{table.title},
                    .columns = {}};
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const CatalogColumn& column = table.columns[c];
        info.columns.push_back({.key = key_of(column),
                                .heading = std::string{column.heading},
                                .kind = column.kind,
                                .meaning = column.heading,
                                .shape = shape_of(table, c)});
    }
    return info;
}

std::vector<TableInfo> make_infos() {
    std::vector<TableInfo> infos;
    std::vector<CatalogTable> tables{catalog_contents()};
    for (const CatalogName& name : catalog_names()) {
        tables.push_back(catalog_table(name.id));
    }
    for (const CatalogTable& table : tables) {
        TableInfo& info = infos.emplace_back();
        info.row = row_info(table);
        info.answer = {.name = "catalog_" + std::string{table.id} + "_answer",
                       .meaning = std::string{table.title},
                       .columns = {{.key = "table",
                                    .heading = "table",
                                    .meaning = "its name",
                                    .shape = {.holds = Holds::text}},
                                   {.key = "title",
                                    .heading = "title",
                                    .meaning = "what it holds",
                                    .shape = {.holds = Holds::text}},
                                   {.key = "rows",
                                    .heading = "rows",
                                    .meaning = "in the order of the table",
                                    .shape = {.holds = Holds::record, .lists = 1}}}};
    }
    // The infos keep their places from here on.
    for (TableInfo& info : infos) {
        info.answer.columns.back().shape.record = [row = &info.row]() -> const RecordInfo& {
            return *row;
        };
    }
    return infos;
}

} // namespace

std::vector<const RecordInfo*> catalog_results() {
    static const std::vector<TableInfo> infos = make_infos();
    std::vector<const RecordInfo*> answers;
    answers.reserve(infos.size());
    for (const TableInfo& info : infos) {
        answers.push_back(&info.answer);
    }
    return answers;
}

} // namespace fluewright::results

namespace fluewright {

std::string catalog_json(const CatalogTable& table, const AnswerInput& input) {
    json::Value rows = json::Value::array();
    for (const auto& row : table.rows) {
        json::Value made = json::Value::object();
        for (std::size_t c = 0; c < row.size(); ++c) {
            made.add(results::key_of(table.columns[c]), results::value_of(row[c]));
        }
        rows.push_back(std::move(made));
    }
    return results::answer_text(
        "catalog",
        input,
        json::Value{{"table", table.id}, {"title", table.title}, {"rows", std::move(rows)}},
        std::span<const Assumption>{});
}

std::string catalog_csv(const CatalogTable& table) {
    std::string out;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        out += (c == 0 ? "" : ",") + results::key_of(table.columns[c]);
    }
    out += "\r\n";
    for (const auto& row : table.rows) {
        for (std::size_t c = 0; c < row.size(); ++c) {
            out += (c == 0 ? "" : ",") + results::csv_cell(results::value_of(row[c]));
        }
        out += "\r\n";
    }
    return out;
}

} // namespace fluewright
