#include "fluewright/io/reference/schema.hpp"
#include "fluewright/io/results/columns.hpp"
#include "io/json/json_text.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

using json::Value;
using results::ColumnInfo;
using results::Holds;
using results::RecordInfo;

Value reference_to(const RecordInfo& record) {
    return {{"$ref", "#/$defs/" + record.name}};
}

std::string_view type_of(Holds holds) {
    switch (holds) {
    case Holds::truth:
        return "boolean";
    case Holds::whole:
        return "integer";
    case Holds::number:
        return "number";
    case Holds::text:
        return "string";
    case Holds::record:
    case Holds::fragment:
        break;
    }
    return "object";
}

/// One value of a column, without the lists round it.
Value one_value(const ColumnInfo& column) {
    if (column.shape.record) {
        return reference_to(column.shape.record());
    }
    Value one{{"type", type_of(column.shape.holds)}};
    if (!column.words.empty()) {
        one["enum"] = column.words;
    }
    return one;
}

Value column_schema(const ColumnInfo& column) {
    Value schema = one_value(column);
    for (int i = 0; i < column.shape.lists; ++i) {
        schema = Value{{"type", "array"}, {"items", std::move(schema)}};
    }
    if (column.shape.may_be_null) {
        Value either = Value::array();
        either.push_back(std::move(schema));
        either.push_back(Value{{"type", "null"}});
        schema = Value{{"anyOf", std::move(either)}};
    }
    const std::string_view unit = si_unit(column.kind);
    schema["description"] =
        unit.empty() ? std::string{column.meaning} : fmt::format("{} [{}]", column.meaning, unit);
    return schema;
}

Value record_schema(const RecordInfo& record, bool all_required) {
    Value properties = Value::object();
    Value required = Value::array();
    for (const ColumnInfo& column : record.columns) {
        properties.add(column.key, column_schema(column));
        required.push_back(column.key);
    }
    Value schema{{"description", record.meaning},
                 {"type", "object"},
                 {"additionalProperties", false},
                 {"properties", std::move(properties)}};
    if (all_required) {
        schema["required"] = std::move(required);
    }
    return schema;
}

/// What "result" holds, by the command.
Value results_by_command() {
    Value all = Value::array();
    for (const results::CommandResult& one : results::command_results()) {
        Value choices = Value::array();
        for (const RecordInfo* record : one.records) {
            choices.push_back(reference_to(*record));
        }
        choices.push_back(reference_to(results::faults_record()));
        const Value asked{{"properties", Value{{"command", Value{{"const", one.command}}}}}};
        all.push_back(Value{
            {"if", Value{{"properties", Value{{"input", asked}}}}},
            {"then",
             Value{{"properties", Value{{"result", Value{{"anyOf", std::move(choices)}}}}}}}});
    }
    return all;
}

} // namespace

std::string result_schema() {
    Value definitions = Value::object();
    for (const RecordInfo* record : results::all_records()) {
        Value schema = record_schema(*record, record != &results::batch_record());
        if (record == &results::answer_record()) {
            schema["allOf"] = results_by_command();
        }
        definitions.add(record->name, std::move(schema));
    }
    Value either = Value::array();
    either.push_back(reference_to(results::answer_record()));
    either.push_back(reference_to(results::batch_record()));
    const Value schema{
        {"$schema", "https://json-schema.org/draft/2020-12/schema"},
        {"title", "An answer of fluewright in JSON, or a line of its batch"},
        {"description",
         "Numbers are SI and their keys end in the unit; what was not computed is null."},
        {"anyOf", std::move(either)},
        {"$defs", std::move(definitions)}};
    constexpr int indent = 1;
    return json::indented_text(schema, indent) + '\n';
}

} // namespace fluewright
