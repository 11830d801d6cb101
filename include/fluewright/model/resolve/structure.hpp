#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <string_view>
#include <vector>

/// Faults of an installation that no single value shows: parts in an order that cannot be built,
/// keys that contradict each other, names that nothing answers to.
namespace fluewright {

/// All faults of structure and of names, each with the pointer of the object or value at fault.
/// `found` stays empty where only the text of the file can tell it.
[[nodiscard]] Faults check_structure(const Installation& installation);

/// The names an installation may use in a field of these words: its own first, then the catalog's.
[[nodiscard]] std::vector<std::string_view> known_names(Words words,
                                                        const Installation& installation);

/// Whether the name is one of these or an alias of one, whatever the case of its letters.
[[nodiscard]] bool
is_known_name(std::string_view name, Words words, const Installation& installation);

/// Words joined for a message: "smooth, gored, mitred".
[[nodiscard]] std::string joined(std::span<const std::string_view> words);

} // namespace fluewright
