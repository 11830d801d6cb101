#include "evidence.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::diagnosis {
namespace {

Doing door_doing(const Observation& seen, const Case& c) {
    if (seen.state) {
        const Doing doing = doing_of(*seen.state);
        if (doing == Doing::door_open_high || doing == Doing::high_fire) {
            return Doing::door_open_high;
        }
        return Doing::door_open_embers;
    }
    return usual_door_doing(c);
}

struct Reader {
    const Installation& written;
    const Case& resolved;
    std::vector<Evidence> list{};

    void read(const Observation& seen, std::size_t index) {
        Evidence e;
        e.observation = index;
        e.situation = situation_of(seen);
        e.point = point_of(seen.at, written.run.size());
        if (seen.smoke) {
            list.push_back(smoke(e, seen));
        }
        flag(e, Seen::sluggish, seen.sluggish, Doing::high_fire);
        flag(e, Seen::roaring, seen.roaring, Doing::high_fire);
        flag(e, Seen::drips, seen.drips, Doing::low_fire);
        flag(e, Seen::smell, seen.smell_when_idle, Doing::idle);
        const bool out = seen.co_alarm && *seen.co_alarm && seen.state == StateKind::idle;
        flag(e, Seen::co_alarm, seen.co_alarm, out ? Doing::idle : Doing::high_fire);
        if (out) {
            list.back().aside = Aside::stove_out;
        }
        flag(e, Seen::window, seen.better_with_window_open, e.situation.doing);
        words(e, seen);
        reading(e, Seen::draft, "draft", seen.draft_pa);
        // What a person holds into the flue is a bare probe, unless the file says otherwise.
        e.by_probe =
            seen.gas_temperature_kind.value_or(GasReading::bare_probe) == GasReading::bare_probe;
        reading(e, Seen::gas_temperature, "gas_temperature", seen.gas_temperature_k);
        reading(e, Seen::surface_temperature, "surface_temperature", seen.surface_temperature_k);
        reading(e, Seen::room_pressure, "room_pressure", seen.room_pressure_pa);
        reading(e, Seen::carbon_dioxide, "carbon_dioxide", seen.carbon_dioxide);
        reading(e, Seen::oxygen, "oxygen", seen.oxygen);
        reading(e, Seen::moisture, "moisture", seen.moisture);
        reading(e, Seen::deposit, "deposit_thickness", seen.deposit_m);
    }

private:
    [[nodiscard]] Situation situation_of(const Observation& seen) const {
        Situation s;
        s.doing = doing_of(seen.state.value_or(StateKind::high_fire));
        for (std::size_t i = 0; i < resolved.weathers.size(); ++i) {
            if (seen.weather && resolved.weathers[i].name == *seen.weather) {
                s.weather = i;
            }
        }
        s.window_open = seen.window == WindowState::open;
        s.fan_off = seen.fan == FanState::off;
        s.windy = seen.wind ? *seen.wind == WindState::windy
                            : resolved.weathers[s.weather].wind_m_s
                                  >= catalog::default_of(DefaultId::windy_m_s).value;
        return s;
    }

    [[nodiscard]] Evidence smoke(Evidence e, const Observation& seen) const {
        const SmokePlace place = *seen.smoke;
        e.answer = place == SmokePlace::none ? Answer::no : Answer::yes;
        const bool door_state = e.situation.doing == Doing::door_open_high
                                || e.situation.doing == Doing::door_open_embers;
        if (place == SmokePlace::wind || (place == SmokePlace::none && e.situation.windy)) {
            e.seen = Seen::smoke_wind;
        } else if (place == SmokePlace::fan
                   || (place == SmokePlace::none && seen.fan == FanState::running)) {
            e.seen = Seen::smoke_fan;
        } else if (place == SmokePlace::lighting
                   || (place == SmokePlace::none && e.situation.doing == Doing::lighting)) {
            e.seen = Seen::smoke_lighting;
            e.situation.doing = Doing::lighting;
        } else if (resolved.appliance.has_door
                   && (place == SmokePlace::door || (place == SmokePlace::none && door_state))) {
            e.seen = Seen::smoke_door;
            e.situation.doing = door_doing(seen, resolved);
        } else {
            e.seen = Seen::smoke_joints;
        }
        return e;
    }

    void flag(Evidence e, Seen what, const Flag& given, Doing doing) {
        if (given) {
            e.seen = what;
            e.answer = *given ? Answer::yes : Answer::no;
            e.situation.doing = doing;
            list.push_back(e);
        }
    }

    void words(Evidence e, const Observation& seen) {
        if (seen.worse) {
            e.seen = Seen::worse;
            e.answer = *seen.worse == TroubleCourse::over_weeks  ? Answer::over_weeks
                       : *seen.worse == TroubleCourse::overnight ? Answer::overnight
                                                                 : Answer::steady;
            list.push_back(e);
        }
        if (seen.smoke_stick) {
            e.seen = Seen::stick;
            e.answer = *seen.smoke_stick == SmokeStick::in    ? Answer::in
                       : *seen.smoke_stick == SmokeStick::out ? Answer::out
                                                              : Answer::still;
            list.push_back(e);
        }
        if (seen.look && seen.found) {
            for (const Check& check : checks()) {
                if (check.kind == "look" && check.look == name(*seen.look)) {
                    e.look = &check;
                }
            }
            e.seen = Seen::look;
            e.answer = *seen.found == FoundState::bad ? Answer::yes : Answer::no;
            list.push_back(e);
        }
    }

    /// A tolerance in the file is taken as two standard deviations.
    void reading(Evidence e, Seen what, std::string_view key, const Given& given) {
        if (!given) {
            return;
        }
        e.seen = what;
        e.value = *given;
        e.spread = reading_spread(what, *given, resolved.room_temperature_k);
        const std::string pointer =
            "/observed/" + std::to_string(e.observation) + '/' + std::string{key};
        for (const Tolerance& tolerance : written.tolerances) {
            if (tolerance.pointer == pointer) {
                e.spread = 0.5 * tolerance.half_width;
            }
        }
        list.push_back(e);
    }
};

/// What a rule says of the thickness to be swept outweighs the word "good".
void set_aside_good_words(std::vector<Evidence>& list, const Installation& written) {
    const double to_sweep_m = catalog::rule_of(RuleId::trade_creosote_thickness).figure;
    const bool thick =
        std::any_of(written.observed.begin(), written.observed.end(), [&](const Observation& seen) {
            return seen.deposit_m.value_or(0.0) >= to_sweep_m;
        });
    for (Evidence& e : list) {
        const bool of_the_flue = e.seen == Seen::look && e.look->look == name(LookedAt::flue);
        if (thick && of_the_flue && e.answer == Answer::no) {
            e.aside = Aside::deposit_measured;
        }
    }
}

} // namespace

std::vector<Evidence> evidence_of(const Observation& seen,
                                  std::size_t index,
                                  const Installation& written,
                                  const Case& resolved) {
    Reader reader{written, resolved};
    reader.read(seen, index);
    return std::move(reader.list);
}

std::vector<Evidence> evidence_in(const Installation& written, const Case& resolved) {
    Reader reader{written, resolved};
    for (std::size_t i = 0; i < written.observed.size(); ++i) {
        reader.read(written.observed[i], i);
    }
    set_aside_good_words(reader.list, written);
    return std::move(reader.list);
}

} // namespace fluewright::diagnosis
