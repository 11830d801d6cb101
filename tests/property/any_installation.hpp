#pragma once

#include "random_installation.hpp"

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

/// Installations drawn from the field table itself, so that a new key joins by itself.
namespace fluewright::property {

/// A place of an installation that may be set to something the field table allows, or to something
/// it does not.
struct AnyPlace {
    std::string pointer;
    std::function<void(Random&)> set;
    std::function<void(Random&)> spoil; ///< empty where nothing is wrong, as for a flag
};

/// Every place of an installation that has a row in the table. They refer to the installation.
[[nodiscard]] std::vector<AnyPlace> any_places(Installation& whole);

/// An installation with entries in every list, most of which the generator of plausible ones leaves
/// empty, and some of whose values are drawn anew from the table. It need not be one that can be
/// built.
[[nodiscard]] Installation any_installation(Random& random, std::uint64_t seed);

} // namespace fluewright::property
