#include "fluewright/io/reference/schema.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "io/json/json_text.hpp"
#include "schema_text.hpp"

#include <charconv>
#include <fmt/core.h>

namespace fluewright {

std::string default_in_words(const FieldInfo& field) {
    if (!field.default_id) {
        return {};
    }
    const catalog::Default& row = catalog::default_of(*field.default_id);
    const bool share = row.unit == "1" && si_unit(field.kind).empty();
    return row.unit == si_unit(field.kind) || share
               ? value_in_words(row.value, field, UnitSystem::metric)
               : fmt::format("{} ({})", format_number(row.value), row.meaning);
}

namespace {

using json::Value;

/// A list of these entries.
template <class... Entries>
Value list_of(const Entries&... entries) {
    Value list = Value::array();
    (list.push_back(Value(entries)), ...);
    return list;
}

Value quantity_schema(const FieldInfo& field) {
    const auto description = fmt::format("{} Allowed: {}.", field.meaning, range_in_words(field));
    if (field.kind == Kind::number) {
        const Value number{{"type", field.whole ? "integer" : "number"},
                           {"minimum", field.lowest},
                           {"maximum", field.highest}};
        const Value text{{"type", "string"}, {"pattern", "[0-9]"}};
        return {{"description", description}, {"anyOf", list_of(number, text)}};
    }
    return {{"description", description},
            {"type", "string"},
            {"pattern", "[0-9\u00BC-\u00BE]"},
            {"examples", list_of(field.example)}};
}

Value word_schema(const FieldInfo& field) {
    Value schema{{"description", field.meaning}};
    schema["type"] = field.may_be_whole_number ? list_of("string", "integer") : Value("string");
    if (field.words != Words::choices) {
        schema["maxLength"] = longest_text;
    }
    if (field.words == Words::choices) {
        schema["enum"] = field.choices;
    } else if (field.words == Words::any_text) {
        schema["examples"] = list_of(field.example);
    } else {
        schema["examples"] = known_names(field.words, Installation{});
    }
    return schema;
}

template <class T>
Value field_schema(const Field<T>& field) {
    const auto& info = field.info;
    if (std::holds_alternative<Flag T::*>(field.member)) {
        return {{"description", info.meaning}, {"type", "boolean"}};
    }
    if (!takes_number(field)) {
        return word_schema(info);
    }
    if (std::holds_alternative<Given T::*>(field.member)) {
        return quantity_schema(info);
    }
    const auto one = quantity_schema(info);
    Value pair{{"type", "object"}, {"additionalProperties", false}, {"minProperties", 1}};
    pair["properties"] = Value{{"low", one}, {"high", one}};
    return {{"description", info.meaning}, {"anyOf", list_of(one, pair)}};
}

template <class T>
Value object_schema(unsigned kinds = part_kind::any);

/// An object, or the bare text that may stand for it.
template <class T>
Value entry_schema(const ChildInfo& child) {
    Value schema = object_schema<T>();
    if (const auto* field = find_field<T>(child.bare_key)) {
        schema = Value{{"anyOf", list_of(field_schema(*field), schema)}};
    }
    return schema;
}

template <class T>
Value member_schema(const ChildInfo& child, const T& /*object*/) {
    Value schema = entry_schema<T>(child);
    schema["description"] = child.meaning;
    return schema;
}

template <class T>
Value member_schema(const ChildInfo& child, const std::vector<T>& /*list*/) {
    Value schema{{"description", child.meaning}};
    if constexpr (Named<T>) {
        schema["type"] = "object";
        schema["maxProperties"] = child.most;
        schema["additionalProperties"] = object_schema<T>();
    } else if constexpr (std::is_same_v<T, Part>) {
        schema["type"] = "array";
        schema["minItems"] = 1;
        schema["maxItems"] = child.most;
        Value kinds = Value::array();
        for (const auto name : part_kind::names()) {
            Value kind = object_schema<Part>(part_kind::bit(*from_word<PartKind>(name)));
            kind["properties"]["part"] = Value{{"const", name}};
            kinds.push_back(std::move(kind));
        }
        schema["items"] = Value{{"oneOf", std::move(kinds)}};
    } else {
        schema["type"] = "array";
        schema["maxItems"] = child.most;
        schema["items"] = entry_schema<T>(child);
    }
    return schema;
}

template <class T>
Value object_schema(unsigned kinds) {
    Value properties = Value::object();
    Value required = Value::array();
    for (const auto& field : fields<T>()) {
        if ((field.info.parts & kinds) == 0U) {
            continue;
        }
        properties[std::string{field.info.key}] = field_schema(field);
        if (field.info.required) {
            required.push_back(field.info.key);
        }
    }
    T object;
    for_each_child(object, [&](const ChildInfo& child, const auto& member) {
        properties[std::string{child.key}] = member_schema(child, member);
        if (child.required) {
            required.push_back(child.key);
        }
    });
    Value schema{{"type", "object"}, {"additionalProperties", false}};
    schema["properties"] = std::move(properties);
    if (!required.list().empty()) {
        schema["required"] = std::move(required);
    }
    return schema;
}

} // namespace

std::string input_schema() {
    Value schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"title", "An installation for fluewright"}};
    const Value installation = object_schema<Installation>();
    for (const json::Member& member : installation.members()) {
        schema.add(member.key, member.value);
    }
    constexpr int indent = 1;
    return json::indented_text(schema, indent) + '\n';
}

} // namespace fluewright
