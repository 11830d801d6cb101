#pragma once

#include <cmath>
#include <concepts>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <ranges>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

/// What every answer in JSON is built of. The packaged JSON library would cost each file that
/// builds an answer more to compile than all its other headers; an answer only needs to be put
/// together and written.
namespace fluewright::json {

struct Member;

/// A value of JSON; an object keeps its members in the order they were put in.
class Value {
public:
    using List = std::vector<Value>;
    using Members = std::vector<Member>;

    Value();

    Value(std::nullptr_t nothing);

    template <class T>

    requires std::same_as<T, bool> Value(T truth) : held_(truth) {}

    template <std::integral T>

    requires(!std::same_as<T, bool>) Value(T whole);

    /// JSON has no infinities: what is not finite was not computed, and is null.
    Value(double number);

    /// What is not there is null.
    Value(std::optional<double> number);

    Value(std::string text);

    Value(std::string_view text);

    Value(const char* text);

    /// Any other sequence becomes a list.
    template <std::ranges::input_range R>

    requires(!std::convertible_to<R, std::string_view>) explicit(false) Value(const R& entries);

    Value(std::initializer_list<Member> members);

    [[nodiscard]] static Value array();
    [[nodiscard]] static Value object();

    void push_back(Value entry);

    /// A member of a name the object does not have yet.
    void add(std::string key, Value value);

    /// The member of that name; it is made, null, where there is none yet.
    Value& operator[](std::string_view key);

    [[nodiscard]] bool is_null() const { return std::holds_alternative<std::monostate>(held_); }

    [[nodiscard]] bool is_text() const { return std::holds_alternative<std::string>(held_); }

    [[nodiscard]] bool is_list() const { return std::holds_alternative<List>(held_); }

    [[nodiscard]] bool is_object() const { return std::holds_alternative<Members>(held_); }

    [[nodiscard]] const std::string& text() const { return std::get<std::string>(held_); }

    [[nodiscard]] const List& list() const { return std::get<List>(held_); }

    [[nodiscard]] const Members& members() const { return std::get<Members>(held_); }

    /// A number, whole or not.
    [[nodiscard]] std::optional<double> number() const;

    [[nodiscard]] const bool* truth() const { return std::get_if<bool>(&held_); }

    [[nodiscard]] const std::int64_t* whole() const { return std::get_if<std::int64_t>(&held_); }

private:
    std::variant<std::monostate, bool, std::int64_t, double, std::string, List, Members> held_;
};

/// A member of an object.
struct Member {
    std::string key;
    Value value;
};

// Behind Member, which a list of members has to know to end its life.

inline Value::Value() = default;

inline Value::Value(std::nullptr_t /*nothing*/) {}

template <std::integral T>

requires(!std::same_as<T, bool>) Value::Value(T whole) : held_(static_cast<std::int64_t>(whole)) {}

template <std::ranges::input_range R>

requires(!std::convertible_to<R, std::string_view>) Value::Value(const R& entries) : held_(List{}) {
    for (const auto& entry : entries) {
        push_back(Value(entry));
    }
}

inline Value::Value(double number) {
    if (std::isfinite(number)) {
        held_ = number;
    }
}

inline Value::Value(std::optional<double> number) : Value(number ? Value(*number) : Value()) {}

inline Value::Value(std::string text) : held_(std::move(text)) {}

inline Value::Value(std::string_view text) : held_(std::string{text}) {}

inline Value::Value(const char* text) : held_(std::string{text}) {}

/// The shortest decimal text that reads back as the same double; with a point or an exponent.
[[nodiscard]] std::string number_text(double value);

/// A string in quotation marks, escaped as RFC 8259 asks. Bytes that are no UTF-8 come out as the
/// replacement character: the name of a file may hold any.
[[nodiscard]] std::string quoted(std::string_view text);

/// The value a sound text of JSON holds; null for an unsound one.
[[nodiscard]] Value value_of(std::string_view text);

/// On one line without blanks.
[[nodiscard]] std::string compact_text(const Value& value);

/// On many lines, each level `step` further in; ends without a line end.
[[nodiscard]] std::string indented_text(const Value& value, int step = 2);

} // namespace fluewright::json
