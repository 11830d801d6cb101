#include "rise_in_twelve.hpp"

#include "number_text.hpp"

#include <array>

namespace fluewright {
std::optional<double> rise_in_twelve(std::string_view text) {
    const auto figures = text.find_first_not_of("0123456789.");
    if (figures == 0 || figures == text.npos) {
        return std::nullopt;
    }
    const auto scan = number_text::scan(text.substr(0, figures));
    if (scan.problem != number_text::Problem::none || !scan.rest.empty()) {
        return std::nullopt;
    }
    const std::string_view rest = number_text::without_leading_blanks(text.substr(figures));
    constexpr std::array<std::string_view, 5> words{"/", ":", "in ", "on ", "-in-"};
    constexpr std::string_view twelve = "12";
    for (const std::string_view word : words) {
        if (!rest.starts_with(word)) {
            continue;
        }
        const auto run = number_text::without_leading_blanks(rest.substr(word.size()));
        if (!run.starts_with(twelve)) {
            return std::nullopt;
        }
        const auto unit = number_text::trimmed(run.substr(twelve.size()));
        return unit.empty() || unit == "in" ? std::optional{number_text::value(scan.number)}
                                            : std::nullopt;
    }
    return std::nullopt;
}

} // namespace fluewright
