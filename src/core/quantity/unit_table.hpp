#pragma once

#include "fluewright/core/quantity/quantity.hpp"

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

namespace fluewright::unit_table {

/// A conversion factor as a fraction, so that one that is exact by definition is rounded only once.
struct Ratio {
    double over = 1.0;
    double under = 1.0;
};

/// The system a unit counts to when the units of the output follow those of the input.
enum class Family : std::uint8_t { neither, metric, us };

/// How a typed number x becomes SI, after the factor is applied.
enum class Scale : std::uint8_t {
    linear,
    dry_basis, ///< x / (1 + x)
    tangent,   ///< tan(x)
};

/// A unit. Either the power of ten or the ratio is used, never both.
struct Unit {
    std::string_view symbol;
    Family family = Family::neither;
    int power = 0;
    Ratio ratio{};
    double offset = 0.0; ///< added to the typed number before the factor
    Scale scale = Scale::linear;
    bool case_matters = false;      ///< another case means another size (MJ, mJ)
    bool basis_stated = false;      ///< moisture on a named basis
    bool written = false;           ///< write_quantity may choose it
    std::string_view followed_by{}; ///< the smaller unit that may follow, as inches follow feet
    std::string_view also{};        ///< other spellings, split by '|'; blanks in them are optional
};

/// Up to which size a unit is used to show a value.
struct Shown {
    std::string_view unit;
    double below_si = 0.0; ///< 0: any size
    int most_decimals = 3;
    bool all_decimals = false; ///< always show so many decimals, instead of significant digits
};

struct KindFacts {
    std::string_view name;
    std::string_view si_unit;
    std::string_view json_suffix;
    std::string_view example;
    std::array<std::string_view, 2> help_units; ///< those put behind a number that lacks one
    std::span<const Shown> shown_metric;
    std::span<const Shown> shown_us;
};

[[nodiscard]] const KindFacts& facts(Kind kind);

[[nodiscard]] std::span<const Unit> units(Kind kind);

/// Unit text brought to the form of the table: "°C" to "degC", "h·ft²" to "h ft2", "in. w.c." to
/// "in wc". Empty when it is longer than any unit.
class UnitText {
public:
    explicit UnitText(std::string_view typed);

    [[nodiscard]] std::string_view view() const { return {text_.data(), size_}; }

private:
    void append(std::string_view piece);

    std::array<char, 40> text_{};
    std::size_t size_ = 0;
    bool overflow_ = false;
};

/// The unit of `kind` that the text names; null when there is none.
[[nodiscard]] const Unit* find(const UnitText& text, Kind kind);

/// As find(), by the symbol used in the table.
[[nodiscard]] const Unit* by_symbol(std::string_view symbol, Kind kind);

/// Whether the text spells the word: letter case and optional blanks aside.
[[nodiscard]] bool spells(std::string_view text, std::string_view word, bool case_matters);

/// A difference between two quantities, no offset and no curve, in SI.
[[nodiscard]] double scaled(double amount, const Unit& unit);

/// A value that is already multiplied by 10^unit.power, in SI.
[[nodiscard]] double to_si(double amount, const Unit& unit);

/// The number to be written before the unit.
[[nodiscard]] double from_si(double si, const Unit& unit);

/// Change of the SI value per change of the scaled number, at that SI value.
[[nodiscard]] double steepness(double si, const Unit& unit);

} // namespace fluewright::unit_table
