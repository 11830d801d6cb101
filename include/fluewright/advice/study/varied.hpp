#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Numbers and words of an installation that are to take other values, called by pointer or by a
/// short name.
namespace fluewright {

/// What is varied.
struct VariedKey {
    enum class What : std::uint8_t {
        values,    ///< what `pointers` lead to
        outdoor,   ///< outdoor temperature of every weather
        height,    ///< of the chimney top over the outlet, by the topmost upright
        diameter,  ///< of all round pipe that is no masonry
        burn_rate, ///< at high fire; other figures for the fire give way
        words      ///< what `pointers` lead to is no number; a value is a place in `words`
    };

    What what{};
    std::string name;                    ///< as it was typed
    std::string label;                   ///< in words, without a unit: "outdoor temperature"
    std::vector<std::string> pointers{}; ///< JSON pointers that all take the same value
    Kind kind{Kind::number};
    double lowest{}; ///< SI
    double highest{};
    bool above_lowest{};              ///< the lowest value itself is not allowed
    std::vector<std::string> words{}; ///< those it may take, as typed; of a number none
};

struct Varied {
    VariedKey key;
    std::vector<double> values; ///< SI, as written
};

/// The kind of the number that a name stands for in any installation: a short name, a pointer or
/// its end; empty where no number is called so, or numbers of several kinds are.
[[nodiscard]] std::optional<Kind> kind_of_varied(std::string_view name);

/// The number a name stands for.
///
/// Names    outdoor, height, diameter, burn_rate; a JSON pointer, as the messages of the reader
///          show it; or the end of one, such as moisture, room/pressure or outlet_diameter, where
///          it fits one number only. Of several the one the file gives is meant; entries of the
///          list of weathers go together.
/// Failure  a sentence without its full stop that names what was nearest
[[nodiscard]] Result<VariedKey, std::string> find_varied_key(std::string_view name,
                                                             const Installation& written);

/// The key of words that a name stands for: fuel, wall, cap (its build); a pointer, or the end of
/// one, as find_varied_key() has it. Failure: a sentence without its full stop.
[[nodiscard]] Result<VariedKey, std::string> find_varied_word(std::string_view name,
                                                              const Installation& written);

/// Whether a name may stand for a word in some installation.
[[nodiscard]] bool may_be_varied_word(std::string_view name);

/// The word that stands there now; empty where the file gives none.
[[nodiscard]] Word word_now(const Installation& written, const VariedKey& key);

/// Reads "name=word, word" where the name stands for a word of this file, each word held against
/// those the field takes; else as read_varied(). Failure: a sentence without its full stop that
/// names the nearest word.
[[nodiscard]] Result<Varied, std::string> read_varied_words(std::string_view typed,
                                                            const Installation& written);

/// A value as an id has it: "-15degC", "single-wall-steel"; `digits`: of a number, 0 for all it
/// has.
[[nodiscard]] std::string
value_words(const VariedKey& key, double value, UnitSystem units, int digits);

/// What the number is in an installation [SI]: the height, outdoor temperature of the first
/// weather, diameter of the first round pipe that is no masonry, and burn rate as resolved; of any
/// other number what the file gives, NaN where it gives none.
[[nodiscard]] double
value_now(const Installation& written, const Case& resolved, const VariedKey& key);

/// Reads "name=range", the range as parse_range() has it, and holds every value against the limits
/// of the key. Failure: a sentence without its full stop.
[[nodiscard]] Result<Varied, std::string> read_varied(std::string_view typed,
                                                      const Installation& written);

/// The installation with the value set; what was observed and the tolerance of the value are left
/// out. Failure: a sentence without its full stop, where the run cannot take the value.
[[nodiscard]] Result<Installation, std::string>
with_value(const Installation& written, const VariedKey& key, double value);

} // namespace fluewright
