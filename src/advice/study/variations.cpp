#include "fluewright/advice/study/variations.hpp"

#include "fluewright/advice/trial/change.hpp"
#include "fluewright/core/numeric/distribution.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {
namespace {

/// The shares of a normal range that lie beyond what can be computed.
struct Bell {
    double below{};
    double above{};
};

Bell bell_of(const VariedRange& range, std::size_t member) {
    const Varied& varied = range.together[member];
    const double mean = varied.values.front();
    const double deviation = range.deviations[member];
    return {normal_share((varied.key.lowest - mean) / deviation),
            normal_share((mean - varied.key.highest) / deviation)};
}

/// The value at a place in the spread of a range, 0 to 1.
double sampled(const VariedRange& range, std::size_t member, double place) {
    const Varied& varied = range.together[member];
    const std::vector<double>& values = varied.values;
    switch (range.spread) {
    case Spread::uniform: {
        const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
        // Coupled values go up or down as they were written.
        const bool falls = values.front() > values.back();
        const double share = falls ? 1.0 - place : place;
        return *least + share * (*greatest - *least);
    }
    case Spread::triangular:
        return triangular_quantile(place, values[0], values[1], values[2]);
    case Spread::normal: {
        const Bell bell = bell_of(range, member);
        const double share = bell.below + place * (1.0 - bell.below - bell.above);
        const double value = values.front() + range.deviations[member] * normal_quantile(share);
        return std::clamp(value, varied.key.lowest, varied.key.highest); // of rounding alone
    }
    case Spread::listed:
        break;
    }
    return values[static_cast<std::size_t>(place * static_cast<double>(values.size()))];
}

} // namespace

double share_left_out(const VariedRange& range, std::size_t member) {
    if (range.spread != Spread::normal) {
        return 0.0;
    }
    const Bell bell = bell_of(range, member);
    return bell.below + bell.above;
}

std::size_t combinations(const std::vector<VariedRange>& ranges) {
    std::size_t count = 1;
    for (const VariedRange& range : ranges) {
        const std::size_t values = range.together.front().values.size();
        if (values > 0 && count > std::numeric_limits<std::size_t>::max() / values) {
            return std::numeric_limits<std::size_t>::max();
        }
        count *= values;
    }
    return count;
}

Variations Variations::every_combination(const Installation& written,
                                         std::vector<VariedRange> ranges) {
    const std::size_t size = combinations(ranges);
    return {written, std::move(ranges), size};
}

Variations Variations::latin_hypercube(const Installation& written,
                                       std::vector<VariedRange> ranges,
                                       std::size_t samples,
                                       std::uint64_t seed) {
    const std::size_t dimensions = ranges.size();
    Variations made(written, std::move(ranges), samples);
    made.places_.emplace(samples, dimensions, seed);
    return made;
}

Variations Variations::sobol_sequence(const Installation& written,
                                      std::vector<VariedRange> ranges,
                                      std::size_t samples,
                                      std::uint64_t seed) {
    const std::size_t dimensions = ranges.size();
    Variations made(written, std::move(ranges), samples);
    made.sequence_.emplace(dimensions, seed);
    return made;
}

std::vector<double> Variations::values(std::size_t index) const {
    std::vector<double> values;
    std::size_t rest = size_;
    for (std::size_t i = 0; i < ranges_.size(); ++i) {
        const VariedRange& range = ranges_[i];
        const std::size_t count = range.together.front().values.size();
        std::size_t chosen = 0;
        if (!samples()) {
            // The last range changes fastest.
            rest /= count;
            chosen = index / rest % count;
        }
        const double place = places_     ? places_->at(index, i)
                             : sequence_ ? sequence_->at(index, i)
                                         : 0.0;
        for (std::size_t member = 0; member < range.together.size(); ++member) {
            values.push_back(samples() ? sampled(range, member, place)
                                       : range.together[member].values[chosen]);
        }
    }
    return values;
}

std::string Variations::id(std::size_t index, std::string_view base) const {
    constexpr int sample_digits = 4;
    std::string id{base};
    if (samples()) {
        const std::string number = std::to_string(index + 1);
        const std::size_t width = std::to_string(size_).size();
        id += '-' + std::string(width - number.size(), '0') + number;
    }
    const std::vector<double> values = this->values(index);
    const bool us = written_.us_quantities > written_.metric_quantities;
    std::size_t next = 0;
    for (const VariedRange& range : ranges_) {
        for (const Varied& varied : range.together) {
            id += ' ' + varied.key.name + '='
                  + value_words(varied.key,
                                values[next++],
                                us ? UnitSystem::us : UnitSystem::metric,
                                samples() ? sample_digits : 0);
        }
    }
    return id;
}

Result<Installation, std::string> Variations::at(std::size_t index, std::string_view base) const {
    const std::vector<double> values = this->values(index);
    std::vector<Change> changes;
    changes.reserve(ranges_.size());
    for (const VariedRange& range : ranges_) {
        for (const Varied& varied : range.together) {
            changes.emplace_back(OtherValue{varied.key, values[changes.size()]});
        }
    }
    Result<Installation, std::string> varied = changed(changes, written_);
    if (varied) {
        varied->id = id(index, base);
    }
    return varied;
}

} // namespace fluewright
