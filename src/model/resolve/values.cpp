#include "values.hpp"

#include "fluewright/core/same_name.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/structure.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <optional>

namespace fluewright {

namespace {

/// The way from the root to an object, put into words only where there is something to say.
struct Way {
    const Way* before{nullptr};
    std::string_view key{};
    std::optional<std::size_t> index{};
    bool is_list{false};

    [[nodiscard]] std::string pointer() const {
        if (before == nullptr) {
            return {};
        }
        return before->pointer() + '/' + (index ? std::to_string(*index) : pointer_step(key));
    }

    [[nodiscard]] std::string to(std::string_view step) const {
        return pointer() + '/' + std::string{step};
    }

    /// "an entry of `layers`", "`appliance`"
    [[nodiscard]] std::string what() const {
        const bool entry = before != nullptr && before->is_list;
        return entry               ? fmt::format("an entry of `{}`", before->key)
               : before == nullptr ? std::string{"an installation"}
                                   : fmt::format("`{}`", key);
    }
};

class ValueCheck {
public:
    explicit ValueCheck(Faults& faults) : faults_{faults} {}

    template <class T>
    void check(const T& object, const Way& way) {
        const unsigned kinds = kinds_of(object);
        for (const Field<T>& field : fields<T>()) {
            if ((field.info.parts & kinds) != 0U) {
                check_member(object, field, way);
            } else if (is_set(object, field) && !describes_too(field, kinds)) {
                belongs_elsewhere(field.info, way);
            }
        }
        for_each_child(object, [&](const ChildInfo& child, const auto& member) {
            check_size(member, child, way);
            check_child(member, Way{.before = &way, .key = child.key});
        });
    }

private:
    template <class T>
    void check_size(const std::vector<T>& list, const ChildInfo& child, const Way& way) {
        if (list.size() > child.most) {
            faults_.push_back({way.to(child.key), too_many_words(child, list.size()), {}, {}, {}});
        }
    }

    template <class T>
    void check_size(const T& /*object*/, const ChildInfo& /*child*/, const Way& /*way*/) {}

    template <class T>
    void check_child(const T& object, const Way& way) {
        check(object, way);
    }

    template <class T>
    void check_child(const std::vector<T>& list, Way way) {
        way.is_list = true;
        for (std::size_t i = 0; i < list.size(); ++i) {
            Way entry{.before = &way};
            if constexpr (Named<T>) {
                entry.key = list[i].id;
                check_own_name(list, i, way);
            } else {
                entry.index = i;
            }
            check(list[i], entry);
        }
    }

    /// Whether another row that the part has describes the same member.
    template <class T>
    static bool describes_too(const Field<T>& field, unsigned kinds) {
        const auto rows = fields<T>();
        return std::any_of(rows.begin(), rows.end(), [&](const Field<T>& row) {
            return (row.info.parts & kinds) != 0U && row.member == field.member;
        });
    }

    template <class T>
    static bool is_set(const T& object, const Field<T>& field) {
        if (const auto* given = std::get_if<Given T::*>(&field.member)) {
            return (object.**given).has_value();
        }
        if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
            return choice->get(object).has_value();
        }
        if (const auto* word = std::get_if<Word T::*>(&field.member)) {
            return (object.**word).has_value();
        }
        if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
            return (object.**flag).has_value();
        }
        const auto* pair = std::get_if<HighLow T::*>(&field.member);
        return pair != nullptr && ((object.**pair).low || (object.**pair).high);
    }

    template <class T>
    void check_member(const T& object, const Field<T>& field, const Way& way) {
        const FieldInfo& info = field.info;
        if (const auto* given = std::get_if<Given T::*>(&field.member)) {
            check_number(object.**given, info, way, {});
        } else if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
            check_choice(choice->get(object), choice->words, info, way);
        } else if (const auto* word = std::get_if<Word T::*>(&field.member)) {
            check_word(object.**word, info, way);
        } else if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
            check_number((object.**pair).low, info, way, "/low");
            check_number((object.**pair).high, info, way, "/high");
        }
        if (info.required && !is_set(object, field)) {
            faults_.push_back({way.pointer(),
                               fmt::format("{} lacks the key `{}`", way.what(), info.key),
                               {},
                               {},
                               fmt::format("give it, such as \"{}\"", info.example)});
        }
    }

    void
    check_number(const Given& number, const FieldInfo& info, const Way& way, std::string_view end) {
        if (!number) {
            return;
        }
        if (is_in_range(*number, info)) {
            if (!is_whole_enough(*number, info)) {
                faults_.push_back({way.to(info.key) + std::string{end},
                                   not_whole_words(info),
                                   format_number(*number),
                                   allowed_words(info, UnitSystem::metric),
                                   {}});
            }
            return;
        }
        const bool finite = std::isfinite(*number);
        faults_.push_back(
            {way.to(info.key) + std::string{end},
             finite ? out_of_range_words(info, UnitSystem::metric)
                    : fmt::format("`{}` is not a finite number", info.key),
             finite ? format_quantity(*number, info.kind, UnitSystem::metric) : std::string{},
             allowed_words(info, UnitSystem::metric),
             {}});
    }

    void check_choice(std::optional<std::size_t> place,
                      std::span<const std::string_view> words,
                      const FieldInfo& info,
                      const Way& way) {
        if (!place) {
            return;
        }
        const std::string_view word = *place < words.size() ? words[*place] : std::string_view{};
        if (std::find(info.choices.begin(), info.choices.end(), word) != info.choices.end()) {
            return;
        }
        faults_.push_back(
            {way.to(info.key),
             word.empty() ? fmt::format("`{}` holds a number that is no {}", info.key, info.key)
                          : fmt::format("`{}` is not a known {}", word, info.key),
             {},
             joined(info.choices),
             {}});
    }

    void check_word(const Word& word, const FieldInfo& info, const Way& way) {
        if (word && word->empty()) {
            faults_.push_back({way.to(info.key),
                               fmt::format("`{}` is empty", info.key),
                               {},
                               joined(info.choices),
                               "give it, or leave it out"});
        } else if (word && word->size() > longest_text) {
            faults_.push_back({way.to(info.key),
                               fmt::format("`{}` is longer than {} bytes", info.key, longest_text),
                               {},
                               {},
                               "say it shorter"});
        }
    }

    void belongs_elsewhere(const FieldInfo& info, const Way& way) {
        faults_.push_back({way.to(info.key),
                           fmt::format("`{}` is not a key of this kind of part", info.key),
                           {},
                           {},
                           fmt::format("it belongs to {}", part_kind::list(info.parts))});
    }

    /// Entries under names of the user's own: each has one, and no other entry answers to it.
    template <Named T>
    void check_own_name(const std::vector<T>& list, std::size_t index, const Way& way) {
        const std::string& id = list[index].id;
        if (without_blanks_around(id).empty()) {
            faults_.push_back({way.pointer(),
                               fmt::format("an entry of `{}` has no name", way.key),
                               {},
                               {},
                               "give the name that the rest of the installation uses"});
        }
        for (std::size_t i = 0; i < index; ++i) {
            if (is_same_name(list[i].id, id)) {
                faults_.push_back(
                    {way.to(pointer_step(id)),
                     fmt::format("two entries of `{}` answer to the name `{}`", way.key, id),
                     {},
                     {},
                     "capitals and blanks around a name do not tell two apart"});
            }
        }
    }

    Faults& faults_;
};

/// How far a spread reaches need not be looked at: every value that is drawn from it is checked in
/// its turn.
void check_tolerances(const Installation& installation, Faults& faults) {
    for (const Tolerance& tolerance : installation.tolerances) {
        if (!(tolerance.half_width >= 0.0) || !std::isfinite(tolerance.half_width)) {
            faults.push_back({tolerance.pointer,
                              "the ± of a value is not a finite number of 0 or more",
                              {},
                              {},
                              "give the half width of the spread"});
        }
    }
}

} // namespace

void add_value_faults(const Installation& installation, Faults& faults) {
    ValueCheck{faults}.check(installation, Way{});
    check_tolerances(installation, faults);
}

} // namespace fluewright
