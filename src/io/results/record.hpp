#pragma once

#include "fluewright/io/results/columns.hpp"
#include "fluewright/model/fields/vocabulary.hpp"
#include "io/json/json_text.hpp"

#include <algorithm>
#include <concepts>
#include <functional>
#include <optional>
#include <ranges>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

/// Records of answers: each a table of columns with a getter, from a value of type T.
namespace fluewright::results {

template <class T>
class Record;

/// The table of the values of a type. Specialized once for each; a header declares those that more
/// than one file writes.
template <class T>
const Record<T>& record_of();

namespace cell {

template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;

template <class T>
concept Text = std::convertible_to<T, std::string_view>;

template <class T>
concept List = std::ranges::input_range<const T> && !Text<T>;

/// The shape of the values of a type.
template <class V>
[[nodiscard]] Shape shape_of() {
    using T = std::remove_cvref_t<V>;
    if constexpr (std::is_same_v<T, bool>) {
        return {.holds = Holds::truth};
    } else if constexpr (std::integral<T>) {
        return {.holds = Holds::whole};
    } else if constexpr (std::floating_point<T>) {
        return {.holds = Holds::number};
    } else if constexpr (Text<T> || std::is_enum_v<T>) {
        return {.holds = Holds::text};
    } else if constexpr (std::is_same_v<T, json::Value>) {
        return {.holds = Holds::fragment};
    } else if constexpr (is_optional<T>) {
        Shape shape = shape_of<typename T::value_type>();
        shape.may_be_null = true;
        return shape;
    } else if constexpr (std::is_pointer_v<T>) {
        Shape shape = shape_of<std::remove_pointer_t<T>>();
        shape.may_be_null = true;
        return shape;
    } else if constexpr (List<T>) {
        Shape shape = shape_of<std::ranges::range_value_t<T>>();
        ++shape.lists;
        return shape;
    } else {
        return {.holds = Holds::record,
                .record = []() -> const RecordInfo& { return record_of<T>().info(); }};
    }
}

/// The words a value of a closed vocabulary may have; empty for any other.
template <class V>
[[nodiscard]] std::span<const std::string_view> words_of_type() {
    using T = std::remove_cvref_t<V>;
    if constexpr (Vocabulary<T>) {
        return all_words<T>();
    } else if constexpr (is_optional<T>) {
        return words_of_type<typename T::value_type>();
    } else {
        return {};
    }
}

template <class T>
[[nodiscard]] json::Value value_of(const T& of) {
    if constexpr (is_optional<T> || (std::is_pointer_v<T> && !Text<T>)) {
        return of ? value_of(*of) : json::Value();
    } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, json::Value>) {
        return of;
    } else if constexpr (std::is_enum_v<T>) {
        return std::string_view{name(of)};
    } else if constexpr (Text<T>) {
        return std::string_view{of};
    } else if constexpr (List<T>) {
        json::Value list = json::Value::array();
        for (const auto& entry : of) {
            list.push_back(value_of<std::ranges::range_value_t<T>>(entry));
        }
        return list;
    } else {
        return record_of<T>().json(of);
    }
}

} // namespace cell

/// The key of a column before the suffix of its unit, and how text heads it where that is not the
/// key in words.
struct ColumnName {
    std::string_view key;
    std::string_view heading{};

    ColumnName(const char* typed) : key(typed) {}

    ColumnName(const char* typed, const char* headed) : key(typed), heading(headed) {}
};

template <class T>
class Column {
public:
    /// A column without a unit. `getter` is a member of T or takes a T; by what it gives, the shape
    /// of the column is known.
    template <class Get>
    Column(ColumnName named, std::string_view meaning, Get getter)
        : Column(named, Kind::number, meaning, std::move(getter)) {}

    template <class Get>
    Column(ColumnName named,
           Kind kind,
           std::string_view meaning,
           Get getter,
           std::span<const std::string_view> words = {},
           bool by_default = true)
        : info_{.key = std::string{named.key} + std::string{json_suffix(kind)},
                .heading = heading_of(named),
                .kind = kind,
                .meaning = meaning,
                .shape = cell::shape_of<std::invoke_result_t<Get, const T&>>(),
                .words = words.empty() ? cell::words_of_type<std::invoke_result_t<Get, const T&>>()
                                       : words,
                .by_default = by_default},
          get_([getter](const T& of) {
              using Given = std::remove_cvref_t<std::invoke_result_t<Get, const T&>>;
              return cell::value_of<Given>(std::invoke(getter, of));
          }) {}

    /// The column of another record, as that of this one.
    template <class Other>
    Column(const Column<Other>& column, std::function<json::Value(const T&)> getter)
        : info_(column.info()), get_(std::move(getter)) {}

    /// The same, but not in CSV, where whole sentences have no place.
    [[nodiscard]] Column json_only() && {
        info_.in_csv = false;
        return std::move(*this);
    }

    /// The same, with its sign in text.
    [[nodiscard]] Column with_sign() && {
        info_.shows_sign = true;
        return std::move(*this);
    }

    [[nodiscard]] const ColumnInfo& info() const { return info_; }

    [[nodiscard]] json::Value get(const T& of) const { return get_(of); }

private:
    static std::string heading_of(ColumnName named) {
        std::string words{named.heading.empty() ? named.key : named.heading};
        if (named.heading.empty()) {
            std::replace(words.begin(), words.end(), '_', ' ');
        }
        return words;
    }

    ColumnInfo info_;
    std::function<json::Value(const T&)> get_;
};

template <class T>
class Record {
public:
    Record(std::string_view name, std::string_view meaning, std::vector<Column<T>> columns)
        : columns_(std::move(columns)) {
        info_.name = name;
        info_.meaning = meaning;
        for (const Column<T>& column : columns_) {
            info_.columns.push_back(column.info());
        }
    }

    [[nodiscard]] const RecordInfo& info() const { return info_; }

    [[nodiscard]] const std::vector<Column<T>>& columns() const { return columns_; }

    /// Every column, in order.
    [[nodiscard]] json::Value json(const T& of) const {
        json::Value made = json::Value::object();
        for (const Column<T>& column : columns_) {
            made.add(column.info().key, column.get(of));
        }
        return made;
    }

private:
    RecordInfo info_;
    std::vector<Column<T>> columns_;
};

} // namespace fluewright::results
