#include "flaws/cures.hpp"
#include "fluewright/core/constants.hpp"
#include "outcome.hpp"
#include "seen/untroubled.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::diagnosis {
std::string_view reply_word(Answer answer) {
    switch (answer) {
    case Answer::no:
        return "no";
    case Answer::yes:
        return "yes";
    case Answer::in:
        return "in";
    case Answer::out:
        return "out";
    case Answer::still:
        return "still";
    case Answer::over_weeks:
        return "over weeks";
    case Answer::overnight:
        return "overnight";
    case Answer::steady:
        break;
    }
    return "steady";
}

bool tells_apart(const NextCheck& check) {
    return std::any_of(
        check.expected.begin(), check.expected.end(), [&](const Expectation& expected) {
            return expected.words != check.expected.front().words;
        });
}

bool leaves_flue_nearly_shut(const std::vector<Explanation>& explanations) {
    constexpr double likely = 0.4;
    constexpr double most_shut = 0.6;
    double probability = 0.0;
    for (const Explanation& each : explanations) {
        const bool stops_up =
            std::any_of(each.causes.begin(), each.causes.end(), [](const SizedCause& sized) {
                const CauseId id = id_of(*sized.cause);
                return ((id == CauseId::blockage || id == CauseId::clogged_screen
                         || id == CauseId::shut_damper)
                        && sized.size >= most_shut)
                       || id == CauseId::restricted;
            });
        probability += stops_up ? each.probability : 0.0;
    }
    return probability >= likely;
}

std::string mend_first_words(const Explanation& first, const std::vector<Evidence>& evidence) {
    if (!first.causes.empty() && id_of(*first.causes.front().cause) == CauseId::restricted) {
        return "The file shows it already (" + first.title
               + "). Open or clear that and try again "
                 "before anything else is looked for.";
    }
    for (const Evidence& e : evidence) {
        if (e.seen != Seen::look || e.answer != Answer::yes) {
            continue;
        }
        for (const SizedCause& sized : first.causes) {
            if (found_share(*e.look, sized.cause->id) > e.look->false_alarm) {
                return "Found bad already: " + std::string{e.look->look}
                       + ". Mend that and try "
                         "again before anything else is looked for. "
                       + first.remedy;
            }
        }
    }
    return {};
}

Cured once_cured(const Trial& trial) {
    const StateResult& state = trial.score.states[trial.score.limiting];
    return {.works = passing(trial).works,
            .state = state_name(trial.resolved, state),
            .kind = state.kind,
            .status = state.status,
            .draft_pa = state.draft_pa,
            .draft_needed_pa = state.draft_needed_pa,
            .opening_share = state.door.opening_share,
            .opening_wanted = door_wanted(trial.resolved),
            .left = {},
            .installation = trial.changed};
}

namespace {

/// As one would write it down.
double rounded(double x, Kind kind) {
    if (kind == Kind::temperature) {
        return std::round((x - constants::celsius_zero_k) / 5.0) * 5.0 + constants::celsius_zero_k;
    }
    const double step = kind == Kind::pressure ? 0.5 : 0.01;
    return std::round(x / step) * step;
}

/// The entry for the file: the answer yes, or about what the first explanation makes of a reading.
Observation example_of(const Ranked& ranked) {
    const Candidate& candidate = ranked.candidate;
    if (candidate.answers != AnswerKind::quantity) {
        return answered(candidate, answers_of(candidate).front());
    }
    const double x = ranked.expected.empty() ? 0.0 : ranked.expected.front().x;
    const Kind kind =
        ranked.expected.empty() ? Kind::number : kind_of(ranked.expected.front().likeliest.seen);
    return answered(candidate, within_limits(candidate, rounded(x, kind)));
}

/// A word, or the range a reading is to be expected in.
std::string range_of(const Expected& expected, const Case& c) {
    const auto words = [&](double x) {
        return expectation_words(expected.likeliest, x, expected.share, c);
    };
    const std::string low = words(expected.low);
    const std::string high = words(expected.high);
    return low == high ? low : low + " to " + high;
}

std::string per_cent(double share) {
    return format_number(100.0 * share, share < 0.1 ? 1 : 2) + " %";
}

/// Of a run that does as it should by the gauge, though not as the file has it.
std::string enough_words(const Diagnosis& result,
                         const Evidence& measured,
                         std::string_view as_written,
                         const Case& c) {
    const auto pascals = [&](double pa) { return format_quantity(pa, Kind::pressure, c.units); };
    const Explanation& first = result.explanations.front();
    return "Nothing that was seen asks for a cure: " + pascals(measured.value)
           + " of draft were measured on a high fire, where "
           + pascals(c.appliance.high.draft_needed_pa)
           + " are required, and nobody complains. The file as written gives "
           + std::string{as_written} + "; the likeliest of the reasons there may be for that is "
           + first.title + " (" + per_cent(first.probability) + ").";
}

} // namespace

void OutcomeBuilder::say(Diagnosis& result) const {
    const Explanation& first = result.explanations.front();
    const auto enough = measured_enough(evidence_, resolved_.appliance);
    result.measured_enough = enough.has_value();
    std::string size;
    for (const SizedCause& sized : first.causes) {
        size += sized.has_size ? (size.empty() ? ": " : "; ") + sized.size_words : "";
    }
    const bool overheated =
        std::any_of(written_.observed.begin(), written_.observed.end(), was_too_hot);
    if (overheated && (first.causes.empty() || result.nothing_explains)) {
        result.sentence = "No cause known here explains such heat. A sweep looks for an open ash "
                          "door, a door seal that leaks, too much draft, and burned creosote in "
                          "the flue.";
    } else if (evidence_.empty()) {
        result.sentence = "Nothing was observed yet, so every cause is as likely as before; the "
                          "checks below are worth making first.";
    } else if (urgent_.alarm_when_out && evidence_.size() == 1) {
        result.sentence = "An alarm while the appliance is out tells nothing of its flue: every "
                          "cause is as likely as before, and another source is likelier.";
    } else if (enough && !first.causes.empty()) {
        result.sentence =
            enough_words(result, evidence_[*enough], result.seen[*enough].as_written, resolved_);
    } else if (result.nothing_explains) {
        const bool doubted = !result.wrong_figures.empty() || !result.doubtful.empty();
        result.sentence = std::string{"No cause known here explains everything that was seen"}
                          + (doubted ? "; a figure may be wrong, see below" : "")
                          + "; the nearest is " + first.title + " (" + per_cent(first.probability)
                          + ").";
    } else if (first.causes.empty() && urgent_.keeps_cold()) {
        result.sentence = "No cause stands out (the likeliest single one is below); what was seen "
                          "is no less a danger for that.";
    } else if (first.causes.empty()) {
        result.sentence = "What was seen fits the run as described (" + per_cent(first.probability)
                          + "); no hidden cause is needed to explain it.";
    } else if (result.design_explains) {
        result.sentence = "The run as described explains what was seen; no hidden cause is needed ("
                          + per_cent(result.design_probability) + "). ";
        const auto flaw = std::find_if(
            result.explanations.begin(), result.explanations.end(), [](const Explanation& e) {
                return !e.causes.empty() && !e.causes.front().has_size;
            });
        if (flaw != result.explanations.end()) {
            result.sentence +=
                "What weighs most is " + flaw->title + " (" + per_cent(flaw->probability) + ").";
        }
    } else {
        result.sentence =
            (first.probability >= 0.8   ? "Very likely: "
             : first.probability >= 0.5 ? "Most likely: "
                                        : "Not settled yet; the most likely cause is ")
            + first.title + " (" + per_cent(first.probability) + ")" + size + '.';
    }
}

NextCheck OutcomeBuilder::next_check(const Ranked& ranked) const {
    NextCheck check;
    check.check = ranked.candidate.check;
    check.place = ranked.candidate.place;
    check.at = ranked.candidate.blank.at.value_or("");
    check.reply = static_cast<ReplyKind>(ranked.candidate.answers);
    check.bits = ranked.bits;
    check.worth = ranked.worth;
    check.entry = example_of(ranked);
    if (!ranked.expected.empty()) {
        check.example = within_limits(
            ranked.candidate,
            rounded(ranked.expected.front().x, kind_of(ranked.expected.front().likeliest.seen)));
    }
    for (const Expected& expected : ranked.expected) {
        check.kind = kind_of(expected.likeliest.seen);
        check.expected.push_back(expectation_of(expected));
    }
    // Where the leading causes let expect the same, the check looks for one behind them.
    for (const Expected& expected : ranked.further) {
        if (tells_apart(check)) {
            break;
        }
        check.expected.push_back(expectation_of(expected));
        if (!tells_apart(check)) {
            check.expected.pop_back();
        }
    }
    return check;
}

Expectation OutcomeBuilder::expectation_of(const Expected& expected) const {
    return {row_title(engine_.rows()[expected.row]), range_of(expected, resolved_)};
}

} // namespace fluewright::diagnosis
