#include "outcome.hpp"

#include <algorithm>

namespace fluewright::diagnosis {
namespace {

bool was_seen(const std::vector<Evidence>& evidence, Seen what) {
    return std::any_of(evidence.begin(), evidence.end(), [&](const Evidence& e) {
        return e.seen == what && e.answer == Answer::yes;
    });
}

bool smoke_was_seen(const std::vector<Evidence>& evidence) {
    return was_seen(evidence, Seen::smoke_joints) || was_seen(evidence, Seen::smoke_door)
           || was_seen(evidence, Seen::smoke_lighting) || was_seen(evidence, Seen::smoke_wind)
           || was_seen(evidence, Seen::smoke_fan)
           || std::any_of(evidence.begin(), evidence.end(), [](const Evidence& e) {
                  return e.seen == Seen::stick && e.answer == Answer::out
                         && e.situation.doing != Doing::idle;
              });
}

} // namespace

// The steps are those official bodies give: stop feeding, open up, leave, call for help, see a
// doctor; a chimney fire is left to the fire service and the flue examined before its next use.
std::vector<std::string>
urgent_words(const std::vector<Evidence>& evidence, bool alarm_has_sounded, bool no_fire) {
    std::vector<std::string> lines;
    if (alarm_has_sounded) {
        lines.emplace_back(
            "A carbon monoxide alarm has sounded: get everybody out, call the "
            "emergency number from outdoors, and see a doctor if anyone feels ill. "
            "Do not light the appliance again before a sweep has examined the flue; the "
            "checks below leave it cold.");
    }
    if (smoke_was_seen(evidence)) {
        lines.emplace_back(
            "Smoke in the room brings carbon monoxide with it. It has no smell and kills. While it "
            "smokes: stop feeding the fire, open doors and windows, and leave the room. Call for "
            "help if it does not stop, or if anybody has a headache.");
        lines.emplace_back(
            no_fire ? "Do not use the appliance again until the cause is found and cured."
                    : "Do not heat with the appliance until the cause is found and cured. A "
                      "check that needs a fire is made with somebody beside it, a window open and "
                      "a working carbon monoxide alarm. It ends as soon as smoke comes out.");
    }
    if (was_seen(evidence, Seen::roaring)) {
        lines.emplace_back("If the flue itself roars, shakes or glows, it is a chimney fire: shut "
                           "all air, get everybody out and call the fire service. Have the flue "
                           "examined before it is used again.");
    }
    return lines;
}

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

} // namespace fluewright::diagnosis
