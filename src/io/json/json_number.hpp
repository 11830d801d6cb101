#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>

/// Numbers as every report writes them.
namespace fluewright::report {

/// JSON has no infinities; what is not finite was not computed.
[[nodiscard]] inline nlohmann::ordered_json json_number(double value) {
    return std::isfinite(value) ? nlohmann::ordered_json(value) : nlohmann::ordered_json(nullptr);
}

/// What is not there is null.
[[nodiscard]] inline nlohmann::ordered_json json_number(const std::optional<double>& value) {
    return value ? json_number(*value) : nlohmann::ordered_json(nullptr);
}

} // namespace fluewright::report
