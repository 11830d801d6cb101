#pragma once

#include "advice/checks/view.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// How a rule is held against a file: one small function for each row of data/rules.csv, in files
/// of one subject.
namespace fluewright::checking {

/// What a rule came to, before it is tied to its row.
struct Verdict {
    CheckOutcome outcome{CheckOutcome::does_not_apply};
    std::string place;
    int part{-1};
    Kind kind{Kind::number};
    std::optional<double> figure;
    std::optional<double> limit;
    std::optional<double> weight; ///< how bad it is, where no figure against its limit tells
    std::string message;
    std::vector<std::string> missing;
    std::vector<Asked> asked; ///< where undetermined: what would have to hold
};

enum class Needs : std::uint8_t { shape, solution };

struct Entry {
    std::string_view id;
    Verdict (*check)(const View&, const catalog::Rule&);
    Needs needs{Needs::shape};
};

/// The function of every row of catalog::rules(), beside it; null where there is none.
[[nodiscard]] std::span<const Entry* const> rule_entries();

[[nodiscard]] std::span<const Entry> connector_checks();
[[nodiscard]] std::span<const Entry> pipe_checks();
[[nodiscard]] std::span<const Entry> passage_checks();
[[nodiscard]] std::span<const Entry> distance_checks();
[[nodiscard]] std::span<const Entry> chimney_distance_checks();
[[nodiscard]] std::span<const Entry> heater_distance_checks();
[[nodiscard]] std::span<const Entry> floor_checks();
[[nodiscard]] std::span<const Entry> flue_checks();
[[nodiscard]] std::span<const Entry> fireplace_checks();
[[nodiscard]] std::span<const Entry> chimney_checks();
[[nodiscard]] std::span<const Entry> chimney_top_checks();
[[nodiscard]] std::span<const Entry> chimney_top_abroad_checks();
[[nodiscard]] std::span<const Entry> air_checks();
[[nodiscard]] std::span<const Entry> surface_and_fuel_checks();

// The answers a rule can give.
[[nodiscard]] Verdict not_here(std::string_view why);
[[nodiscard]] Verdict decided(bool met, std::string message);

/// Open for want of these keys. `asked` says what would have to hold; left out, the words of the
/// row do.
[[nodiscard]] Verdict unknown(std::vector<std::string> missing, std::string asked = {});

/// Open for want of one key, whose figure would have to be `limit` at the least.
[[nodiscard]] Verdict
open_at_least(const View& view, double limit, Kind kind, std::string what, std::string key);
[[nodiscard]] Verdict
at_least(const View& view, double figure, double limit, Kind kind, std::string what);
[[nodiscard]] Verdict
at_most(const View& view, double figure, double limit, Kind kind, std::string what);

/// at_least where the file gives the figure, else open.
[[nodiscard]] Verdict given_at_least(const View& view,
                                     const Given& given,
                                     double limit,
                                     Kind kind,
                                     std::string what,
                                     std::string key);

[[nodiscard]] Verdict at(const View& view, const Piece& piece, Verdict verdict);

/// The distance of a piece to what burns, as it stands, against the least; open where the file does
/// not give it.
[[nodiscard]] Verdict to_what_burns(const View& view,
                                    const Piece& piece,
                                    double least_m,
                                    std::string_view what = "clearance to combustibles");

/// The same with words put behind what would be asked: "..., or 9 in behind a shield".
[[nodiscard]] Verdict or_else(Verdict open, std::string_view words);

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
    std::vector<Asked> asked_;

    /// Where and how something is not met.
    struct Failed {
        std::string place;
        std::string message;

        [[nodiscard]] bool operator==(const Failed&) const = default;
    };

    std::vector<Failed> failed_;
};

/// The same where only what the file tells is held: of a matter that no body was chosen for.
template <Verdict (*Check)(const View&, const catalog::Rule&)>
Verdict where_told(const View& view, const catalog::Rule& rule) {
    Verdict verdict = Check(view, rule);
    return verdict.outcome == CheckOutcome::undetermined ? not_here("the file does not tell it")
                                                         : verdict;
}

} // namespace fluewright::checking
