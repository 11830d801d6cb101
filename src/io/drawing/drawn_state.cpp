#include "fluewright/io/drawing/draw.hpp"
#include "io/text/words.hpp"

namespace fluewright {
namespace {

bool has_profile(const StateResult& state) {
    return report::has_working_point(state) && state.stations.size() > 1;
}

/// The best of the states by a preference; null where none has a profile.
template <class Preference>
const StateResult* best_state(const Assessment& a, const Preference& preference) {
    const StateResult* best = nullptr;
    for (const StateResult& state : a.solution.states) {
        if (has_profile(state) && (best == nullptr || preference(state, *best))) {
            best = &state;
        }
    }
    return best;
}

} // namespace

const StateResult* drawn_state(const Assessment& a, Show show) {
    const auto& states = a.solution.states;
    const bool limited = a.limiting < states.size();
    if (show == Show::pressure && limited && has_profile(states[a.limiting])) {
        return &states[a.limiting];
    }
    const std::size_t deciding = limited ? states[a.limiting].weather : 0;
    const auto outdoors_k = [&](const StateResult& state) {
        return a.installation.weathers[state.weather].outdoor_temperature_k;
    };
    const bool low = show == Show::creosote;
    const auto rank = [&](const StateResult& state) {
        return state.kind == (low ? StateKind::low_fire : StateKind::high_fire) ? 0
               : has_closed_fire(state.kind)                                    ? 1
               : fire_of(state.kind) == Fire::burning                           ? 2
                                                                                : 3;
    };
    return best_state(a, [&](const StateResult& one, const StateResult& other) {
        if (rank(one) != rank(other)) {
            return rank(one) < rank(other);
        }
        return low ? outdoors_k(one) < outdoors_k(other)
                   : one.weather == deciding && other.weather != deciding;
    });
}

std::vector<std::string> drawn_state_names(const Assessment& a) {
    std::vector<std::string> names;
    for (const StateResult& state : a.solution.states) {
        if (has_profile(state)) {
            names.push_back(report::state_words(a.installation, state));
        }
    }
    return names;
}

const StateResult* state_named(const Assessment& a, std::string_view name) {
    for (const StateResult& state : a.solution.states) {
        if (has_profile(state) && report::state_words(a.installation, state) == name) {
            return &state;
        }
    }
    return nullptr;
}

} // namespace fluewright
