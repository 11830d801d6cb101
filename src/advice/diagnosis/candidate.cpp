#include "candidate.hpp"

#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <array>

namespace fluewright::diagnosis {
namespace {

struct FlagKind {
    std::string_view kind;
    Flag Observation::*member;
};

constexpr std::array<FlagKind, 5> flags{{{"sluggish", &Observation::sluggish},
                                         {"roaring", &Observation::roaring},
                                         {"drips", &Observation::drips},
                                         {"smell", &Observation::smell_when_idle},
                                         {"window", &Observation::better_with_window_open}}};

struct ReadingKind {
    std::string_view kind;
    Given Observation::*member;
    bool upper; ///< at the last part within reach, not at the outlet
    bool placed;
};

constexpr std::array<ReadingKind, 6> reading_kinds{
    {{"draft", &Observation::draft_pa, false, true},
     {"draft-upper", &Observation::draft_pa, true, true},
     {"gas-temperature", &Observation::gas_temperature_k, false, true},
     {"gas-upper", &Observation::gas_temperature_k, true, true},
     {"room-pressure", &Observation::room_pressure_pa, false, false},
     {"moisture", &Observation::moisture, false, false}}};

template <class Rows>
auto find_kind(const Rows& rows, std::string_view kind) {
    return std::find_if(
        rows.begin(), rows.end(), [&](const auto& row) { return row.kind == kind; });
}

/// The word that an answer yes puts under "smoke".
std::optional<SmokePlace> smoke_place(std::string_view kind) {
    return from_word<SmokePlace>(kind.substr(kind.find('-') + 1));
}

bool is_smoke(std::string_view kind) {
    return kind.starts_with("smoke-");
}

/// The last part whose far end stands in the room; 0 when none does.
std::size_t last_within_reach(const Case& c) {
    int last = -1;
    for (const Section& section : c.sections) {
        if (section.zone == Zone::room) {
            last = std::max(last, section.part);
        }
    }
    return last < 0 ? 0 : static_cast<std::size_t>(last) + 1;
}

/// Points at whose joint a smoke stick can be held: in the room, and at tees anywhere.
std::vector<std::size_t> joints_within_reach(const Case& c, std::size_t parts) {
    std::vector<std::size_t> points;
    for (const Section& section : c.sections) {
        const bool in_reach = section.zone == Zone::room || section.kind == PartKind::tee;
        if (section.part < 0 || !in_reach) {
            continue;
        }
        const auto point = static_cast<std::size_t>(section.part);
        if (point < parts && std::find(points.begin(), points.end(), point) == points.end()) {
            points.push_back(point);
        }
    }
    return points;
}

class Finder {
public:
    Finder(const Installation& written, const Case& resolved)
        : written_(written), resolved_(resolved) {}

    void consider(const Check& check) {
        Candidate candidate{
            .check = &check, .blank = {}, .answers = AnswerKind::yes_no, .place = {}};
        if (!check.state.empty() && check.kind != "look") {
            candidate.blank.state = from_word<StateKind>(check.state);
        }
        if (check.kind == "smoke-door" && has_open_front(resolved_.appliance)) {
            candidate.blank.state = StateKind::door_open_high;
        }
        if (check.kind == "look") {
            candidate.blank.look = from_word<LookedAt>(check.look);
        } else if (check.kind == "worse") {
            candidate.answers = AnswerKind::course;
        } else if (check.kind == "stick-cold") {
            candidate.answers = AnswerKind::stick;
            candidate.blank.at = "outlet";
            candidate.blank.fan = FanState::off; // as the check asks for
        }
        if (check.kind == "none" || !fits(check)
            || !applies_to(check.kinds, kind_of(resolved_.appliance))) {
            return;
        }
        if (const auto reading = find_kind(reading_kinds, check.kind);
            reading != reading_kinds.end()) {
            add_reading(std::move(candidate), *reading);
        } else if (check.kind == "stick") {
            candidate.answers = AnswerKind::stick;
            for (const std::size_t point : joints_within_reach(resolved_, written_.run.size())) {
                Candidate at = candidate;
                put_at(at, point);
                add(std::move(at));
            }
        } else {
            add(std::move(candidate));
        }
    }

    std::vector<Candidate> found;

private:
    [[nodiscard]] bool fits(const Check& check) const {
        const auto look = from_word<LookedAt>(check.look);
        if (look == LookedAt::damper) {
            return has_part(written_.run, PartKind::damper);
        }
        if (look == LookedAt::cap) {
            return has_part(written_.run, PartKind::cap)
                   || has_part(written_.run, PartKind::screen);
        }
        if (look == LookedAt::door_seal || look == LookedAt::baffle) {
            return resolved_.appliance.type == ApplianceType::stove;
        }
        if (check.kind == "moisture") {
            return resolved_.appliance.fuel_group == FuelGroup::wood;
        }
        return check.kind != "smoke-door" || resolved_.appliance.has_door;
    }

    void put_at(Candidate& candidate, std::size_t point) const {
        candidate.blank.at = point == 0 ? "outlet" : std::to_string(point);
        candidate.place = point == 0
                              ? "at the outlet"
                              : "behind " + resolved_.run.label_at(static_cast<int>(point) - 1);
    }

    void add_reading(Candidate candidate, const ReadingKind& kind) {
        candidate.answers = AnswerKind::quantity;
        if (kind.upper) {
            const std::size_t point = last_within_reach(resolved_);
            if (point == 0) {
                return;
            }
            put_at(candidate, point);
        } else if (kind.placed) {
            candidate.blank.at = "outlet";
        }
        add(std::move(candidate));
    }

    void add(Candidate candidate) {
        const bool asked =
            std::any_of(written_.observed.begin(),
                        written_.observed.end(),
                        [&](const Observation& seen) { return answers(candidate, seen); });
        if (!asked) {
            found.push_back(std::move(candidate));
        }
    }

    /// Whether an entry of the file already says what the check would.
    [[nodiscard]] bool answers(const Candidate& candidate, const Observation& seen) const {
        const std::string_view kind = candidate.check->kind;
        if (is_smoke(kind)) {
            return smoke_answered(kind, seen);
        }
        if (const auto flag = find_kind(flags, kind); flag != flags.end()) {
            return (seen.*(flag->member)).has_value();
        }
        if (kind == "worse") {
            return seen.worse.has_value();
        }
        if (kind == "look") {
            return seen.look == candidate.blank.look;
        }
        const std::size_t parts = written_.run.size();
        const bool same_place = point_of(seen.at, parts) == point_of(candidate.blank.at, parts);
        const bool same_state = seen.state == candidate.blank.state
                                || (!seen.state && candidate.blank.state == StateKind::high_fire);
        if (kind == "stick" || kind == "stick-cold") {
            return seen.smoke_stick && same_place && same_state;
        }
        const auto reading = find_kind(reading_kinds, kind);
        return (seen.*(reading->member)).has_value()
               && (!reading->placed || (same_place && same_state));
    }

    [[nodiscard]] bool smoke_answered(std::string_view kind, const Observation& seen) const {
        if (!seen.smoke) {
            return false;
        }
        if (seen.smoke == smoke_place(kind)) {
            return true;
        }
        if (*seen.smoke != SmokePlace::none) {
            return false;
        }
        const auto evidence = evidence_of(seen, 0, written_, resolved_);
        const auto mine = evidence_of(answered({.check = find_kind(checks(), kind) == checks().end()
                                                             ? nullptr
                                                             : &*find_kind(checks(), kind),
                                                .blank = {},
                                                .answers = AnswerKind::yes_no,
                                                .place = {}},
                                               Answer::yes),
                                      0,
                                      written_,
                                      resolved_);
        return evidence.front().seen == mine.front().seen;
    }

    const Installation& written_;
    const Case& resolved_;
};

} // namespace

std::vector<Candidate> candidates(const Installation& written, const Case& resolved) {
    Finder finder{written, resolved};
    for (const Check& check : checks()) {
        finder.consider(check);
    }
    return std::move(finder.found);
}

Observation answered(const Candidate& candidate, Answer answer) {
    Observation seen = candidate.blank;
    const std::string_view kind = candidate.check->kind;
    const bool yes = answer == Answer::yes;
    if (is_smoke(kind)) {
        seen.smoke = yes ? smoke_place(kind) : SmokePlace::none;
        if (!yes && kind == "smoke-fan") {
            seen.fan = FanState::running;
        }
        if (!yes && kind == "smoke-wind") {
            seen.wind = WindState::windy;
        }
    } else if (const auto flag = find_kind(flags, kind); flag != flags.end()) {
        seen.*(flag->member) = yes;
    } else if (kind == "look") {
        seen.found = yes ? FoundState::bad : FoundState::good;
    } else if (candidate.answers == AnswerKind::course) {
        seen.worse = answer == Answer::over_weeks  ? TroubleCourse::over_weeks
                     : answer == Answer::overnight ? TroubleCourse::overnight
                                                   : TroubleCourse::steady;
    } else {
        seen.smoke_stick = answer == Answer::in    ? SmokeStick::in
                           : answer == Answer::out ? SmokeStick::out
                                                   : SmokeStick::still;
    }
    return seen;
}

Observation answered(const Candidate& candidate, double value) {
    Observation seen = candidate.blank;
    const auto reading = find_kind(reading_kinds, candidate.check->kind);
    if (reading != reading_kinds.end()) {
        seen.*(reading->member) = value;
    }
    return seen;
}

const FieldInfo* reading_field(const Observation& seen) {
    for (const Field<Observation>& field : fields<Observation>()) {
        const auto* given = std::get_if<Given Observation::*>(&field.member);
        if (given != nullptr && seen.**given) {
            return &field.info;
        }
    }
    return nullptr;
}

double within_limits(const Candidate& candidate, double reading) {
    const FieldInfo* const field = reading_field(answered(candidate, reading));
    return field == nullptr ? reading : std::clamp(reading, field->lowest, field->highest);
}

std::span<const Answer> answers_of(const Candidate& candidate) {
    static constexpr std::array<Answer, 2> yes_no{Answer::yes, Answer::no};
    static constexpr std::array<Answer, 3> stick{Answer::in, Answer::out, Answer::still};
    static constexpr std::array<Answer, 3> course{
        Answer::over_weeks, Answer::overnight, Answer::steady};
    switch (candidate.answers) {
    case AnswerKind::yes_no:
        return yes_no;
    case AnswerKind::stick:
        return stick;
    case AnswerKind::course:
        return course;
    case AnswerKind::quantity:
        break;
    }
    return {};
}

} // namespace fluewright::diagnosis
