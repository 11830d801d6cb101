#include "fluewright/io/json/json_writer.hpp"

#include "fluewright/model/fields/fields.hpp"
#include "io/input/json_document.hpp"

#include <algorithm>
#include <functional>
#include <nlohmann/json.hpp>
#include <utility>
#include <vector>

namespace fluewright {
namespace {

using PackagedJson = nlohmann::ordered_json;

constexpr std::size_t line_width = 96;
constexpr std::size_t indent_step = 2;

/// The texts of a file that may be quantities, by where they stand.
class TypedTexts {
public:
    TypedTexts() = default;

    explicit TypedTexts(std::string_view file) : parsed_(json::parse(file)) {
        for (const json::Node& node : parsed_.document.nodes()) {
            if (node.type == json::Type::string) {
                texts_.emplace_back(parsed_.document.pointer_to(node), node.text);
            }
        }
    }

    /// What the file has for exactly this value; empty for nothing.
    [[nodiscard]] std::string_view
    of(double value, double half_width, Kind kind, std::string_view pointer) const {
        std::string_view found;
        for (const auto& [place, text] : texts_) {
            const auto read = parse_quantity(text, kind);
            const bool same = read && std::equal_to<>{}(read->value, value)
                              && std::equal_to<>{}(read->tolerance, half_width);
            if (same && (found.empty() || place == pointer)) {
                found = text;
            }
        }
        return found;
    }

private:
    json::Parsed parsed_;
    std::vector<std::pair<std::string, std::string_view>> texts_;
};

/// Turns an installation into JSON by the field tables; what is not set is left out.
class Writer {
public:
    explicit Writer(const Installation& installation, const TypedTexts* typed = nullptr)
        : installation_{installation}, typed_{typed} {
        units_ = units_of(installation);
    }

    template <class T>
    [[nodiscard]] PackagedJson object(T& source, const std::string& pointer) const {
        PackagedJson json = PackagedJson::object();
        for (const auto& field : fields<T>()) {
            if ((field.info.parts & kinds_of(source)) == 0U) {
                continue;
            }
            const std::string key{field.info.key};
            PackagedJson value = field_value(source, field, pointer + '/' + key);
            if (!value.is_null()) {
                json[key] = std::move(value);
            }
        }
        for_each_child(source, [&](const ChildInfo& child, auto& member) {
            const std::string key{child.key};
            PackagedJson value = member_value(member, child, pointer + '/' + key);
            if (!value.empty() || child.required) {
                json[key] = std::move(value);
            }
        });
        return json;
    }

private:
    template <class T>
    [[nodiscard]] PackagedJson
    field_value(const T& source, const Field<T>& field, const std::string& pointer) const {
        if (const auto* given = std::get_if<Given T::*>(&field.member)) {
            return quantity(source.**given, field.info, pointer);
        }
        if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
            const HighLow& values = source.**pair;
            if (!values.low) {
                return quantity(values.high, field.info, pointer + "/high");
            }
            PackagedJson json = PackagedJson::object();
            json["low"] = quantity(values.low, field.info, pointer + "/low");
            if (values.high) {
                json["high"] = quantity(values.high, field.info, pointer + "/high");
            }
            return json;
        }
        if (const auto* word = std::get_if<Word T::*>(&field.member)) {
            return source.**word ? PackagedJson(*(source.**word)) : PackagedJson();
        }
        if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
            const auto place = choice->get(source);
            return place && *place < choice->words.size() ? PackagedJson(choice->words[*place])
                                                          : PackagedJson();
        }
        if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
            return source.**flag ? PackagedJson(*(source.**flag)) : PackagedJson();
        }
        return {};
    }

    [[nodiscard]] PackagedJson
    quantity(const Given& given, const FieldInfo& field, const std::string& pointer) const {
        if (!given) {
            return {};
        }
        const double half_width = tolerance_at(pointer);
        if (field.kind == Kind::number && half_width <= 0.0) {
            return *given;
        }
        if (typed_ != nullptr) {
            const std::string_view typed = typed_->of(*given, half_width, field.kind, pointer);
            if (!typed.empty()) {
                return typed;
            }
        }
        std::string text = write_quantity(*given, field.kind, units_);
        if (half_width > 0.0) {
            text += " ± " + write_quantity(half_width, tolerance_kind(field.kind), units_);
        }
        return text;
    }

    [[nodiscard]] double tolerance_at(std::string_view pointer) const {
        const auto& list = installation_.tolerances;
        const auto found =
            std::find_if(list.begin(), list.end(), [pointer](const Tolerance& tolerance) {
                return tolerance.pointer == pointer;
            });
        return found == list.end() ? 0.0 : found->half_width;
    }

    template <class T>
    [[nodiscard]] PackagedJson
    member_value(std::vector<T>& list, const ChildInfo& child, const std::string& pointer) const {
        PackagedJson json = Named<T> ? PackagedJson::object() : PackagedJson::array();
        for (std::size_t i = 0; i < list.size(); ++i) {
            if constexpr (Named<T>) {
                json[list[i].id] = object(list[i], pointer + '/' + pointer_step(list[i].id));
            } else {
                json.push_back(
                    bare(object(list[i], pointer + '/' + std::to_string(i)), child.bare_key));
            }
        }
        return json;
    }

    template <class T>
    [[nodiscard]] PackagedJson
    member_value(T& source, const ChildInfo& child, const std::string& pointer) const {
        return bare(object(source, pointer), child.bare_key);
    }

    /// The short form of an object that holds nothing but the key a bare text stands for.
    [[nodiscard]] static PackagedJson bare(PackagedJson object, std::string_view bare_key) {
        if (!bare_key.empty() && object.size() == 1 && object.begin().key() == bare_key
            && object.begin()->is_string()) {
            return *object.begin();
        }
        return object;
    }

    const Installation& installation_;
    const TypedTexts* typed_;
    UnitSystem units_{UnitSystem::metric};
};

std::string text_of(const PackagedJson& json) {
    return json.dump(-1, ' ', false, PackagedJson::error_handler_t::replace);
}

std::string key_text(const std::string& key) {
    return text_of(PackagedJson(key)) + ": ";
}

/// All on one line, with a blank behind every colon and comma.
std::string one_line(const PackagedJson& json) {
    if (!json.is_structured()) {
        return text_of(json);
    }
    std::string text;
    for (auto entry = json.begin(); entry != json.end(); ++entry) {
        text += text.empty() ? "" : ", ";
        text += (json.is_object() ? key_text(entry.key()) : "") + one_line(*entry);
    }
    return json.is_object() ? '{' + text + '}' : '[' + text + ']';
}

/// Objects and lists within the file stand on one line where they fit behind `taken` columns.
std::string laid_out(const PackagedJson& json, std::size_t indent, std::size_t taken) {
    std::string line = one_line(json);
    const bool holds_objects =
        json.is_array() && json.size() > 1
        && std::all_of(
            json.begin(), json.end(), [](const PackagedJson& entry) { return entry.is_object(); });
    if (indent > 0 && !holds_objects && taken + line.size() < line_width) {
        return line;
    }
    if (!json.is_structured() || json.empty()) {
        return line;
    }
    const std::size_t inner = indent + indent_step;
    std::string text;
    for (auto entry = json.begin(); entry != json.end(); ++entry) {
        const std::string key = json.is_object() ? key_text(entry.key()) : "";
        text += text.empty() ? "\n" : ",\n";
        text += std::string(inner, ' ') + key + laid_out(*entry, inner, inner + key.size());
    }
    text += '\n' + std::string(indent, ' ');
    return json.is_object() ? '{' + text + '}' : '[' + text + ']';
}

} // namespace

std::string write_installation(const Installation& installation) {
    // The visitor of the tables hands out members that may be written to, so it walks over a copy.
    Installation copy = installation;
    return laid_out(Writer{installation}.object(copy, ""), 0, 0) + '\n';
}

std::string write_installation_like(const Installation& installation, std::string_view text) {
    Installation copy = installation;
    const TypedTexts typed{text};
    return laid_out(Writer{installation, &typed}.object(copy, ""), 0, 0) + '\n';
}

std::string write_installation_line(const Installation& installation) {
    Installation copy = installation;
    return text_of(Writer{installation}.object(copy, "")) + '\n';
}

std::string write_observation(const Observation& seen, UnitSystem units) {
    Installation holder;
    holder.units = units == UnitSystem::us ? FileUnits::us : FileUnits::metric;
    Observation copy = seen;
    return one_line(Writer{holder}.object(copy, "/observed/0"));
}

std::string write_observed(const Installation& installation) {
    Installation copy = installation;
    const PackagedJson all = Writer{installation}.object(copy, "");
    return key_text("observed") + laid_out(all["observed"], indent_step, 0) + '\n';
}

} // namespace fluewright
