#pragma once

#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/numeric/latin_hypercube.hpp"

#include <cstdint>
#include <optional>

/// Many installations out of one, for a batch.
namespace fluewright {

/// One number of the file and what it may be.
struct VariedRange {
    Varied varied;
    bool any_between{}; ///< a sample may lie anywhere between the least and the greatest value
};

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

    [[nodiscard]] std::size_t size() const { return size_; }

    [[nodiscard]] const std::vector<VariedRange>& ranges() const { return ranges_; }

    /// What each range gives in variation `index` [SI].
    [[nodiscard]] std::vector<double> values(std::size_t index) const;

    /// The installation of that variation, its id `base` and the number from 1, padded so that all
    /// have one width. Failure: a sentence without its full stop, where the run cannot take the
    /// values.
    [[nodiscard]] Result<Installation, std::string> at(std::size_t index,
                                                       std::string_view base) const;

    [[nodiscard]] std::string id(std::size_t index, std::string_view base) const;

private:
    Variations(const Installation& written, std::vector<VariedRange> ranges, std::size_t size)
        : written_(written), ranges_(std::move(ranges)), size_(size) {}

    Installation written_;
    std::vector<VariedRange> ranges_;
    std::size_t size_;
    std::optional<LatinHypercube> places_; ///< none: every combination
};

/// How many combinations there are; the greatest number where they cannot be counted.
[[nodiscard]] std::size_t combinations(const std::vector<VariedRange>& ranges);

} // namespace fluewright
