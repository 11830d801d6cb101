#include "number_text.hpp"
#include "unit_table.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright::unit_table {
namespace {

struct Replacement {
    std::string_view typed;
    std::string_view plain;
};

constexpr std::array<Replacement, 19> replacements = {{{"\u00B0", "deg"},
                                                       {"\u00BA", "deg"},
                                                       {"\u02DA", "deg"},
                                                       {"\u2103", "degC"},
                                                       {"\u2109", "degF"},
                                                       {"\u00B2", "2"},
                                                       {"\u00B3", "3"},
                                                       {"\u2082", "2"},
                                                       {"\u207B", "-"},
                                                       {"\u00B9", "1"},
                                                       {"\u00B7", " "},
                                                       {"\u22C5", " "},
                                                       {"\u2215", "/"},
                                                       {"\u2032", "'"},
                                                       {"\u2019", "'"},
                                                       {"\u2033", "\""},
                                                       {"\u201D", "\""},
                                                       {"\u00B5", "u"},
                                                       {"\u03BC", "u"}}};

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool spells_one_of(std::string_view text, std::string_view words, bool case_matters) {
    while (!words.empty()) {
        const std::size_t bar = std::min(words.find('|'), words.size());
        if (spells(text, words.substr(0, bar), case_matters)) {
            return true;
        }
        words.remove_prefix(std::min(bar + 1, words.size()));
    }
    return false;
}

double power_of_ten(int power) {
    double result = 1.0;
    for (int i = 0; i < std::abs(power); ++i) {
        result *= 10.0;
    }
    return result;
}

} // namespace

void UnitText::append(std::string_view piece) {
    if (size_ + piece.size() > text_.size()) {
        overflow_ = true;
        return;
    }
    std::copy(piece.begin(), piece.end(), text_.data() + size_);
    size_ += piece.size();
}

UnitText::UnitText(std::string_view typed) {
    bool blank = false;
    while (!typed.empty() && !overflow_) {
        if (const std::size_t length = number_text::blank_length(typed)) {
            blank = true;
            typed.remove_prefix(length);
            continue;
        }
        const char c = typed.front();
        std::string_view piece = typed.substr(0, 1);
        std::size_t length = 1;
        if (static_cast<unsigned char>(c) >= 0x80U) {
            for (const Replacement& each : replacements) {
                if (typed.starts_with(each.typed)) {
                    piece = each.plain;
                    length = each.typed.size();
                    break;
                }
            }
        }
        typed.remove_prefix(length);
        // Stops after letters, as in "in. w.c.", brackets and the caret of "m^2" carry no meaning.
        const bool after_letter = size_ > 0 && is_letter(text_[size_ - 1]);
        if (c == '(' || c == ')' || c == '^' || (c == '.' && after_letter)) {
            continue;
        }
        if (piece == " " || c == '*') {
            blank = true;
            continue;
        }
        const bool beside_slash = piece == "/" || (size_ > 0 && text_[size_ - 1] == '/');
        if (blank && size_ > 0 && !beside_slash) {
            append(" ");
        }
        blank = false;
        append(piece);
    }
    if (overflow_) {
        size_ = 0;
    }
}

bool spells(std::string_view text, std::string_view word, bool case_matters) {
    std::size_t at = 0;
    for (const char c : word) {
        if (at < text.size() && (case_matters ? text[at] == c : lower(text[at]) == lower(c))) {
            ++at;
        } else if (c != ' ') {
            return false;
        }
    }
    return at == text.size();
}

const Unit* find(const UnitText& text, Kind kind) {
    const std::string_view typed = text.view();
    if (typed.empty()) {
        return nullptr;
    }
    if (const Unit* unit = by_symbol(typed, kind)) {
        return unit;
    }
    for (const Unit& unit : units(kind)) {
        if (spells(typed, unit.symbol, unit.case_matters)
            || spells_one_of(typed, unit.also, unit.case_matters)) {
            return &unit;
        }
    }
    return nullptr;
}

const Unit* by_symbol(std::string_view symbol, Kind kind) {
    for (const Unit& unit : units(kind)) {
        if (unit.symbol == symbol) {
            return &unit;
        }
    }
    return nullptr;
}

double scaled(double amount, const Unit& unit) {
    return amount * unit.ratio.over / unit.ratio.under;
}

double to_si(double amount, const Unit& unit) {
    const double linear = scaled(amount + unit.offset, unit);
    switch (unit.scale) {
    case Scale::dry_basis:
        return linear / (1.0 + linear);
    case Scale::tangent:
        return std::tan(linear);
    case Scale::linear:
        break;
    }
    return linear;
}

double from_si(double si, const Unit& unit) {
    double linear = si;
    if (unit.scale == Scale::dry_basis) {
        // Nothing but water: there is no dry matter to refer to.
        linear = si < 1.0 ? si / (1.0 - si) : std::numeric_limits<double>::infinity();
    } else if (unit.scale == Scale::tangent) {
        linear = std::atan(si);
    }
    linear = linear * unit.ratio.under / unit.ratio.over - unit.offset;
    // What is left of two like numbers is rounding: 0 degF is no 6e-14 degF.
    constexpr double rounding = 1e-14;
    if (std::abs(linear) < rounding * std::abs(unit.offset)) {
        linear = 0.0;
    }
    const double ten = power_of_ten(unit.power);
    return unit.power < 0 ? linear * ten : linear / ten;
}

double steepness(double si, const Unit& unit) {
    switch (unit.scale) {
    case Scale::dry_basis:
        return (1.0 - si) * (1.0 - si);
    case Scale::tangent:
        return 1.0 + si * si;
    case Scale::linear:
        break;
    }
    return 1.0;
}

} // namespace fluewright::unit_table
