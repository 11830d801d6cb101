#pragma once

#include "fluewright/model/standards/method.hpp"

/// How the figures of a standard method are known, and a short way to list them.
namespace fluewright {

inline constexpr std::string_view from_memory = "from memory";
inline constexpr std::string_view looked_up = "looked up";
inline constexpr std::string_view computed = "computed";
inline constexpr std::string_view of_the_file = "input";
inline constexpr std::string_view judged = "judgement";

struct TermList {
    MethodGroup group;

    explicit TermList(std::string title) { group.title = std::move(title); }

    void add(std::string_view symbol,
             std::string_view meaning,
             double value,
             std::string_view unit,
             std::string_view mark) {
        group.terms.push_back({symbol, meaning, value, unit, mark});
    }
};

} // namespace fluewright
