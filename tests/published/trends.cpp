#include "trends.hpp"

#include <cmath>
#include <cstdlib>
#include <fmt/format.h>

namespace published {
namespace {

/// The value of one input in the text of a row; NaN where the row has none.
double value_in(const std::string& inputs, const std::string& name) {
    const std::string key = name + "=";
    std::size_t at = inputs.rfind(key, 0) == 0 ? 0 : inputs.find(";" + key);
    if (at == std::string::npos) {
        return std::nan("");
    }
    at += key.size() + (at == 0 ? 0 : 1);
    return std::strtod(inputs.c_str() + at, nullptr);
}

struct Mean {
    double sum{};
    std::size_t count{};
};

} // namespace

std::string trends_of(const std::vector<Outcome>& outcomes,
                      const std::vector<std::string>& inputs) {
    std::string text;
    for (const std::string& name : inputs) {
        std::map<double, Mean> means;
        for (const Outcome& outcome : outcomes) {
            const double value = value_in(outcome.row.inputs, name);
            if (std::isfinite(value)) {
                Mean& mean = means[value];
                mean.sum += std::log(outcome.computed / outcome.row.expected);
                ++mean.count;
            }
        }
        std::string head = "| " + name;
        std::string line = "| ---";
        std::string ratio = "| computed over published";
        std::string rows = "| rows";
        for (const auto& [value, mean] : means) {
            head += fmt::format(" | {:g}", value);
            line += " | ---:";
            ratio += fmt::format(" | {:.3f}", std::exp(mean.sum / static_cast<double>(mean.count)));
            rows += fmt::format(" | {}", mean.count);
        }
        text += head + " |\n" + line + " |\n" + ratio + " |\n" + rows + " |\n\n";
    }
    return text;
}

} // namespace published
