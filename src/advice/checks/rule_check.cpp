#include "rule_check.hpp"

#include "finding_rules.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::rule_check {

std::string Piece::key(std::string_view name) const {
    return "/run/" + std::to_string(index) + "/" + std::string{name};
}

View::View(const Installation& in, const Case& c, const Solution& s)
    : written{in}, installation{c}, solution{s} {
    const std::size_t chimney_from = rules::chimney_start(c);
    double height_m = 0.0;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const Section& section = c.sections[i];
        height_m += section.rise_m;
        const auto index = static_cast<std::size_t>(section.part);
        if (section.part < 0 || index >= in.run.size()) {
            continue;
        }
        const Piece piece{section.part,
                          &in.run[index],
                          &section,
                          &c.walls[section.wall],
                          i >= chimney_from,
                          height_m};
        // A sudden step is a section of its own in front of the part that makes it.
        if (!pieces.empty() && pieces.back().index == section.part) {
            pieces.back() = piece;
        } else {
            pieces.push_back(piece);
        }
    }
}

bool View::solid_fuel() const {
    const FuelGroup group = heater().fuel_group;
    return group == FuelGroup::wood || group == FuelGroup::pellets || group == FuelGroup::coal;
}

std::vector<const Piece*> View::connector() const {
    std::vector<const Piece*> list;
    for (const Piece& piece : pieces) {
        if (!piece.in_chimney && piece.section->kind != PartKind::cap) {
            list.push_back(&piece);
        }
    }
    return list;
}

std::vector<const Piece*> View::chimney() const {
    std::vector<const Piece*> list;
    for (const Piece& piece : pieces) {
        if (piece.in_chimney && piece.section->kind != PartKind::cap) {
            list.push_back(&piece);
        }
    }
    return list;
}

std::string View::place_of(const Piece& piece) const {
    return piece.section->kind == PartKind::cap
               ? "the mouth"
               : std::string{name(piece.section->kind)} + " " + std::to_string(piece.index + 1);
}

Verdict not_here(std::string_view why) {
    Verdict v;
    v.message = why;
    return v;
}

Verdict unknown(std::vector<std::string> missing) {
    Verdict v;
    v.outcome = RuleOutcome::cannot_tell;
    v.missing = std::move(missing);
    return v;
}

Verdict decided(bool met, std::string message) {
    Verdict v;
    v.outcome = met ? RuleOutcome::met : RuleOutcome::not_met;
    v.message = std::move(message);
    return v;
}

bool reaches(double figure, double limit, Kind kind) {
    const double rounding = kind == Kind::length ? 5e-4 : 1e-3 * std::abs(limit);
    return figure >= limit - rounding - 1e-12;
}

namespace {

Verdict compared(const View& view,
                 double figure,
                 double limit,
                 Kind kind,
                 std::string what,
                 std::string_view sense,
                 bool met) {
    Verdict v = decided(met,
                        std::move(what) + " " + view.show(figure, kind) + ", " + std::string{sense}
                            + " " + view.show(limit, kind) + " is asked");
    v.kind = kind;
    v.figure = figure;
    v.limit = limit;
    return v;
}

} // namespace

Verdict at_least(const View& view, double figure, double limit, Kind kind, std::string what) {
    return compared(
        view, figure, limit, kind, std::move(what), "at least", reaches(figure, limit, kind));
}

Verdict at_most(const View& view, double figure, double limit, Kind kind, std::string what) {
    const double rounding = kind == Kind::length ? 5e-4 : 1e-3 * std::abs(limit);
    return compared(
        view, figure, limit, kind, std::move(what), "at most", figure <= limit + rounding + 1e-12);
}

Verdict at(const View& view, const Piece& piece, Verdict verdict) {
    verdict.place = view.place_of(piece);
    verdict.part = piece.index;
    return verdict;
}

void Fold::add(Verdict verdict) {
    missing_.insert(missing_.end(), verdict.missing.begin(), verdict.missing.end());
    if (verdict.outcome == RuleOutcome::does_not_apply) {
        return;
    }
    if (verdict.outcome == RuleOutcome::not_met) {
        failed_.push_back({verdict.place, verdict.message});
    }
    if (!worst_ || verdict.outcome < worst_->outcome) {
        worst_ = std::move(verdict);
        return;
    }
    if (verdict.outcome == worst_->outcome && verdict.figure && worst_->figure && verdict.limit
        && worst_->limit) {
        // The tighter of two of a kind: nearest to its limit, or farthest past it.
        const auto gap = [](const Verdict& v) { return std::abs(*v.figure / *v.limit - 1.0); };
        const bool past = verdict.outcome == RuleOutcome::not_met;
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
    v.missing = v.outcome == RuleOutcome::cannot_tell ? missing_ : std::vector<std::string>{};
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

} // namespace fluewright::rule_check
