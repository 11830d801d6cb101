#include "evidence.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/march/probe_reading.hpp"
#include "too_much.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::diagnosis {
namespace {

/// Readings err: one in twenty-five is off by five times what it should be.
constexpr double wild_share = 0.04;
constexpr double wild_factor = 5.0;

constexpr double strong_draft_step_pa = 2.5;
constexpr double uncontrolled_threshold = 0.7;
constexpr double uncontrolled_step = 0.12;
constexpr double reference_draft_pa = 12.0;
constexpr double cold_wall_k = 363.15;
constexpr double cold_wall_step_k = 20.0;

Situation with(Situation situation, Doing doing) {
    situation.doing = doing;
    return situation;
}

Situation with_window(Situation situation, bool open) {
    situation.window_open = open;
    return situation;
}

Situation with_fan(Situation situation, bool off) {
    situation.fan_off = off;
    return situation;
}

Situation with_wind(Situation situation, bool windy) {
    situation.windy = windy;
    return situation;
}

/// How likely smoke in the room is on a high fire or when the door is opened.
double smokiness(const Altered& altered, const Situation& situation, const Lookup& at) {
    const double joints =
        symptom_of(SymptomId::smoke_joints).share(at(with(situation, Doing::high_fire)).joints_pa);
    const double door =
        altered.made.appliance.has_door
            ? symptom_of(SymptomId::smoke_door)
                  .share(at(with(situation, usual_door_doing(altered.made))).opening_short)
            : 0.0;
    return 1.0 - (1.0 - joints) * (1.0 - door);
}

void add_smokiness(std::vector<Situation>& list, const Situation& situation, const Case& c) {
    list.push_back(with(situation, Doing::high_fire));
    if (c.appliance.has_door) {
        list.push_back(with(situation, usual_door_doing(c)));
    }
}

double roaring_index(const Altered& altered, const Prediction& p) {
    const double strong =
        (p.draft_pa - altered.made.appliance.draft_greatest_pa) / strong_draft_step_pa;
    const double past_control =
        altered.uncontrolled_share * std::sqrt(std::max(0.0, p.draft_pa) / reference_draft_pa);
    return std::max(strong, (past_control - uncontrolled_threshold) / uncontrolled_step);
}

/// The share of a table that answers the question how the trouble came.
double course_share(const Cause& cause, Answer answer) {
    switch (answer) {
    case Answer::over_weeks:
        return std::max(0.02, cause.over_weeks);
    case Answer::overnight:
        return std::max(0.02, cause.overnight);
    default:
        return std::max(0.02, 1.0 - cause.over_weeks - cause.overnight);
    }
}

double course_likelihood(const Evidence& e, const Altered& altered) {
    if (altered.causes.empty()) {
        return course_share(altered.flaw != nullptr ? *altered.flaw : cause_of(CauseId::nothing),
                            e.answer);
    }
    double sum = 0.0;
    for (const CauseAt& cause : altered.causes) {
        sum += course_share(*cause.cause, e.answer);
    }
    return sum / static_cast<double>(altered.causes.size());
}

bool stands_in_cap(const Place& place, const Run& run) {
    const RunPart* part = run.part(place.first);
    return part != nullptr && part->kind == PartKind::cap;
}

double look_likelihood(const Evidence& e, const Altered& altered) {
    double missed = 1.0;
    for (const CauseAt& cause : altered.causes) {
        // From the ground a nest in the cap is seen as a clogged screen is; one farther down is
        // not.
        const bool in_cap = id_of(*cause.cause) == CauseId::blockage && e.look->look == "cap"
                            && stands_in_cap(cause.place, altered.made.run);
        missed *=
            1.0
            - found_share(*e.look, in_cap ? cause_of(CauseId::clogged_screen).id : cause.cause->id);
    }
    const double bad = altered.causes.empty() ? e.look->false_alarm : 1.0 - missed;
    return e.answer == Answer::yes ? bad : 1.0 - bad;
}

bool leaks_at(const Altered& altered, std::size_t point) {
    return std::any_of(altered.causes.begin(), altered.causes.end(), [&](const CauseAt& cause) {
        const auto part = static_cast<int>(point);
        // The joint behind part n is where part n + 1 begins; either end of the leaking part shows.
        return id_of(*cause.cause) == CauseId::leaky_joints && part >= cause.place.first
               && part <= cause.place.last + 1;
    });
}

/// A smoke stick moves where the pressure differs by more than the threshold, and in to a tight
/// joint hardly at all.
double stick_likelihood(const Evidence& e, double x, const Altered& altered) {
    const Symptom& row = symptom_of(SymptomId::stick);
    const bool wide = e.situation.doing == Doing::idle || leaks_at(altered, e.point);
    const double blown = row.most / (1.0 + std::exp((row.threshold - x) / row.softness));
    const double drawn =
        (wide ? row.most : row.least) / (1.0 + std::exp((row.threshold + x) / row.softness));
    constexpr double slip = 0.03;
    switch (e.answer) {
    case Answer::out:
        return slip + (1.0 - 3.0 * slip) * blown;
    case Answer::in:
        return slip + (1.0 - 3.0 * slip) * drawn;
    default:
        return slip + (1.0 - 3.0 * slip) * std::max(0.0, 1.0 - blown - drawn);
    }
}

double bell(double x, double mean, double spread) {
    const double z = (x - mean) / spread;
    return std::exp(-0.5 * z * z) / spread;
}

SymptomId symptom_id(Seen seen) {
    switch (seen) {
    case Seen::smoke_joints:
        return SymptomId::smoke_joints;
    case Seen::smoke_door:
        return SymptomId::smoke_door;
    case Seen::smoke_lighting:
        return SymptomId::smoke_lighting;
    case Seen::smoke_wind:
        return SymptomId::smoke_wind;
    case Seen::smoke_fan:
        return SymptomId::smoke_fan;
    case Seen::sluggish:
        return SymptomId::sluggish;
    case Seen::roaring:
        return SymptomId::roaring;
    case Seen::drips:
        return SymptomId::drips;
    case Seen::smell:
        return SymptomId::smell;
    case Seen::co_alarm:
        return SymptomId::co_alarm;
    default:
        return SymptomId::window;
    }
}

ReadingId reading_id(Seen seen) {
    switch (seen) {
    case Seen::gas_temperature:
        return ReadingId::gas_temperature;
    case Seen::surface_temperature:
        return ReadingId::surface_temperature;
    case Seen::room_pressure:
        return ReadingId::room_pressure;
    case Seen::carbon_dioxide:
        return ReadingId::carbon_dioxide;
    case Seen::oxygen:
        return ReadingId::oxygen;
    case Seen::moisture:
        return ReadingId::moisture;
    case Seen::deposit:
        return ReadingId::deposit;
    default:
        return ReadingId::draft;
    }
}

/// Share of people who complain of what the trade tells of a cause and the model does not compute;
/// the more pages tell it, the more.   [theory eq. 65]
double told_share(const Evidence& e, const Altered& altered) {
    constexpr double of_each_page = 0.2;
    constexpr double of_the_slightest = 0.15;
    const std::string_view symptom = symptom_of(symptom_id(e.seen)).id;
    const auto share = [&](const Cause& cause, double how_far) {
        const double grade = of_the_slightest + (1.0 - of_the_slightest) * how_far;
        return grade
               * (1.0 - std::pow(1.0 - of_each_page, pages_telling(cause, symptom).value_or(0.0)));
    };
    if (altered.flaw != nullptr) {
        return is_elsewhere(altered, e.point) ? 0.0 : share(*altered.flaw, altered.flaw_grade);
    }
    double most = 0.0;
    for (const CauseAt& at : altered.causes) {
        const double range = at.cause->size_high - at.cause->size_low;
        most = std::max(most, share(*at.cause, (at.size - at.cause->size_low) / range));
    }
    return most;
}

/// Share of people who report a symptom where `x` is computed. Where draft or air is taken away few
/// tell of a fire that cannot be held down; and a flaw that cannot be the reason of a complaint
/// explains no more of it than nothing does.   [theory eq. 65]
double reported_share(Seen seen, double x, const Altered& altered) {
    constexpr double of_a_weak_fire = 0.05; // judgement
    const Symptom& row = symptom_of(symptom_id(seen));
    const bool ruled_out = altered.flaw != nullptr && pages_telling(*altered.flaw, row.id) == 0.0;
    const double share = ruled_out ? row.least : row.share(x);
    return seen == Seen::roaring && only_weakens(altered) ? of_a_weak_fire * share : share;
}

/// What a relative spread is a share of.
double scale_of(Seen seen, double value, double room_k) {
    const bool temperature = seen == Seen::gas_temperature || seen == Seen::surface_temperature;
    return std::abs(temperature ? value - room_k : value);
}

double oxygen_at(const Firing& fire, double gas_share) {
    constexpr double in_air = 0.209;
    return in_air - (in_air - fire.oxygen_dry) * gas_share;
}

double reading_predicted(const Evidence& e, const Altered& altered, const Lookup& at) {
    const ApplianceCase& a = altered.made.appliance;
    const Firing& fire = e.situation.doing == Doing::low_fire ? a.low : a.high;
    if (e.seen == Seen::moisture) {
        return a.moisture;
    }
    if (e.seen == Seen::deposit) {
        if (e.point > 0 && e.point <= altered.deposit_m.size()) {
            return altered.deposit_m[e.point - 1];
        }
        return altered.deposit_m.empty()
                   ? 0.0
                   : *std::max_element(altered.deposit_m.begin(), altered.deposit_m.end());
    }
    const Prediction& p = at(e.situation);
    const Point& point = p.points[std::min(e.point, p.points.size() - 1)];
    switch (e.seen) {
    case Seen::draft:
        return point.draft_pa;
    case Seen::gas_temperature:
        return e.by_probe ? probe_reading_k(altered.made.gas_high().products(),
                                            point.gas_temperature_k,
                                            point.inner_k,
                                            point.velocity_m_s,
                                            altered.made.air_pressure_pa)
                          : point.gas_temperature_k;
    case Seen::surface_temperature:
        return point.surface_k;
    case Seen::carbon_dioxide:
        return fire.carbon_dioxide_dry * point.gas_share;
    case Seen::oxygen:
        return oxygen_at(fire, point.gas_share);
    default:
        return p.room_pressure_pa;
    }
}

} // namespace

std::vector<Situation> needs(const Evidence& e, const Case& c) {
    const Situation& s = e.situation;
    std::vector<Situation> list;
    switch (e.seen) {
    case Seen::smoke_wind:
        add_smokiness(list, with_wind(s, false), c);
        add_smokiness(list, with_wind(s, true), c);
        break;
    case Seen::smoke_fan:
        add_smokiness(list, with_fan(s, false), c);
        add_smokiness(list, with_fan(s, true), c);
        break;
    case Seen::co_alarm:
        add_smokiness(list, s, c);
        break;
    case Seen::window:
        list = {with_window(s, false), with_window(s, true)};
        break;
    case Seen::drips:
        list = {with(s, Doing::low_fire)};
        break;
    case Seen::worse:
    case Seen::look:
    case Seen::moisture:
    case Seen::deposit:
        break;
    default:
        list = {s};
    }
    return list;
}

double predicted(const Evidence& e, const Altered& altered, const Lookup& at) {
    const Situation& s = e.situation;
    switch (e.seen) {
    case Seen::smoke_joints:
        return at(s).joints_pa;
    case Seen::smoke_door:
        return at(s).opening_short;
    case Seen::smoke_lighting:
    case Seen::smell:
        return -at(s).draft_pa;
    case Seen::smoke_wind:
        return smokiness(altered, with_wind(s, true), at)
               - smokiness(altered, with_wind(s, false), at);
    case Seen::smoke_fan:
        return smokiness(altered, with_fan(s, false), at)
               - smokiness(altered, with_fan(s, true), at);
    case Seen::sluggish: {
        // Of the fire meant, as far as the draft lets it burn.
        const double meant = altered.made.appliance.high.gas_flow_kg_s / altered.written_flow_kg_s;
        return 1.0 - altered.heat_share * at(s).flow_share / meant;
    }
    case Seen::roaring:
        return roaring_index(altered, at(s));
    case Seen::drips:
        return (cold_wall_k - coldest_above_k(at(with(s, Doing::low_fire)), e.point))
               / cold_wall_step_k;
    case Seen::co_alarm:
        return smokiness(altered, s, at);
    case Seen::window:
        return at(with_window(s, true)).draft_pa - at(with_window(s, false)).draft_pa;
    case Seen::stick: {
        const Prediction& p = at(s);
        return -p.points[std::min(e.point, p.points.size() - 1)].draft_pa;
    }
    case Seen::worse:
    case Seen::look:
        return 0.0;
    default:
        return reading_predicted(e, altered, at);
    }
}

double reading_spread(Seen seen, double value, double room_k) {
    const Reading& row = reading_of(reading_id(seen));
    return std::hypot(row.absolute, row.relative * scale_of(seen, value, room_k));
}

double total_spread(const Evidence& e, double x, const Altered& altered) {
    const Reading& row = reading_of(reading_id(e.seen));
    const double scale = scale_of(e.seen, x, altered.made.room_temperature_k);
    return std::hypot(e.spread, std::hypot(row.model_absolute, row.model_relative * scale));
}

double likelihood(const Evidence& e, double x, const Altered& altered) {
    if (e.aside != Aside::no) {
        return 1.0;
    }
    if (e.is_reading()) {
        const double held = held_against(e, x, altered.made.appliance);
        const double spread = total_spread(e, held, altered);
        return (1.0 - wild_share) * bell(e.value, held, spread)
               + wild_share * bell(e.value, held, wild_factor * spread);
    }
    switch (e.seen) {
    case Seen::worse:
        return course_likelihood(e, altered);
    case Seen::look:
        return look_likelihood(e, altered);
    case Seen::stick:
        return stick_likelihood(e, x, altered);
    default:
        break;
    }
    const double computed = reported_share(e.seen, x, altered);
    const double share = computed + (1.0 - computed) * told_share(e, altered);
    return e.answer == Answer::yes ? share : 1.0 - share;
}

bool lies_within(const Evidence& e, double x, double spreads, const Altered& altered) {
    const double held = held_against(e, x, altered.made.appliance);
    return std::abs(e.value - held) <= spreads * total_spread(e, held, altered);
}

double reported_anyway(Seen symptom) {
    return symptom_of(symptom_id(symptom)).least;
}

} // namespace fluewright::diagnosis
