#pragma once

#include "fluewright/model/fields/vocabulary.hpp"

#include <optional>
#include <string>

/// What a member of an installation can be: a number, a word, a flag or a word of a closed
/// vocabulary, each left out where the user did not say.
namespace fluewright {

using Given = std::optional<double>;
using Word = std::optional<std::string>;
using Flag = std::optional<bool>;

/// A value of a closed vocabulary, where it is given.
template <Vocabulary E>
using Choice = std::optional<E>;

/// A value at low and at high fire. In a file: one quantity (taken for high fire, and for low fire
/// where it does not depend on the fire) or an object with "low" and "high".
struct HighLow {
    Given low;
    Given high;

    bool operator==(const HighLow&) const = default;
};

} // namespace fluewright
