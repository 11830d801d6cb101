#pragma once

#include "json_text.hpp"

/// Numbers as every report writes them.
namespace fluewright::report {

/// JSON has no infinities; what is not finite was not computed.
[[nodiscard]] inline json::Value json_number(double value) {
    return value;
}

/// What is not there is null.
[[nodiscard]] inline json::Value json_number(const std::optional<double>& value) {
    return value;
}

} // namespace fluewright::report
