#include "core/quantity/number_text.hpp"
#include "fluewright/advice/study/variations.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <array>

namespace fluewright {
namespace {

/// One of the numbers that go together.
struct OneRange {
    Varied varied;
    Spread spread{};
    double deviation{};
};

using ReadOne = Result<OneRange, std::string>;

std::string joined_value(std::string_view name, std::string_view value) {
    return std::string{name} + '=' + std::string{value};
}

/// "5..8 in": the sizes of inches, or of millimetres, between.
ReadOne
trade_sizes_between(std::string_view name, std::string_view range, const Installation& written) {
    auto read = read_varied(joined_value(name, range), written);
    if (!read) {
        return Failure{read.error()};
    }
    if (read->key.kind != Kind::length) {
        return Failure{read->key.name + " is no length: the trade has no sizes of it"};
    }
    const auto [least, greatest] = std::minmax_element(read->values.begin(), read->values.end());
    const std::string_view system =
        range.find("in") != std::string_view::npos || range.find("ft") != std::string_view::npos
            ? "inch"
            : "metric";
    std::vector<double> sizes;
    constexpr double rounding_m = 1e-6;
    for (const catalog::TradeSize& size : catalog::trade_sizes()) {
        if (size.system == system && size.inside_diameter_m >= *least - rounding_m
            && size.inside_diameter_m <= *greatest + rounding_m) {
            sizes.push_back(size.inside_diameter_m);
        }
    }
    if (sizes.empty()) {
        return Failure{read->key.name + ": the trade has no size in " + std::string{range}};
    }
    read->values = std::move(sizes);
    return OneRange{.varied = std::move(read).value()};
}

/// "18 % sd 3 %"
ReadOne normal_round(std::string_view name,
                     std::string_view mean,
                     std::string_view deviation,
                     const Installation& written) {
    auto read = read_varied(joined_value(name, mean), written);
    if (!read) {
        return Failure{read.error()};
    }
    const auto spread = parse_range(deviation, tolerance_kind(read->key.kind));
    if (!spread) {
        return Failure{read->key.name + ": " + spread.error()};
    }
    if (read->values.size() != 1 || spread->size() != 1 || spread->front() <= 0.0) {
        return Failure{read->key.name
                       + ": write one mean and one deviation over 0, such as 18 % sd 3 %"};
    }
    return OneRange{
        .varied = std::move(read).value(), .spread = Spread::normal, .deviation = spread->front()};
}

/// "5..6..8 m"
ReadOne
triangular_between(std::string_view name, std::string_view value, const Installation& written) {
    std::string list{value};
    for (auto dots = list.find(".."); dots != std::string::npos; dots = list.find("..")) {
        list.replace(dots, 2, ",");
    }
    auto read = read_varied(joined_value(name, list), written);
    if (!read) {
        return Failure{read.error()};
    }
    if (read->values.size() != 3 || !std::is_sorted(read->values.begin(), read->values.end())) {
        return Failure{read->key.name
                       + ": write the least, the most likely and the greatest, such as 5..6..8 m"};
    }
    return OneRange{.varied = std::move(read).value(), .spread = Spread::triangular};
}

ReadOne read_one(std::string_view typed, const Installation& written) {
    constexpr std::string_view trade = "trade ";
    constexpr std::string_view deviation = " sd ";
    typed = number_text::trimmed(typed);
    const auto equals = typed.find('=');
    const std::string_view name = typed.substr(0, std::min(equals, typed.size()));
    const std::string_view value =
        equals == std::string_view::npos ? "" : number_text::trimmed(typed.substr(equals + 1));
    if (value.starts_with(trade)) {
        return trade_sizes_between(name, value.substr(trade.size()), written);
    }
    if (const auto at = value.find(deviation); at != std::string_view::npos) {
        return normal_round(
            name, value.substr(0, at), value.substr(at + deviation.size()), written);
    }
    const auto dots = value.find("..");
    if (dots != std::string_view::npos && value.find("..", dots + 2) != std::string_view::npos) {
        return triangular_between(name, value, written);
    }
    auto read = read_varied_words(typed, written);
    if (!read) {
        return Failure{read.error()};
    }
    return OneRange{.varied = std::move(read).value(),
                    .spread = dots != std::string_view::npos ? Spread::uniform : Spread::listed};
}

} // namespace

Result<VariedRange, std::string> read_varied_range(std::string_view typed,
                                                   const Installation& written) {
    VariedRange range;
    for (;;) {
        const auto next = typed.find('&');
        auto one = read_one(typed.substr(0, next), written);
        if (!one) {
            return Failure{one.error()};
        }
        if (range.together.empty()) {
            range.spread = one->spread;
        } else if (one->spread != range.spread
                   || one->varied.values.size() != range.together.front().values.size()) {
            return Failure{range.together.front().key.name + " and " + one->varied.key.name
                           + " go together: give both equally many values, in the same way"};
        }
        range.together.push_back(std::move(one->varied));
        if (range.spread == Spread::normal) {
            range.deviations.push_back(one->deviation);
        }
        if (next == std::string_view::npos) {
            return range;
        }
        typed = typed.substr(next + 1);
    }
}

} // namespace fluewright
