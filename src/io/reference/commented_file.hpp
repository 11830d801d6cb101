#pragma once

#include <string>
#include <string_view>

/// Files to start from, with the meaning of their keys in them.
namespace fluewright {

/// A file whose lines may end in " @/pointer": such a line gets the meaning of that key, by the
/// table of fields, as a comment above it. Comments are broken at 80 columns.
[[nodiscard]] std::string with_meanings(std::string_view skeleton);

} // namespace fluewright
