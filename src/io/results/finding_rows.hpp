#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/advice/checks/present_dangers.hpp"
#include "record.hpp"

/// A finding and a check, the same in every answer.
namespace fluewright::results {

template <>
const Record<CheckResult>& record_of<CheckResult>();
template <>
const Record<Finding>& record_of<Finding>();
template <>
const Record<PresentDanger>& record_of<PresentDanger>();

/// What all checks of an assessment came to.
struct ChecksRow {
    const Assessment& of;
};

template <>
const Record<ChecksRow>& record_of<ChecksRow>();

/// A part by its number in the file, from 1; null for what is no part of it.
[[nodiscard]] inline std::optional<int> part_number(int part) {
    return part < 0 ? std::optional<int>{} : std::optional<int>{part + 1};
}

/// A word, or null where there is none.
[[nodiscard]] inline std::optional<std::string_view> unless_empty(std::string_view word) {
    return word.empty() ? std::optional<std::string_view>{} : std::optional<std::string_view>{word};
}

/// A number, or null where it was not computed.
[[nodiscard]] inline std::optional<double> if_finite(double value) {
    return std::isfinite(value) ? std::optional<double>{value} : std::optional<double>{};
}

[[nodiscard]] inline std::optional<double> if_finite(std::optional<double> value) {
    return value ? if_finite(*value) : value;
}

} // namespace fluewright::results
