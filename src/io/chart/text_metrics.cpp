#include "text_metrics.hpp"

#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>

namespace fluewright::chart {
namespace {

/// Thousandths of the font size, of the characters U+0020 to U+007E.
constexpr std::array<short, 95> regular_ascii{
    318,  401, 460, 838, 637, 951, 780, 275,  391, 391, 500, 838, 318, 372, 318, 452,
    637,  637, 637, 637, 637, 637, 637, 637,  637, 637, 337, 337, 838, 838, 838, 557,
    1016, 685, 687, 723, 771, 667, 611, 778,  764, 295, 500, 667, 558, 929, 764, 801,
    667,  801, 723, 667, 611, 736, 685, 1036, 686, 667, 686, 391, 452, 391, 838, 557,
    500,  613, 635, 550, 635, 616, 353, 635,  634, 278, 278, 580, 278, 975, 634, 612,
    635,  635, 412, 521, 393, 634, 592, 818,  592, 592, 525, 637, 337, 637, 838};
constexpr std::array<short, 95> bold_ascii{
    349,  457, 521, 838, 696, 1002, 873, 307,  458, 458, 523, 838, 380, 416,  380, 466,
    696,  696, 696, 696, 696, 696,  696, 696,  696, 696, 400, 400, 838, 838,  838, 611,
    1000, 774, 763, 734, 831, 684,  684, 821,  837, 373, 557, 775, 638, 996,  837, 851,
    733,  851, 771, 721, 683, 813,  774, 1104, 771, 725, 726, 458, 466, 458,  838, 557,
    500,  675, 716, 593, 716, 679,  436, 716,  712, 343, 343, 666, 343, 1042, 712, 688,
    716,  716, 494, 596, 479, 712,  652, 924,  646, 652, 583, 712, 366, 712,  838};

/// The same of U+00A0 to U+00FF.
constexpr std::array<short, 96> regular_latin{
    318, 401, 637, 637, 637, 637, 337,  557, 500, 1000, 472, 612, 838, 372, 1000, 553,
    500, 838, 401, 401, 500, 650, 701,  318, 500, 401,  472, 612, 970, 970, 970,  611,
    685, 685, 685, 685, 685, 685, 1000, 723, 667, 667,  667, 667, 295, 295, 295,  295,
    775, 764, 801, 801, 801, 801, 801,  838, 801, 736,  736, 736, 736, 667, 667,  630,
    613, 613, 613, 613, 613, 613, 982,  550, 616, 616,  616, 616, 278, 278, 278,  278,
    612, 634, 612, 612, 612, 612, 612,  838, 612, 634,  634, 634, 634, 592, 635,  592};
constexpr std::array<short, 96> bold_latin{
    349, 457, 696, 696, 637, 696, 366,  557, 500, 1000, 564, 646, 838,  416,  1000, 553,
    500, 838, 438, 438, 500, 736, 737,  380, 500, 438,  564, 646, 1036, 1036, 1036, 611,
    774, 774, 774, 774, 774, 774, 1085, 734, 684, 684,  684, 684, 373,  373,  373,  373,
    838, 837, 851, 851, 851, 851, 851,  838, 851, 813,  813, 813, 813,  725,  738,  720,
    675, 675, 675, 675, 675, 675, 1048, 593, 679, 679,  679, 679, 343,  343,  343,  343,
    688, 712, 688, 688, 688, 688, 688,  838, 688, 712,  712, 712, 712,  652,  716,  652};

/// The widest of a block, of the characters below `before`.
struct Block {
    unsigned before;
    short regular;
    short bold;
};

/// Scripts that none of the fonts measured has are set on a square.
constexpr std::array<Block, 8> blocks{{{0x250U, 1422, 1556},
                                       {0x530U, 1310, 1406},
                                       {0x1100U, 1500, 1600},
                                       {0x2000U, 1650, 2020},
                                       {0x2100U, 1740, 1890},
                                       {0x2E80U, 1650, 2020},
                                       {0xA000U, 1100, 1150},
                                       {0x10000U, 1530, 1720}}};
constexpr short beyond = 1500;

/// The code of the character at a byte, and its length. The text is whole UTF-8.
struct Character {
    unsigned code;
    std::size_t length;
};

Character character_at(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    const std::size_t length = first < 0x80U ? 1 : first < 0xE0U ? 2 : first < 0xF0U ? 3 : 4;
    unsigned code = length == 1 ? first : first & (0x7FU >> length);
    const std::size_t end = std::min(text.size(), at + length);
    for (std::size_t i = at + 1; i < end; ++i) {
        code = code << 6U | (static_cast<unsigned char>(text[i]) & 0x3FU);
    }
    return {code, end - at};
}

short thousandths(unsigned code, Weight weight) {
    const bool bold = weight == Weight::bold;
    if (code >= 0x20U && code < 0x7FU) {
        return bold ? bold_ascii[code - 0x20U] : regular_ascii[code - 0x20U];
    }
    if (code >= 0xA0U && code < 0x100U) {
        return bold ? bold_latin[code - 0xA0U] : regular_latin[code - 0xA0U];
    }
    const auto* block = std::find_if(
        blocks.begin(), blocks.end(), [code](const Block& b) { return code < b.before; });
    return block == blocks.end() ? beyond : bold ? block->bold : block->regular;
}

/// Bytes of as many of the first characters as the width takes; at least one character.
std::size_t bytes_within(std::string_view text, double width, double size, Weight weight) {
    double taken = 0.0;
    std::size_t at = 0;
    while (at < text.size()) {
        const Character next = character_at(text, at);
        taken += size * thousandths(next.code, weight) / 1000.0;
        if (taken > width && at > 0) {
            break;
        }
        at += next.length;
    }
    return at;
}

} // namespace

double text_width(std::string_view text, double size, Weight weight) {
    double sum = 0.0;
    for (std::size_t at = 0; at < text.size();) {
        const Character next = character_at(text, at);
        sum += thousandths(next.code, weight);
        at += next.length;
    }
    return sum * size / 1000.0;
}

std::vector<std::string> wrap_to(std::string_view text, double width, double size, Weight weight) {
    const std::string clean = json::visible(text);
    std::vector<std::string> lines{""};
    std::string_view left = clean;
    while (!left.empty()) {
        const std::size_t blank = left.find(' ');
        std::string_view word = left.substr(0, blank);
        left = blank == std::string_view::npos ? std::string_view{} : left.substr(blank + 1);
        if (word.empty()) {
            continue;
        }
        const std::string longer =
            lines.back().empty() ? std::string{word} : lines.back() + ' ' + std::string{word};
        if (text_width(longer, size, weight) <= width) {
            lines.back() = longer;
            continue;
        }
        if (!lines.back().empty()) {
            lines.emplace_back();
        }
        while (text_width(word, size, weight) > width) {
            const std::size_t cut = bytes_within(word, width, size, weight);
            lines.back() = word.substr(0, cut);
            lines.emplace_back();
            word.remove_prefix(cut);
        }
        lines.back() = word;
    }
    if (lines.size() > 1 && lines.back().empty()) {
        lines.pop_back();
    }
    return lines;
}

std::string fitted(std::string_view text, double width, double size, Weight weight) {
    std::string clean = json::visible(text);
    if (text_width(clean, size, weight) <= width) {
        return clean;
    }
    constexpr std::string_view dots = "...";
    const double room = width - text_width(dots, size, weight);
    clean.resize(bytes_within(clean, std::max(0.0, room), size, weight));
    return clean + std::string{dots};
}

} // namespace fluewright::chart
