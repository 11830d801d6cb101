#pragma once

#include <string>

/// Numbers of the report. They are rounded far above the last digits, in which compilers differ.
namespace published {

/// Four significant digits; never "-0".
[[nodiscard]] std::string figure(double value);

/// As figure(), with a sign; "0" for what is smaller than `least`.
[[nodiscard]] std::string signed_figure(double value, double least);

/// A share in per cent with two digits after the point; "under 0.01 %" below that.
[[nodiscard]] std::string per_cent(double share);

} // namespace published
