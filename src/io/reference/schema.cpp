#include "fluewright/io/reference/schema.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "schema_text.hpp"

#include <charconv>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

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

using Json = nlohmann::ordered_json;

Json quantity_schema(const FieldInfo& field) {
    const auto description = fmt::format("{} Allowed: {}.", field.meaning, range_in_words(field));
    if (field.kind == Kind::number) {
        return {{"description", description},
                {"anyOf",
                 {{{"type", field.whole ? "integer" : "number"},
                   {"minimum", field.lowest},
                   {"maximum", field.highest}},
                  {{"type", "string"}, {"pattern", "[0-9]"}}}}};
    }
    return {{"description", description},
            {"type", "string"},
            {"pattern", "[0-9\u00BC-\u00BE]"},
            {"examples", Json::array({field.example})}};
}

Json word_schema(const FieldInfo& field) {
    Json schema{{"description", field.meaning}};
    schema["type"] =
        field.may_be_whole_number ? Json::array({"string", "integer"}) : Json("string");
    if (field.words != Words::choices) {
        schema["maxLength"] = longest_text;
    }
    if (field.words == Words::choices) {
        schema["enum"] = field.choices;
    } else if (field.words == Words::any_text) {
        schema["examples"] = Json::array({field.example});
    } else {
        schema["examples"] = known_names(field.words, Installation{});
    }
    return schema;
}

template <class T>
Json field_schema(const Field<T>& field) {
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
    Json pair{{"type", "object"}, {"additionalProperties", false}, {"minProperties", 1}};
    pair["properties"] = Json{{"low", one}, {"high", one}};
    return {{"description", info.meaning}, {"anyOf", Json::array({one, pair})}};
}

template <class T>
Json object_schema(unsigned kinds = part_kind::any);

/// An object, or the bare text that may stand for it.
template <class T>
Json entry_schema(const ChildInfo& child) {
    Json schema = object_schema<T>();
    if (const auto* field = find_field<T>(child.bare_key)) {
        schema = Json{{"anyOf", Json::array({field_schema(*field), schema})}};
    }
    return schema;
}

template <class T>
Json member_schema(const ChildInfo& child, const T& /*object*/) {
    Json schema = entry_schema<T>(child);
    schema["description"] = child.meaning;
    return schema;
}

template <class T>
Json member_schema(const ChildInfo& child, const std::vector<T>& /*list*/) {
    Json schema{{"description", child.meaning}};
    if constexpr (Named<T>) {
        schema["type"] = "object";
        schema["maxProperties"] = child.most;
        schema["additionalProperties"] = object_schema<T>();
    } else if constexpr (std::is_same_v<T, Part>) {
        schema["type"] = "array";
        schema["minItems"] = 1;
        schema["maxItems"] = child.most;
        Json kinds = Json::array();
        for (const auto name : part_kind::names()) {
            Json kind = object_schema<Part>(part_kind::bit(*from_word<PartKind>(name)));
            kind["properties"]["part"] = Json{{"const", name}};
            kinds.push_back(std::move(kind));
        }
        schema["items"] = Json{{"oneOf", std::move(kinds)}};
    } else {
        schema["type"] = "array";
        schema["maxItems"] = child.most;
        schema["items"] = entry_schema<T>(child);
    }
    return schema;
}

template <class T>
Json object_schema(unsigned kinds) {
    Json properties = Json::object();
    Json required = Json::array();
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
    Json schema{{"type", "object"}, {"additionalProperties", false}};
    schema["properties"] = std::move(properties);
    if (!required.empty()) {
        schema["required"] = std::move(required);
    }
    return schema;
}

} // namespace

std::string input_schema() {
    Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                {"title", "An installation for fluewright"}};
    schema.update(object_schema<Installation>());
    constexpr int indent = 1;
    return schema.dump(indent) + '\n';
}

} // namespace fluewright
