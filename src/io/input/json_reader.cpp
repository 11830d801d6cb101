#include "fluewright/io/input/json_reader.hpp"

#include "diagnostic_places.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "json_document.hpp"
#include "json_values.hpp"
#include "old_spellings.hpp"
#include "trade_words.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {

namespace {

using json::Document;
using json::Node;
using json::Type;

/// Fills an Installation from a document by the field tables.
class Filler {
public:
    explicit Filler(const Document& document) : document_{document}, troubles_{document} {}

    void fill_root() {
        const Node& root = document_.root();
        if (root.type != Type::object) {
            troubles_.at_value(root,
                               "an installation is an object in braces",
                               {},
                               "start with { \"appliance\": { }, \"run\": [ ] }");
            return;
        }
        read_object(root, result_, "an installation");
        result_.us_quantities = units_.us;
        result_.metric_quantities = units_.metric;
    }

    /// A file that holds nothing but a list of pieces at hand.
    void fill_stock() {
        const Node& root = document_.root();
        const Node* list = root.type == Type::object ? member(root, "stock") : nullptr;
        if (list == nullptr) {
            troubles_.at_value(root,
                               "a list of pieces at hand is an object with the key `stock`",
                               {},
                               R"(write {"stock": [{"length": "1 m", "count": 2}]})");
            return;
        }
        for (auto i = root.first; i != json::no_node; i = document_.at(i).next) {
            if (&document_.at(i) != list) {
                constexpr std::string_view keys[] = {"stock"};
                report_unknown(document_.at(i), "a list of pieces at hand", keys, {});
            }
        }
        read_child(*list, result_);
    }

    [[nodiscard]] Installation& result() { return result_; }

    [[nodiscard]] std::vector<json::Trouble>& troubles() { return troubles_.list(); }

    /// Whether a list was left unread for its length, so that names may be missing that it holds.
    [[nodiscard]] bool is_overfull() const { return overfull_; }

private:
    template <class T>
    void read_object(const Node& node, T& object, std::string_view what) {
        unsigned kinds = part_kind::any;
        std::string kind_name;
        if constexpr (std::is_same_v<T, Part>) {
            const Node* part = member(node, "part");
            if (part != nullptr && part->type == Type::string) {
                const auto kind = from_word<PartKind>(part->text);
                if (kind && part_kind::bit(*kind) != 0U) {
                    kinds = part_kind::bit(*kind);
                    kind_name = fmt::format("the part `{}`", part->text);
                }
            }
        }
        what = kind_name.empty() ? what : std::string_view{kind_name};
        for (auto i = node.first; i != json::no_node && !troubles_.is_full();
             i = document_.at(i).next) {
            const Node& child = document_.at(i);
            if (const auto* field = find_field<T>(child.key, kinds)) {
                read_field(child, object, *field);
            } else if (!read_child(child, object)) {
                unknown_key<T>(child, kinds, what);
            }
        }
        check_required(node, object, what);
    }

    [[nodiscard]] const Node* member(const Node& object, std::string_view key) const {
        for (auto i = object.first; i != json::no_node; i = document_.at(i).next) {
            if (document_.at(i).key == key) {
                return &document_.at(i);
            }
        }
        return nullptr;
    }

    template <class T>
    void read_field(const Node& node, T& object, const Field<T>& field) {
        if (const auto* given = std::get_if<Given T::*>(&field.member)) {
            read_given(node, field.info, object.**given);
        } else if (const auto* word = std::get_if<Word T::*>(&field.member)) {
            object.** word = json::read_word(document_, node, field.info, troubles_);
        } else if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
            if (const auto typed = json::read_word(document_, node, field.info, troubles_)) {
                choice->set(object, place_of(*typed, choice->words));
            }
        } else if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
            object.** flag = json::read_flag(node, field.info, troubles_);
        } else if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
            read_high_low(node, field.info, object.**pair);
        }
    }

    /// `step` is added to the pointer of a tolerance.
    void
    read_given(const Node& node, const FieldInfo& field, Given& given, std::string_view step = {}) {
        const auto number = json::read_number(document_, node, field, units_, troubles_);
        if (!number) {
            return;
        }
        given = number->value;
        if (number->tolerance > 0.0) {
            result_.tolerances.push_back(
                {document_.pointer_to(node) + std::string{step}, number->tolerance});
        }
    }

    void read_high_low(const Node& node, const FieldInfo& field, HighLow& values) {
        if (node.type != Type::object) {
            read_given(node, field, values.high, "/high");
            return;
        }
        for (auto i = node.first; i != json::no_node; i = document_.at(i).next) {
            const Node& child = document_.at(i);
            if (child.key == "low") {
                read_given(child, field, values.low);
            } else if (child.key == "high") {
                read_given(child, field, values.high);
            } else {
                constexpr std::string_view keys[] = {"low", "high"};
                report_unknown(child, field.key, keys, {});
            }
        }
        if (node.first == json::no_node) {
            troubles_.missing_in(
                node,
                fmt::format("`{}` holds neither low nor high", field.key),
                fmt::format("write {{\"low\": ..., \"high\": \"{}\"}}", field.example));
        }
    }

    /// Reads a key that holds an object or a list; false where `object` has no such key.
    template <class T>
    bool read_child(const Node& node, T& object) {
        bool found = false;
        for_each_child(object, [&](const ChildInfo& child, auto& member) {
            if (child.key == node.key) {
                found = true;
                read_member(node, child, member);
            }
        });
        return found;
    }

    template <class T>
    void read_member(const Node& node, const ChildInfo& child, std::vector<T>& list) {
        const auto what = fmt::format("an entry of `{}`", child.key);
        constexpr Type wanted = Named<T> ? Type::object : Type::array;
        if (node.type != wanted) {
            json::wrong_type(node,
                             child.key,
                             Named<T> ? "an object with a name for each entry"
                                      : "a list in square brackets",
                             Named<T> ? "{\"name\": { ... }}" : "[{ ... }]",
                             troubles_);
            return;
        }
        if (const std::size_t entries = document_.child_count(node); entries > child.most) {
            troubles_.at_value(node, too_many_words(child, entries), {}, {});
            overfull_ = true;
            return;
        }
        for (auto i = node.first; i != json::no_node; i = document_.at(i).next) {
            const Node& entry = document_.at(i);
            T& object = list.emplace_back();
            if constexpr (Named<T>) {
                object.id = entry.key;
                if (entry.key.size() > longest_text) {
                    troubles_.at_key(
                        entry,
                        fmt::format("the name of {} is longer than {} bytes", what, longest_text),
                        {},
                        "call it shorter");
                }
            }
            if (entry.type == Type::object) {
                read_object(entry, object, what);
            } else if (entry.type == Type::string && !child.bare_key.empty()) {
                read_bare(entry, child, object);
            } else {
                troubles_.at_value(entry,
                                   fmt::format("{} must be an object in braces", what),
                                   {},
                                   "write { \"key\": value }");
            }
        }
    }

    /// A bare text that stands for one key of an object.
    template <class T>
    void read_bare(const Node& node, const ChildInfo& child, T& object) {
        const std::size_t tolerances = result_.tolerances.size();
        if (const auto* field = find_field<T>(child.bare_key)) {
            read_field(node, object, *field);
        }
        // The value belongs to the key the text stands for.
        for (std::size_t i = tolerances; i < result_.tolerances.size(); ++i) {
            result_.tolerances[i].pointer += '/' + std::string{child.bare_key};
        }
    }

    template <class T>
    void read_member(const Node& node, const ChildInfo& child, T& object) {
        if (node.type == Type::string && !child.bare_key.empty()) {
            read_bare(node, child, object);
            return;
        }
        if (node.type != Type::object) {
            json::wrong_type(node, child.key, "an object in braces", "{ ... }", troubles_);
            return;
        }
        read_object(node, object, fmt::format("`{}`", child.key));
    }

    template <class T>
    void check_required(const Node& node, T& object, std::string_view what) {
        for (const auto& field : fields<T>()) {
            if (field.info.required && member(node, field.info.key) == nullptr) {
                const bool plain = field.info.kind == Kind::number
                                   && std::holds_alternative<Given T::*>(field.member);
                missing(node,
                        field.info.key,
                        what,
                        plain ? std::string{field.info.example}
                              : fmt::format("\"{}\"", field.info.example));
            }
        }
        for_each_child(object, [&](const ChildInfo& child, auto& list_or_object) {
            if (child.required && member(node, child.key) == nullptr) {
                missing(node,
                        child.key,
                        what,
                        std::is_same_v<decltype(list_or_object), std::vector<Part>&>
                            ? "[{\"part\": \"straight\", \"up\": \"1.2 m\"}]"
                            : "{\"type\": \"stove\"}");
            }
        });
    }

    void missing(const Node& node,
                 std::string_view key,
                 std::string_view what,
                 const std::string& example) {
        troubles_.missing_in(node,
                             fmt::format("{} lacks the key `{}`", what, key),
                             fmt::format("add \"{}\": {}", key, example));
    }

    template <class T>
    void unknown_key(const Node& node, unsigned kinds, std::string_view what) {
        std::vector<std::string_view> keys;
        unsigned others = 0U;
        for (const auto& field : fields<T>()) {
            if ((field.info.parts & kinds) != 0U) {
                // Two kinds of part may each have a row for one key.
                if (keys.empty() || keys.back() != field.info.key) {
                    keys.push_back(field.info.key);
                }
            } else if (field.info.key == node.key) {
                others |= field.info.parts;
            }
        }
        T object;
        for_each_child(
            object, [&](const ChildInfo& child, auto& /*member*/) { keys.push_back(child.key); });
        std::string help;
        if (others != 0U) {
            help = fmt::format("it belongs to {}", part_kind::list(others));
        }
        report_unknown(node, what, keys, std::move(help));
    }

    void report_unknown(const Node& node,
                        std::string_view what,
                        std::span<const std::string_view> keys,
                        std::string help) {
        if (help.empty()) {
            const auto bare = node.key.substr(0, node.key.rfind('_'));
            if (auto of_trade = json::trade_key_help(node.key, keys); !of_trade.empty()) {
                help = std::move(of_trade);
            } else if (std::find(keys.begin(), keys.end(), bare) != keys.end()) {
                help = fmt::format("write `{}`; a unit goes into the value", bare);
            } else if (const auto homes = homes_of_key(node.key); homes.size() == 1) {
                const auto nearest = nearest_word(node.key, keys); // a slip of a letter is nearer
                help = (nearest ? fmt::format("did you mean `{}`? As written ", *nearest) : "")
                       + fmt::format("it is a key of `{}`", homes.front());
            } else if (const auto meant = json::glossary_key(node.key, keys)) {
                help = fmt::format("write `{}`", *meant);
            } else if (const auto nearest = nearest_word(node.key, keys)) {
                help = fmt::format("did you mean `{}`?", *nearest);
            }
        }
        troubles_.at_key(node,
                         fmt::format("`{}` is not a key of {}", json::shown(node.key), what),
                         joined(keys),
                         std::move(help));
    }

    const Document& document_;
    json::Troubles troubles_;
    json::UnitCount units_;
    Installation result_;
    bool overfull_{false};
};

/// Whether one of the values inside `pointer` is at fault already.
bool already_at_fault(std::string_view pointer, const std::vector<json::Trouble>& troubles) {
    return std::any_of(troubles.begin(), troubles.end(), [&](const json::Trouble& trouble) {
        const std::string_view inner = trouble.fault.pointer;
        return inner.starts_with(pointer)
               && (inner.size() == pointer.size() || inner[pointer.size()] == '/');
    });
}

/// Whether the pointer leads to a key that an object lacks; that is reported as such already.
bool stands_for_missing(std::string_view pointer, const Document& document) {
    bool exact = false;
    const Node& nearest = document.nearest_to(pointer, exact);
    return !exact && (nearest.type == Type::object || nearest.type == Type::array);
}

} // namespace

ReadResult read_installation(std::string_view text, std::string_view file) {
    auto parsed = json::parse_installation(text);
    std::vector<json::Trouble> troubles = std::move(parsed.troubles);
    if (parsed.complete) {
        Filler filler{parsed.document};
        filler.fill_root();
        auto& of_values = filler.troubles();
        const auto of_structure =
            filler.is_overfull() ? Faults{} : check_structure(filler.result());
        if (troubles.empty() && of_values.empty() && of_structure.empty()) {
            return std::move(filler.result());
        }
        troubles.insert(troubles.end(), of_values.begin(), of_values.end());
        // A value that could not be read must not be called missing as well.
        const auto known = troubles;
        for (const auto& fault : of_structure) {
            if (!already_at_fault(fault.pointer, known)
                && !stands_for_missing(fault.pointer, parsed.document)) {
                troubles.push_back(json::trouble_of(fault, parsed.document));
            }
        }
    }
    return Failure{json::placed(std::move(troubles), text, file)};
}

Result<std::vector<StockPiece>, Diagnostics> read_stock(std::string_view text,
                                                        std::string_view file) {
    auto parsed = json::parse_installation(text);
    std::vector<json::Trouble> troubles = std::move(parsed.troubles);
    if (parsed.complete) {
        Filler filler{parsed.document};
        filler.fill_stock();
        auto& of_values = filler.troubles();
        if (of_values.empty()) {
            for (const Fault& fault : stock_faults(filler.result().stock)) {
                troubles.push_back(json::trouble_of(fault, parsed.document));
            }
        }
        if (troubles.empty() && of_values.empty()) {
            return std::move(filler.result().stock);
        }
        troubles.insert(troubles.end(), of_values.begin(), of_values.end());
    }
    return Failure{json::placed(std::move(troubles), text, file)};
}

} // namespace fluewright
