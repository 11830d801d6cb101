#include "flaws/cures.hpp"
#include "fluewright/core/constants.hpp"
#include "outcome.hpp"

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

} // namespace

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
