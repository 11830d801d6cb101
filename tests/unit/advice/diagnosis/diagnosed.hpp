#pragma once

#include "catch.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

/// A diagnosis, and how likely it takes a cause to be.
namespace fluewright {

inline Diagnosis diagnosis_of(const Installation& written) {
    auto made = diagnose(written);
    REQUIRE(made.has_value());
    return std::move(made).value();
}

/// Of every explanation that names the cause, alone or beside another; "nothing" is none hidden.
inline double share_of(const Diagnosis& diagnosis, std::string_view id) {
    double sum = 0.0;
    for (const Explanation& e : diagnosis.explanations) {
        const bool named = std::any_of(e.causes.begin(), e.causes.end(), [&](const SizedCause& c) {
            return c.cause->id == id;
        });
        sum += named || (e.causes.empty() && id == "nothing") ? e.probability : 0.0;
    }
    return sum;
}

} // namespace fluewright
