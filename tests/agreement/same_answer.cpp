#include "same_answer.hpp"

#include <cmath>
#include <fmt/format.h>

namespace fluewright::agreement {

void Differences::add(std::string_view what, const std::string& one, const std::string& other) {
    list_.push_back(fmt::format(
        "{}{}{}: {} against {}", heading_, heading_.empty() ? "" : ": ", what, one, other));
}

void Differences::number(std::string_view what, double one, double other) {
    constexpr double same_share = 1e-6;
    // A search ends where the next step would be this small, wherever it began.
    const bool is_searched =
        what.find("_pa") != std::string_view::npos || what.find("spare") != std::string_view::npos;
    const double same_at_all = is_searched ? 1e-6 : 1e-9;
    const bool both_endless = !std::isfinite(one) && !std::isfinite(other);
    const double size = std::fmax(std::abs(one), std::abs(other));
    if (!both_endless && !(std::abs(one - other) <= same_share * size + same_at_all)) {
        add(what, fmt::format("{:.12g}", one), fmt::format("{:.12g}", other));
    }
}

void Differences::word(std::string_view what, std::string_view one, std::string_view other) {
    if (one != other) {
        add(what, fmt::format("\"{}\"", one), fmt::format("\"{}\"", other));
    }
}

std::string Differences::text() const {
    constexpr std::size_t most_shown = 12;
    std::string text;
    for (std::size_t i = 0; i < list_.size() && i < most_shown; ++i) {
        text += "  " + list_[i] + '\n';
    }
    return list_.size() > most_shown
               ? text + fmt::format("  and {} more\n", list_.size() - most_shown)
               : text;
}

namespace {

void compare_flow(const MarchResult& a, const MarchResult& b, Differences& found) {
    found.number("top_temperature_k", a.top_temperature_k, b.top_temperature_k);
    found.number("top_velocity_m_s", a.top_velocity_m_s, b.top_velocity_m_s);
}

void compare_state(const StateResult& a, const StateResult& b, Differences& found) {
    found.number("status", static_cast<int>(a.status), static_cast<int>(b.status));
    found.number("burn_rate_kg_s", a.burn_rate_kg_s, b.burn_rate_kg_s);
    found.number("gas_flow_kg_s", a.gas_flow_kg_s, b.gas_flow_kg_s);
    found.number("gas_temperature_k", a.gas_temperature_k, b.gas_temperature_k);
    found.number("draft_pa", a.draft_pa, b.draft_pa);
    found.number("draft_needed_pa", a.draft_needed_pa, b.draft_needed_pa);
    found.number("capacity_kg_s", a.capacity_kg_s, b.capacity_kg_s);
    found.number("door.top_edge_pa", a.door.top_edge_pa, b.door.top_edge_pa);
    found.number("door.face_velocity_m_s", a.door.face_velocity_m_s, b.door.face_velocity_m_s);
    found.number("door.opening_share", a.door.opening_share, b.door.opening_share);
    found.number("room.pressure_pa", a.room.pressure_pa, b.room.pressure_pa);
    found.number("room.taken_kg_s", a.room.taken_kg_s, b.room.taken_kg_s);
    found.number("room.idle_pressure_pa", a.room.idle_pressure_pa, b.room.idle_pressure_pa);
    found.number("cold.idle_draft_pa", a.cold.idle_draft_pa, b.cold.idle_draft_pa);
    found.number("cold.duration_s", a.cold.duration_s, b.cold.duration_s);
    compare_flow(a.flow, b.flow, found);
    found.number(
        "stations", static_cast<double>(a.stations.size()), static_cast<double>(b.stations.size()));
    for (std::size_t i = 0; i < a.stations.size() && i < b.stations.size(); ++i) {
        const Station& one = a.stations[i];
        const Station& other = b.stations[i];
        const std::string at = "station " + std::to_string(i) + ' ';
        found.number(at + "gas_temperature_k", one.gas_temperature_k, other.gas_temperature_k);
        found.number(at + "inner_wall_k", one.inner_wall_k, other.inner_wall_k);
        found.number(at + "outer_wall_k", one.outer_wall_k, other.outer_wall_k);
        found.number(at + "joint_pressure_pa", one.joint_pressure_pa, other.joint_pressure_pa);
        found.number(at + "leak_kg_s", one.leak_kg_s, other.leak_kg_s);
    }
}

void compare_verdict(const StateVerdict& a, const StateVerdict& b, Differences& found) {
    found.number("counts", a.counts ? 1 : 0, b.counts ? 1 : 0);
    found.number("passes", a.passes ? 1 : 0, b.passes ? 1 : 0);
    found.number("spare", a.spare, b.spare);
}

void compare_states(const std::vector<StateResult>& one,
                    const std::vector<StateVerdict>& one_verdicts,
                    const std::vector<StateResult>& other,
                    const std::vector<StateVerdict>& other_verdicts,
                    Differences& found) {
    found.under("");
    found.number(
        "number of states", static_cast<double>(one.size()), static_cast<double>(other.size()));
    if (one.size() != other.size()) {
        return;
    }
    for (std::size_t i = 0; i < one.size(); ++i) {
        found.under(fmt::format("{}, weather {}", name(one[i].kind), one[i].weather + 1));
        found.word("state", name(one[i].kind), name(other[i].kind));
        found.number(
            "weather", static_cast<double>(one[i].weather), static_cast<double>(other[i].weather));
        compare_state(one[i], other[i], found);
        compare_verdict(one_verdicts[i], other_verdicts[i], found);
    }
}

void compare_result(const CheckResult& a, const CheckResult& b, Differences& found) {
    found.word("check", a.check->id, b.check->id);
    found.word("outcome", name(a.outcome), name(b.outcome));
    found.word("place", a.place, b.place);
    found.word("state", a.state, b.state);
    found.number("figure", a.figure.value_or(NAN), b.figure.value_or(NAN));
    found.number("limit", a.limit.value_or(NAN), b.limit.value_or(NAN));
    found.word("message", a.message, b.message);
    found.word("remedy", a.remedy, b.remedy);
    found.word("missing",
               fmt::format("{}", fmt::join(a.missing, ", ")),
               fmt::format("{}", fmt::join(b.missing, ", ")));
}

void compare_finding(const Finding& a, const Finding& b, Differences& found) {
    found.word("matter", a.matter->id, b.matter->id);
    found.word("severity", name(a.severity), name(b.severity));
    found.word("place", a.place, b.place);
    found.word("state", a.state, b.state);
    found.word("message", a.message, b.message);
    found.word("remedy", a.remedy, b.remedy);
    found.number("figure", a.figure.value_or(NAN), b.figure.value_or(NAN));
    found.number("limit", a.limit.value_or(NAN), b.limit.value_or(NAN));
    found.number(
        "sources", static_cast<double>(a.sources.size()), static_cast<double>(b.sources.size()));
}

std::string ids_of(const Findings& findings) {
    std::string text;
    for (const Finding& finding : findings) {
        text += (text.empty() ? "" : ", ") + std::string{finding.matter->id}
                + (finding.place.empty() ? "" : " at " + finding.place);
    }
    return text;
}

template <class List, class Compare>
void compare_lists(std::string_view what,
                   const List& one,
                   const List& other,
                   const Compare& compare) {
    for (std::size_t i = 0; i < one.size() && i < other.size(); ++i) {
        compare(fmt::format("{} {}", what, i + 1), one[i], other[i]);
    }
}

void compare_checks(const CheckResults& one, const CheckResults& other, Differences& found) {
    found.under("");
    found.number(
        "number of checks", static_cast<double>(one.size()), static_cast<double>(other.size()));
    compare_lists(
        "check", one, other, [&](const std::string& heading, const auto& a, const auto& b) {
            found.under(heading + " (" + std::string{a.check->id} + ' ' + a.place + ')');
            compare_result(a, b, found);
        });
}

void compare_sizes(const SizeAdvice& one, const SizeAdvice& other, Differences& found) {
    found.under("size");
    found.number("outcome", static_cast<int>(one.outcome), static_cast<int>(other.outcome));
    found.word("present", one.present, other.present);
    found.word("suggested", one.suggested, other.suggested);
    found.word("reason", one.reason, other.reason);
    compare_lists("size",
                  one.trials,
                  other.trials,
                  [&](const std::string& heading, const auto& a, const auto& b) {
                      found.under(heading + " (" + a.id + ')');
                      found.number("passes", a.works ? 1 : 0, b.works ? 1 : 0);
                      found.word("ruled_out_by", a.ruled_out_by, b.ruled_out_by);
                      found.number("least_spare_pa", a.least_spare_pa, b.least_spare_pa);
                      found.number(
                          "least_opening_share", a.least_opening_share, b.least_opening_share);
                  });
}

void compare_runs(const Run& one, const Run& other, Differences& found) {
    compare_lists("part",
                  one.parts,
                  other.parts,
                  [&](const std::string& heading, const auto& a, const auto& b) {
                      found.under(heading);
                      found.word("label", label(a), label(b));
                      found.word("zone", name(a.zone.value), name(b.zone.value));
                      found.word("stretch", name(a.stretch.value), name(b.stretch.value));
                      found.number("foot_height_m", a.foot_height_m, b.foot_height_m);
                      found.number("area_m2", a.bore.area_m2, b.bore.area_m2);
                  });
}

/// Whatever the words: those stand in the sentence of the whole.
void compare_harms(const HarmVerdict& a, const HarmVerdict& b, Differences& found) {
    const std::string harm{name(a.harm)};
    const auto place = [](const std::optional<std::size_t>& index) {
        return index ? static_cast<double>(*index) : -1.0;
    };
    found.word(harm + " outcome", name(a.outcome), name(b.outcome));
    found.word(harm + " sentence", a.sentence, b.sentence);
    found.word(harm + " first", a.first, b.first);
    found.number(harm + " counts", a.counts ? 1 : 0, b.counts ? 1 : 0);
    found.number(
        harm + " short_of", static_cast<double>(a.short_of), static_cast<double>(b.short_of));
    found.number(
        harm + " mentioned", static_cast<double>(a.mentioned), static_cast<double>(b.mentioned));
    found.number(harm + " open", static_cast<double>(a.open), static_cast<double>(b.open));
    found.number(harm + " state", place(a.state), place(b.state));
    found.number(harm + " finding", place(a.finding), place(b.finding));
    found.number(harm + " figure", a.figure.value_or(0.0), b.figure.value_or(0.0));
    found.number(harm + " limit", a.limit.value_or(0.0), b.limit.value_or(0.0));
}

} // namespace

Differences compare(const Assessment& one, const Assessment& other) {
    Differences found;
    compare_states(one.solution.states, one.verdicts, other.solution.states, other.verdicts, found);
    found.under("verdict");
    found.number("works", one.works() ? 1 : 0, other.works() ? 1 : 0);
    found.number(
        "limiting", static_cast<double>(one.limiting), static_cast<double>(other.limiting));
    compare_lists("draft ends",
                  one.draft_ends,
                  other.draft_ends,
                  [&](const std::string& heading, const auto& a, const auto& b) {
                      found.under(heading);
                      const DraftEnds of_one = a.value_or(DraftEnds{});
                      const DraftEnds of_other = b.value_or(DraftEnds{});
                      found.number("least_heat_pa", of_one.least_heat_pa, of_other.least_heat_pa);
                      found.number("most_heat_pa", of_one.most_heat_pa, of_other.most_heat_pa);
                  });
    found.under("verdict");
    found.word("sentence", one.sentence, other.sentence);
    for (const Harm harm : harms) {
        compare_harms(one.verdict.of(harm), other.verdict.of(harm), found);
    }
    found.word("body", one.body->id, other.body->id);
    found.word("findings", ids_of(one.findings), ids_of(other.findings));
    compare_runs(one.installation.run, other.installation.run, found);
    compare_checks(one.checks, other.checks, found);
    compare_lists("finding",
                  one.findings,
                  other.findings,
                  [&](const std::string& heading, const auto& a, const auto& b) {
                      found.under(heading + " (" + std::string{a.matter->id} + ')');
                      compare_finding(a, b, found);
                  });
    compare_sizes(one.size, other.size, found);
    return found;
}

const Matter* leaves_strong_draft(const Assessment& present, const Assessment& then) {
    const auto find = [](const auto& matters) {
        const auto found = std::find_if(matters.begin(), matters.end(), [](const Matter* matter) {
            return matter->id == "draft-too-strong";
        });
        return found == matters.end() ? nullptr : *found;
    };
    const Matter* strong = find(matters_against(present));
    const bool left = std::any_of(then.findings.begin(),
                                  then.findings.end(),
                                  [&](const Finding& f) { return f.matter == strong; });
    return left ? strong : nullptr;
}

Differences compare(const Score& one, const Score& other) {
    Differences found;
    compare_states(one.states, one.verdicts, other.states, other.verdicts, found);
    found.under("score");
    found.number("passes", one.passes ? 1 : 0, other.passes ? 1 : 0);
    found.number("least_spare", one.least_spare, other.least_spare);
    found.number(
        "limiting", static_cast<double>(one.limiting), static_cast<double>(other.limiting));
    found.number("greatest_over", one.greatest_over, other.greatest_over);
    return found;
}

} // namespace fluewright::agreement
