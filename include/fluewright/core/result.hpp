#pragma once

#include <cassert>
#include <utility>
#include <variant>

namespace fluewright {

/// The reason why a Result holds no value; `return Failure{error}` builds a failed Result.
template <class E>
struct Failure {
    E error;
};

template <class E>
Failure(E) -> Failure<E>;

/// A value, or the reason why there is none. It has the names of std::expected, which g++ 12 lacks
/// in C++20, so that it can give way to it later. Reading the wrong side is a programming error.
template <class T, class E>
class [[nodiscard]] Result {
public:
    Result(T value) : content_(std::in_place_index<0>, std::move(value)) {}

    template <class F>
    Result(Failure<F> failure) : content_(std::in_place_index<1>, std::move(failure.error)) {}

    [[nodiscard]] bool has_value() const { return content_.index() == 0; }

    explicit operator bool() const { return has_value(); }

    [[nodiscard]] const T& value() const& {
        assert(has_value());
        return *std::get_if<0>(&content_);
    }

    [[nodiscard]] T& value() & {
        assert(has_value());
        return *std::get_if<0>(&content_);
    }

    [[nodiscard]] T&& value() && {
        assert(has_value());
        return std::move(*std::get_if<0>(&content_));
    }

    [[nodiscard]] const E& error() const& {
        assert(!has_value());
        return *std::get_if<1>(&content_);
    }

    [[nodiscard]] E&& error() && {
        assert(!has_value());
        return std::move(*std::get_if<1>(&content_));
    }

    const T& operator*() const { return value(); }

    T& operator*() { return value(); }

    const T* operator->() const { return &value(); }

    T* operator->() { return &value(); }

private:
    std::variant<T, E> content_;
};

} // namespace fluewright
