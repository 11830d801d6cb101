#include "fluewright/advice/study/variations.hpp"

#include "fluewright/advice/trial/change.hpp"
#include "fluewright/core/numeric/distribution.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {
namespace {

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
        const double value = values.front() + range.deviations[member] * normal_quantile(place);
        return std::clamp(value, varied.key.lowest, varied.key.highest);
    }
    case Spread::listed:
        break;
    }
    return values[static_cast<std::size_t>(place * static_cast<double>(values.size()))];
}

} // namespace

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

std::vector<double> Variations::values(std::size_t index) const {
    std::vector<double> values;
    std::size_t rest = size_;
    for (std::size_t i = 0; i < ranges_.size(); ++i) {
        const VariedRange& range = ranges_[i];
        const std::size_t count = range.together.front().values.size();
        std::size_t chosen = 0;
        if (!places_) {
            // The last range changes fastest.
            rest /= count;
            chosen = index / rest % count;
        }
        for (std::size_t member = 0; member < range.together.size(); ++member) {
            values.push_back(places_ ? sampled(range, member, places_->at(index, i))
                                     : range.together[member].values[chosen]);
        }
    }
    return values;
}

std::string Variations::id(std::size_t index, std::string_view base) const {
    std::string id{base};
    if (places_) {
        const std::string number = std::to_string(index + 1);
        const std::size_t width = std::to_string(size_).size();
        return id + '-' + std::string(width - number.size(), '0') + number;
    }
    const std::vector<double> values = this->values(index);
    const bool us = written_.us_quantities > written_.metric_quantities;
    std::size_t next = 0;
    for (const VariedRange& range : ranges_) {
        for (const Varied& varied : range.together) {
            std::string value = write_quantity(
                values[next++], varied.key.kind, us ? UnitSystem::us : UnitSystem::metric);
            value.erase(std::remove(value.begin(), value.end(), ' '), value.end());
            id += ' ' + varied.key.name + '=' + value;
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
