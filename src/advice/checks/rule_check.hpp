#pragma once

#include "fluewright/advice/checks/rules.hpp"

#include <span>

/// How a rule is held against a file: one small function for each row of data/rules.csv, in files
/// of one subject.
namespace fluewright::rule_check {

/// What a rule came to, before it is tied to its row.
struct Verdict {
    RuleOutcome outcome{RuleOutcome::does_not_apply};
    std::string place;
    int part{-1};
    Kind kind{Kind::number};
    std::optional<double> figure;
    std::optional<double> limit;
    std::string message;
    std::vector<std::string> missing;
};

/// A part of the run beside the section it became.
struct Piece {
    int index{};
    const Part* part{};
    const Section* section{};
    const WallBuild* wall{};
    bool in_chimney{};
    double height_m{}; ///< of its upper end, over the outlet

    [[nodiscard]] bool has_length() const { return section->length_m > 0.0; }

    [[nodiscard]] bool level() const {
        return has_length() && section->rise_m < 0.5 * section->length_m;
    }

    [[nodiscard]] std::string key(std::string_view name) const;
};

/// All a rule may look at.
class View {
public:
    View(const Installation& written, const Case& installation, const Solution& solution);

    const Installation& written;
    const Case& installation;
    const Solution& solution;
    std::vector<Piece> pieces;

    [[nodiscard]] const ApplianceCase& heater() const { return installation.appliance; }

    [[nodiscard]] bool solid_fuel() const;

    [[nodiscard]] bool fireplace() const { return heater().type == ApplianceType::fireplace; }

    [[nodiscard]] std::vector<const Piece*> connector() const;
    [[nodiscard]] std::vector<const Piece*> chimney() const;

    [[nodiscard]] double outlet_area_m2() const { return heater().outlet_area_m2; }

    /// Height of the mouth over the outlet.
    [[nodiscard]] double rise_m() const { return installation.total_rise_m(); }

    /// Useful output at high fire, kW.
    [[nodiscard]] double output_kw() const { return heater().high.heat_output_w / 1000.0; }

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return format_quantity(value, kind, installation.units);
    }

    [[nodiscard]] std::string place_of(const Piece& piece) const;
};

using Check = Verdict (*)(const View&, const catalog::Rule&);

struct Entry {
    std::string_view id;
    Check check;
};

[[nodiscard]] std::span<const Entry> connector_checks();
[[nodiscard]] std::span<const Entry> pipe_checks();
[[nodiscard]] std::span<const Entry> distance_checks();
[[nodiscard]] std::span<const Entry> heater_checks();
[[nodiscard]] std::span<const Entry> flue_checks();
[[nodiscard]] std::span<const Entry> fireplace_checks();
[[nodiscard]] std::span<const Entry> chimney_checks();
[[nodiscard]] std::span<const Entry> mouth_checks();
[[nodiscard]] std::span<const Entry> mouth_abroad_checks();
[[nodiscard]] std::span<const Entry> air_checks();
[[nodiscard]] std::span<const Entry> trade_checks();

// The answers a rule can give.
[[nodiscard]] Verdict not_here(std::string_view why);
[[nodiscard]] Verdict unknown(std::vector<std::string> missing);
[[nodiscard]] Verdict decided(bool met, std::string message);

/// Within half a millimetre or a thousandth counts as reached: documents round inches so.
[[nodiscard]] bool reaches(double figure, double limit, Kind kind);
[[nodiscard]] Verdict
at_least(const View& view, double figure, double limit, Kind kind, std::string what);
[[nodiscard]] Verdict
at_most(const View& view, double figure, double limit, Kind kind, std::string what);
[[nodiscard]] Verdict at(const View& view, const Piece& piece, Verdict verdict);

/// Several verdicts as one: the worst decides; what is missing is gathered.
class Fold {
public:
    explicit Fold(std::string_view why_not) : none_{why_not} {}

    void add(Verdict verdict);
    [[nodiscard]] Verdict result() const;

private:
    std::string_view none_;
    std::optional<Verdict> worst_;
    std::vector<std::string> missing_;

    /// Where and how something is not met.
    struct Failed {
        std::string place;
        std::string message;

        [[nodiscard]] bool operator==(const Failed&) const = default;
    };

    std::vector<Failed> failed_;
};

} // namespace fluewright::rule_check
