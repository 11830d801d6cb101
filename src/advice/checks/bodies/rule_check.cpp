#include "rule_check.hpp"

#include "advice/checks/label.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::checking {

namespace {

const Entry* find_entry(std::string_view id) {
    for (const auto entries : {connector_checks(),
                               pipe_checks(),
                               passage_checks(),
                               distance_checks(),
                               chimney_distance_checks(),
                               heater_distance_checks(),
                               floor_checks(),
                               flue_checks(),
                               fireplace_checks(),
                               chimney_checks(),
                               chimney_top_checks(),
                               chimney_top_abroad_checks(),
                               air_checks(),
                               surface_and_fuel_checks()}) {
        for (const Entry& entry : entries) {
            if (entry.id == id) {
                return &entry;
            }
        }
    }
    return nullptr;
}

std::vector<const Entry*> in_order_of_rules() {
    std::vector<const Entry*> entries;
    entries.reserve(catalog::rules().size());
    for (const catalog::Rule& rule : catalog::rules()) {
        entries.push_back(find_entry(rule.id));
    }
    return entries;
}

} // namespace

std::span<const Entry* const> rule_entries() {
    static const std::vector<const Entry*> entries = in_order_of_rules();
    return entries;
}

Verdict not_here(std::string_view why) {
    Verdict v;
    v.message = why;
    return v;
}

Verdict unknown(std::vector<std::string> missing, std::string asked) {
    Verdict v;
    v.outcome = CheckOutcome::undetermined;
    v.asked.push_back({.place = {}, .part = -1, .words = std::move(asked), .missing = missing});
    v.missing = std::move(missing);
    return v;
}

Verdict
open_at_least(const View& view, double limit, Kind kind, std::string what, std::string key) {
    Verdict v = unknown({std::move(key)},
                        view.with_words ? std::move(what) + " at least " + view.show(limit, kind)
                                        : std::string{});
    v.kind = kind;
    v.limit = limit;
    return v;
}

Verdict given_at_least(const View& view,
                       const Given& given,
                       double limit,
                       Kind kind,
                       std::string what,
                       std::string key) {
    return given ? at_least(view, *given, limit, kind, std::move(what))
                 : open_at_least(view, limit, kind, std::move(what), std::move(key));
}

Verdict to_what_burns(const View& view, const Piece& piece, double least_m, std::string_view what) {
    Verdict v = given_at_least(view,
                               piece.part->clearance_m,
                               least_m,
                               Kind::length,
                               std::string{what},
                               piece.key("clearance"));
    const std::string label =
        v.outcome == CheckOutcome::met ? std::string{} : uncounted_label(view, piece);
    v.message += v.outcome == CheckOutcome::not_met ? label : "";
    return at(view, piece, or_else(std::move(v), label));
}

Verdict or_else(Verdict open, std::string_view words) {
    for (Asked& asked : open.asked) {
        asked.words += asked.words.empty() ? "" : words;
    }
    return open;
}

Verdict decided(bool met, std::string message) {
    Verdict v;
    v.outcome = met ? CheckOutcome::met : CheckOutcome::not_met;
    v.message = std::move(message);
    return v;
}

namespace {

constexpr std::string_view at_the_least = "at least";
constexpr std::string_view at_the_most = "at most";

Verdict compared(const View& view,
                 double figure,
                 double limit,
                 Kind kind,
                 std::string what,
                 std::string_view sense,
                 bool met) {
    Verdict v =
        decided(met,
                view.with_words ? std::move(what) + " " + view.show(figure, kind) + ", "
                                      + std::string{sense} + " " + view.show(limit, kind)
                                      + (sense == at_the_most ? " is allowed" : " is required")
                                : std::string{});
    v.kind = kind;
    v.figure = figure;
    v.limit = limit;
    return v;
}

} // namespace

Verdict at_least(const View& view, double figure, double limit, Kind kind, std::string what) {
    return compared(view,
                    figure,
                    limit,
                    kind,
                    std::move(what),
                    at_the_least,
                    view.reaches(figure, limit, kind));
}

Verdict at_most(const View& view, double figure, double limit, Kind kind, std::string what) {
    return compared(
        view, figure, limit, kind, std::move(what), at_the_most, view.reaches(limit, figure, kind));
}

Verdict at(const View& view, const Piece& piece, Verdict verdict) {
    verdict.place = view.place_of(piece);
    verdict.part = piece.index;
    return verdict;
}

void Fold::add(Verdict verdict) {
    missing_.insert(missing_.end(), verdict.missing.begin(), verdict.missing.end());
    asked_.insert(asked_.end(), verdict.asked.begin(), verdict.asked.end());
    if (verdict.outcome == CheckOutcome::does_not_apply) {
        return;
    }
    if (verdict.outcome == CheckOutcome::not_met) {
        failed_.push_back({verdict.place, verdict.message});
    }
    if (!worst_ || verdict.outcome < worst_->outcome) {
        worst_ = std::move(verdict);
        return;
    }
    if (verdict.outcome == worst_->outcome && verdict.figure && worst_->figure && verdict.limit
        && worst_->limit) {
        // The tighter of two of a kind: nearest to its limit, or farthest past it. A listing may
        // put the limit at nothing.
        const auto gap = [](const Verdict& v) {
            constexpr double next_to_nothing = 1e-9;
            return std::abs(*v.figure - *v.limit) / std::max(std::abs(*v.limit), next_to_nothing);
        };
        const bool past = verdict.outcome == CheckOutcome::not_met;
        if (past ? gap(verdict) > gap(*worst_) : gap(verdict) < gap(*worst_)) {
            worst_ = std::move(verdict);
        }
    }
}

Verdict Fold::result() const {
    if (!worst_) {
        return not_here(none_);
    }
    Verdict v = *worst_;
    const bool open = v.outcome == CheckOutcome::undetermined;
    v.missing = open ? missing_ : std::vector<std::string>{};
    v.asked = open || v.outcome == CheckOutcome::not_met ? asked_ : std::vector<Asked>{};
    constexpr std::size_t most_named = 3;
    const Failed own{v.place, v.message};
    std::size_t named = 0;
    for (const Failed& other : failed_) {
        if (other != own && named < most_named) {
            const bool elsewhere = other.place != own.place && !other.place.empty();
            v.message += named == 0 ? "; also " : "; ";
            v.message += (elsewhere ? other.place + ": " : "") + other.message;
            ++named;
        }
    }
    return v;
}

} // namespace fluewright::checking
