#include "fluewright/advice/study/variations.hpp"

#include "fluewright/advice/trial/change.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {

std::size_t combinations(const std::vector<VariedRange>& ranges) {
    std::size_t count = 1;
    for (const VariedRange& range : ranges) {
        const std::size_t values = range.varied.values.size();
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
    std::vector<double> values(ranges_.size());
    std::size_t rest = index;
    for (std::size_t i = ranges_.size(); i > 0; --i) {
        const std::vector<double>& choices = ranges_[i - 1].varied.values;
        if (!places_) {
            values[i - 1] = choices[rest % choices.size()];
            rest /= choices.size();
            continue;
        }
        const double place = places_->at(index, i - 1);
        if (ranges_[i - 1].any_between) {
            const auto [least, greatest] = std::minmax_element(choices.begin(), choices.end());
            values[i - 1] = *least + place * (*greatest - *least);
        } else {
            values[i - 1] =
                choices[static_cast<std::size_t>(place * static_cast<double>(choices.size()))];
        }
    }
    return values;
}

std::string Variations::id(std::size_t index, std::string_view base) const {
    const std::string number = std::to_string(index + 1);
    const std::size_t width = std::to_string(size_).size();
    return std::string{base} + '-' + std::string(width - number.size(), '0') + number;
}

Result<Installation, std::string> Variations::at(std::size_t index, std::string_view base) const {
    const std::vector<double> values = this->values(index);
    std::vector<Change> changes;
    changes.reserve(ranges_.size());
    for (std::size_t i = 0; i < ranges_.size(); ++i) {
        changes.emplace_back(OtherValue{ranges_[i].varied.key, values[i]});
    }
    Result<Installation, std::string> varied = changed(changes, written_);
    if (varied) {
        varied->id = id(index, base);
    }
    return varied;
}

} // namespace fluewright
