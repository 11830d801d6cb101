#include "fluewright/model/fields/fields.hpp"
#include "random_installation.hpp"
#include "takers.hpp"

#include <algorithm>
#include <array>
#include <vector>

using fluewright::property::Random;

namespace fuzz {
namespace {

/// Near misses of what a text holds: more likely to get deep than random bytes.
constexpr std::array snippets{"0",
                              "-1",
                              "1e308",
                              "1e-308",
                              "nan",
                              "\"0 m\"",
                              "\"-3 m\"",
                              "\"1e9 m\"",
                              "null",
                              "true",
                              "[]",
                              "{}",
                              "\"\"",
                              "\"°C\"",
                              "\xff\xfe",
                              "\xef\xbb\xbf",
                              "\xe2\x80\xae",
                              "\x1b[2J",
                              "\\u0000",
                              "\\ud800",
                              "\"6\"",
                              "\"70 %\"",
                              "\"100 m\"",
                              "\"1 mm\"",
                              "\"50 mm\"",
                              "\"1 m\"",
                              ",",
                              "}",
                              "\"up\"",
                              "\"elbow\"",
                              "\"cap\"",
                              "\"outdoors\"",
                              "\"1200 degC\"",
                              "\"0.1 kg/h\"",
                              "\"200 kg/h\"",
                              "\"99 %\"",
                              "//",
                              "/*",
                              "\"±\"",
                              "\"20 degC ± 5 K\"",
                              "1/2",
                              "..",
                              " dry",
                              "yes",
                              "stop",
                              "=1+1"};

/// Texts that stood in the place of a value, and keys: any the tables know.
std::string_view any_key(Random& random) {
    static const std::vector<std::string_view> keys = [] {
        std::vector<std::string_view> all;
        const auto add = [&all](const auto& rows) {
            for (const auto& row : rows) {
                all.push_back(row.info.key);
            }
        };
        add(fluewright::fields<fluewright::Installation>());
        add(fluewright::fields<fluewright::Appliance>());
        add(fluewright::fields<fluewright::Part>());
        add(fluewright::fields<fluewright::Site>());
        add(fluewright::fields<fluewright::StockPiece>());
        add(fluewright::fields<fluewright::Observation>());
        return all;
    }();
    return random.one_of(keys);
}

void change_once(std::string& text, Random& random) {
    const std::size_t at = random.index(text.size());
    switch (random.index(7)) {
    case 0:
        text[at] = static_cast<char>(random.index(256));
        break;
    case 1:
        text.erase(at, 1 + random.index(12));
        break;
    case 2:
        text.insert(at, random.one_of(snippets));
        break;
    case 3:
        text.insert(at, text.substr(random.index(text.size()), random.index(40)));
        break;
    case 4: {
        // Another value in the place of a quoted one.
        const std::size_t open = text.find(": \"", at);
        const std::size_t close = open == std::string::npos ? open : text.find('"', open + 3);
        if (close != std::string::npos) {
            text.replace(open + 2, close - open - 1, random.one_of(snippets));
        }
        break;
    }
    case 5: {
        // Another key in the place of one.
        const std::size_t close = text.find("\":", at);
        const std::size_t open = close == std::string::npos || close == 0
                                     ? std::string::npos
                                     : text.rfind('"', close - 1);
        if (open != std::string::npos) {
            text.replace(open + 1, close - open - 1, any_key(random));
        }
        break;
    }
    default: {
        // A digit changed: values out of the ordinary, but well formed.
        const std::size_t digit = text.find_first_of("0123456789", at);
        if (digit != std::string::npos) {
            text[digit] = static_cast<char>('0' + random.index(10));
        }
        break;
    }
    }
}

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

} // namespace

std::string change_text(std::string_view text, std::uint64_t seed) {
    Random random{seed};
    std::string changed{text.empty() ? std::string_view{"{}"} : text};
    const std::size_t times = 1 + random.index(4);
    for (std::size_t i = 0; i < times && !changed.empty(); ++i) {
        change_once(changed, random);
    }
    return changed;
}

std::string change_lines(std::string_view text, std::uint64_t seed) {
    Random random{seed};
    if (random.chance(0.4) || text.empty()) {
        return change_text(text, random.bits());
    }
    std::vector<std::string> lines = lines_of(text);
    const std::size_t at = random.index(lines.size());
    switch (random.index(6)) {
    case 0:
        lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(at),
                     lines[random.index(lines.size())]);
        break;
    case 1:
        lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
        break;
    case 2:
        std::swap(lines[at], lines[random.index(lines.size())]);
        break;
    case 3: // cut off
        lines[at].resize(random.index(lines[at].size() + 1));
        break;
    case 4: // broken in two
        lines[at].insert(random.index(lines[at].size() + 1), "\n");
        break;
    default: // joined with the next
        if (at + 1 < lines.size()) {
            lines[at] += lines[at + 1];
            lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at) + 1);
        }
        break;
    }
    std::string joined;
    for (const std::string& line : lines) {
        joined += line + '\n';
    }
    if (random.chance(0.2) && !joined.empty()) {
        joined.pop_back();
    }
    return joined;
}

} // namespace fuzz
