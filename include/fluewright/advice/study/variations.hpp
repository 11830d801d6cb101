#pragma once

#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/numeric/latin_hypercube.hpp"
#include "fluewright/core/numeric/sobol.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>

/// Many installations out of one, for a batch.
namespace fluewright {

/// How the samples of a range lie. A grid takes listed and evenly spread values only.
enum class Spread : std::uint8_t {
    listed,     ///< the values, equally often
    uniform,    ///< anywhere between the least and the greatest
    triangular, ///< between the first and the last of three, most often at the middle one
    normal,     ///< round the one value, with `deviation`; what lies beyond the limits is left out
};

/// What is varied at once, and what it may be.
struct VariedRange {
    std::vector<Varied> together; ///< at least one; several have equally many values and go in step
    Spread spread{};
    std::vector<double> deviations{}; ///< beside `together`, SI; empty unless the spread is normal
};

/// Reads "name=range" as read_varied() does, and further:
///
/// Forms    "diameter=trade 5..8 in"    the sizes the trade has between, of inches or millimetres
///          "height=5..6..8 m"          triangular: least, most likely, greatest
///          "moisture=18 % sd 3 %"      normal: mean and standard deviation
///          "a=1,2 & b=3,4"             values that go together, first with first
///          "wall=insulated 25 mm, insulated 50 mm"    words, as read_varied_words() has them
/// Failure  a sentence without its full stop
[[nodiscard]] Result<VariedRange, std::string> read_varied_range(std::string_view typed,
                                                                 const Installation& written);

/// Share of a normal range that lies beyond what can be computed, and so is not drawn; 0 of any
/// other. `member`: index into its numbers.
[[nodiscard]] double share_left_out(const VariedRange& range, std::size_t member);

class Variations {
public:
    /// Every combination of the values; the last range changes fastest.
    static Variations every_combination(const Installation& written,
                                        std::vector<VariedRange> ranges);

    /// `samples` of them, each range covered evenly and independently of the others. A range that
    /// is a list gives its values equally often. The same for the same seed.
    static Variations latin_hypercube(const Installation& written,
                                      std::vector<VariedRange> ranges,
                                      std::size_t samples,
                                      std::uint64_t seed);

    /// `samples` points of a Sobol sequence, moved by the seed, for 1 to
    /// SobolSequence::most_dimensions ranges. More samples begin with the same ones.
    static Variations sobol_sequence(const Installation& written,
                                     std::vector<VariedRange> ranges,
                                     std::size_t samples,
                                     std::uint64_t seed);

    [[nodiscard]] std::size_t size() const { return size_; }

    [[nodiscard]] const std::vector<VariedRange>& ranges() const { return ranges_; }

    /// What each number takes in variation `index` [SI], range by range.
    [[nodiscard]] std::vector<double> values(std::size_t index) const;

    /// The installation of that variation, with its id. Failure: a sentence without its full stop,
    /// where the run cannot take the values.
    [[nodiscard]] Result<Installation, std::string> at(std::size_t index,
                                                       std::string_view base) const;

    /// Of a combination `base` and its values, which name it whatever else is varied:
    /// "hut outdoor=-15degC height=4m". Of a sample its number from 1 stands before them, padded so
    /// that all have one width, and the values are rounded to four digits:
    /// "hut-017 outdoor=-3.271degC wall=insulated-25-mm".
    [[nodiscard]] std::string id(std::size_t index, std::string_view base) const;

private:
    Variations(const Installation& written, std::vector<VariedRange> ranges, std::size_t size)
        : written_(written), ranges_(std::move(ranges)), size_(size) {}

    [[nodiscard]] bool samples() const { return places_ || sequence_; }

    Installation written_;
    std::vector<VariedRange> ranges_;
    std::size_t size_;
    std::optional<LatinHypercube> places_; ///< neither: every combination
    std::optional<SobolSequence> sequence_;
};

/// How many combinations there are; the greatest number where they cannot be counted.
[[nodiscard]] std::size_t combinations(const std::vector<VariedRange>& ranges);

} // namespace fluewright
