#include "fluewright/model/march/probe_reading.hpp"
#include "fluewright/model/warmup/tended.hpp"
#include "truth.hpp"

#include <algorithm>
#include <cmath>

namespace bench {

using namespace fluewright;

namespace {

struct Course {
    std::string_view cause;
    double over_weeks;
    double overnight;
};

/// How the trouble came, in truth; the diagnosis has a table of its own.
constexpr std::array<Course, 15> courses{{{"nothing", 0.05, 0.05},
                                          {"blockage", 0.3, 0.45},
                                          {"deposits", 0.8, 0.03},
                                          {"clogged-screen", 0.75, 0.08},
                                          {"leaky-joints", 0.15, 0.4},
                                          {"shut-damper", 0.02, 0.3},
                                          {"clogged-passages", 0.6, 0.05},
                                          {"leaky-stove", 0.5, 0.1},
                                          {"fan", 0.02, 0.35},
                                          {"house-suction", 0.03, 0.1},
                                          {"starved-house", 0.03, 0.3},
                                          {"downdraft", 0.02, 0.05},
                                          {"wet-wood", 0.1, 0.2},
                                          {"low-fire", 0.1, 0.1},
                                          {"smaller-flue", 0.02, 0.02}}};

struct Sight {
    std::string_view look;
    std::string_view cause;
    double found;
};

/// Share of true causes that a look finds.
constexpr std::array<Sight, 9> sights{{{"cap", "clogged-screen", 0.88},
                                       {"flue", "blockage", 0.9},
                                       {"flue", "deposits", 0.85},
                                       {"flue", "clogged-screen", 0.2},
                                       {"damper", "shut-damper", 0.93},
                                       {"door seal", "leaky-stove", 0.82},
                                       {"baffle", "clogged-passages", 0.92},
                                       {"sizes", "smaller-flue", 0.93},
                                       {"joints", "leaky-joints", 0.7}}};

} // namespace

Surroundings Truth::air(Doing doing, const Moment& moment) const {
    const Case& c = *solved_;
    const bool cold = doing == Doing::idle || doing == Doing::lighting;
    Surroundings s = surroundings_of(c, 0, cold ? Fire::out : Fire::burning);
    const double colder_k = c.room_temperature_k - c.weathers.front().outdoor_temperature_k;
    double suction = effects_.house_pa * std::max(0.0, colder_k) / 20.0;
    suction += moment.fans_off ? 0.0 : effects_.fan_pa;
    const double taken = doing == Doing::idle       ? 0.0
                         : doing == Doing::lighting ? 0.35
                         : doing == Doing::low      ? 0.25
                         : doing == Doing::embers   ? 1.2
                                                    : 1.0;
    suction += effects_.starved_pa * taken;
    s.room_pressure_pa -= suction;
    if (moment.window_open && s.room_pressure_pa < 0.0) {
        s.room_pressure_pa *= 0.2;
    }
    s.top_pressure_pa += moment.windy ? effects_.wind_pa : 0.0;
    return s;
}

Truth::Look Truth::look(Doing doing, const Moment& moment) const {
    const Case& c = *solved_;
    const FlueModel model(c, air(doing, moment));
    StateResult state;
    if (doing == Doing::high || doing == Doing::low) {
        state = solve_tended(model,
                             doing == Doing::high ? GasChoice::high_fire : GasChoice::low_fire,
                             Detail::stations);
    } else if (doing == Doing::embers) {
        state = solve_state(model, StateKind::door_open_embers, Detail::stations);
    } else {
        state = solve_state(model,
                            doing == Doing::lighting ? StateKind::cold_start : StateKind::idle,
                            Detail::stations);
    }
    if (doing == Doing::lighting) {
        // What the idle column does counts for more with some people than with others.
        const double idle_pa = solve_state(model, StateKind::idle, Detail::totals).draft_pa;
        const double idle_share = std::clamp(0.65 + 0.1 * person_, 0.3, 0.95);
        state.draft_pa = idle_share * idle_pa + (1.0 - idle_share) * state.draft_pa;
    }
    Look result;
    result.draft_pa = state.draft_pa;
    result.gas_k = state.gas_temperature_k;
    result.door_share = state.door.opening_share_mixed;
    result.flow_share = state.gas_flow_kg_s / written_flow_kg_s_;
    result.room_pa = model.surroundings().room_pressure_pa;
    result.joints_pa = -1e9;
    result.coldest_k = 1e9;
    result.part_draft_pa.resize(written_.run.size());
    result.part_gas_k.resize(written_.run.size());
    result.part_gas_share.resize(written_.run.size(), 1.0);
    const double fire_kg_s = state.stations.front().flow_kg_s;
    const auto shown = [&](const Station& s, double wall_k) {
        return probe_reading_k(c.gas_high().products(),
                               s.gas_temperature_k,
                               wall_k,
                               s.velocity_m_s,
                               c.air_pressure_pa);
    };
    result.shown_gas_k = shown(state.stations.front(), wall_at_outlet_k(state.stations));
    for (std::size_t i = 0; i < state.stations.size(); ++i) {
        const Station& s = state.stations[i];
        if (s.inner_wall_k > 0.0) {
            result.coldest_k = std::min(result.coldest_k, s.inner_wall_k);
        }
        if (i > 0 && c.sections[i - 1].zone == Zone::room) {
            result.joints_pa = std::max(result.joints_pa, s.joint_pressure_pa);
        }
        for (std::size_t part = 0; i > 0 && part < place_of_part_.size(); ++part) {
            if (c.sections[i - 1].part == static_cast<int>(place_of_part_[part])) {
                result.part_draft_pa[part] = -s.pressure_in_zone_pa;
                result.part_gas_k[part] = shown(s, s.inner_wall_k);
                result.part_gas_share[part] =
                    s.flow_kg_s > fire_kg_s ? fire_kg_s / s.flow_kg_s : 1.0;
            }
        }
    }
    return result;
}

bool Truth::smokes(const Moment& moment) const {
    return look(Doing::high, moment).joints_pa > 0.5 + 0.5 * person_
           || look(Doing::embers, moment).door_share < 0.5 - 0.08 * person_;
}

bool Truth::symptom(const std::string& kind) const {
    const Case& c = *solved_;
    if (kind == "smoke-joints") {
        return look(Doing::high, {}).joints_pa > 0.5 + 0.5 * person_;
    }
    if (kind == "smoke-door") {
        return look(Doing::embers, {}).door_share < 0.5 - 0.08 * person_;
    }
    if (kind == "smoke-lighting") {
        return look(Doing::lighting, {}).draft_pa < 0.6 - 0.7 * person_;
    }
    if (kind == "smoke-wind") {
        return smokes({.window_open = false, .fans_off = false, .windy = true}) && !smokes({});
    }
    if (kind == "smoke-fan") {
        return smokes({}) && !smokes({.window_open = false, .fans_off = true, .windy = false});
    }
    if (kind == "sluggish") {
        const double meant = c.appliance.high.gas_flow_kg_s / written_flow_kg_s_;
        return effects_.heat_share * look(Doing::high, {}).flow_share / meant
               < 0.77 - 0.05 * person_;
    }
    if (kind == "roaring") {
        const double draft = look(Doing::high, {}).draft_pa;
        return draft > c.appliance.draft_greatest_pa + 3.0 * person_
               || effects_.past_control * std::sqrt(std::max(0.0, draft) / 12.0) > 0.72;
    }
    if (kind == "smell") {
        return look(Doing::idle, {}).draft_pa < -0.9 - 0.5 * person_;
    }
    return look(Doing::low, {}).coldest_k < 358.0 + 15.0 * person_;
}

/// One answer in thirty is wrong; a cold flue does not always smell or drip.
bool Truth::seen(const std::string& kind) {
    const bool real = symptom(kind);
    if ((kind == "smell" || kind == "drips") && real) {
        return dice_.chance(0.65);
    }
    return dice_.chance(0.03) ? !real : real;
}

bool Truth::draws_too_hard() const {
    return look(Doing::high, {}).draft_pa > solved_->appliance.draft_greatest_pa;
}

bool Truth::complains() const {
    for (const char* kind :
         {"smoke-joints", "smoke-door", "smoke-lighting", "smoke-wind", "sluggish", "roaring"}) {
        if (symptom(kind)) {
            return true;
        }
    }
    return false;
}

std::vector<Observation> Truth::complaints() {
    std::vector<Observation> list;
    for (const char* kind :
         {"smoke-joints", "smoke-door", "smoke-lighting", "smoke-wind", "sluggish", "roaring"}) {
        if (!symptom(kind)) {
            continue;
        }
        Observation o;
        const std::string word{kind};
        o.state = StateKind::high_fire;
        if (word.starts_with("smoke-")) {
            o.smoke = from_word<SmokePlace>(word.substr(6));
            o.state = word == "smoke-door"       ? StateKind::door_open_embers
                      : word == "smoke-lighting" ? StateKind::cold_start
                                                 : StateKind::high_fire;
        }
        o.sluggish = word == "sluggish" ? Flag{true} : Flag{};
        o.roaring = word == "roaring" ? Flag{true} : Flag{};
        said_.emplace(word + "//", o);
        list.push_back(std::move(o));
    }
    return list;
}

double Truth::misread(double value, double spread, double wild_scale) {
    if (dice_.chance(0.03)) {
        return value + wild_scale * dice_.between(-1.0, 1.0);
    }
    return value + spread * dice_.bell();
}

bool Truth::finds(const std::string& what) {
    for (const Sight& sight : sights) {
        if (sight.look == what && sight.cause == planted_.cause) {
            return dice_.chance(sight.found);
        }
    }
    return dice_.chance(0.04);
}

std::string Truth::stick(const std::string& at, bool cold) {
    const Look now = look(cold ? Doing::idle : Doing::high, {});
    const int point = at == "outlet" ? 0 : std::stoi(at);
    const double draft =
        point == 0 ? now.draft_pa : now.part_draft_pa[static_cast<std::size_t>(point - 1)];
    const double felt = draft + 0.4 * dice_.bell();
    if (felt < -0.2) {
        return dice_.chance(0.9) ? "out" : "still";
    }
    const bool leaky =
        planted_.cause == "leaky-joints"
        && (planted_.part < 0 || point == planted_.part || point == planted_.part + 1);
    return felt > 0.3 && (cold || leaky || dice_.chance(0.2)) ? "in" : "still";
}

std::string Truth::course() {
    for (const Course& row : courses) {
        if (row.cause == planted_.cause) {
            const double draw = dice_.even();
            return draw < row.over_weeks                   ? "over weeks"
                   : draw < row.over_weeks + row.overnight ? "overnight"
                                                           : "steady";
        }
    }
    return "steady";
}

std::optional<Observation>
Truth::answer(const std::string& kind, const std::string& what, const std::string& at) {
    const std::string key = kind + '/' + what + '/' + at;
    if (const auto known = said_.find(key); known != said_.end()) {
        return known->second;
    }
    Observation o;
    const Look high = look(Doing::high, {});
    const auto point =
        at.empty() || at == "outlet" ? std::size_t{0} : static_cast<std::size_t>(std::stoi(at));
    if (!at.empty()) {
        o.at = at;
    }
    o.state = StateKind::high_fire;
    const double rise = high.gas_k - solved_->room_temperature_k;
    if (kind.starts_with("smoke-")) {
        const bool yes = seen(kind);
        o.smoke = yes ? from_word<SmokePlace>(kind.substr(6)) : SmokePlace::none;
        o.state = kind == "smoke-door"       ? StateKind::door_open_embers
                  : kind == "smoke-lighting" ? StateKind::cold_start
                                             : StateKind::high_fire;
        if (!yes && kind == "smoke-fan") {
            o.fan = FanState::running;
        }
        if (!yes && kind == "smoke-wind") {
            o.wind = WindState::windy;
        }
    } else if (kind == "sluggish") {
        o.sluggish = seen(kind);
    } else if (kind == "roaring") {
        o.roaring = seen(kind);
    } else if (kind == "drips") {
        o.drips = seen(kind);
    } else if (kind == "smell") {
        o.smell_when_idle = seen(kind);
    } else if (kind == "worse") {
        o.worse = from_word<TroubleCourse>(course());
    } else if (kind == "window") {
        const Look open =
            look(Doing::high, {.window_open = true, .fans_off = false, .windy = false});
        const bool better = open.draft_pa - high.draft_pa > 2.8 + 0.6 * dice_.bell();
        o.better_with_window_open = dice_.chance(0.04) ? !better : better;
    } else if (kind == "look") {
        o.look = from_word<LookedAt>(what);
        o.found = finds(what) ? FoundState::bad : FoundState::good;
    } else if (kind == "stick" || kind == "stick-cold") {
        const bool cold = kind == "stick-cold";
        o.state = cold ? StateKind::idle : StateKind::high_fire;
        o.smoke_stick = from_word<SmokeStick>(stick(at, cold));
    } else if (kind == "draft" || kind == "draft-upper") {
        const double draft = point == 0 ? high.draft_pa : high.part_draft_pa[point - 1];
        o.draft_pa = misread(draft, 0.6 + 0.05 * std::abs(draft), 10.0);
    } else if (kind == "gas-temperature" || kind == "gas-upper") {
        const double gas_k = point == 0 ? high.shown_gas_k : high.part_gas_k[point - 1];
        o.gas_temperature_k = misread(gas_k, 5.0 + 0.03 * rise, 80.0);
    } else if (kind == "room-pressure") {
        o.room_pressure_pa = misread(high.room_pa, 0.5 + 0.08 * std::abs(high.room_pa), 4.0);
    } else if (kind == "moisture") {
        o.moisture = std::clamp(misread(moisture_, 0.02, 0.08), 0.05, 0.65);
    } else {
        return std::nullopt;
    }
    said_.emplace(key, o);
    return o;
}

} // namespace bench
