#include "evidence.hpp"

namespace fluewright::diagnosis {
namespace {

std::string place_words(const Evidence& e, const Run& run) {
    if (e.point == 0) {
        return "at the outlet";
    }
    return e.point > run.parts.size() ? std::string{"at the chimney top"}
                                      : "behind " + run.label_at(static_cast<int>(e.point) - 1);
}

std::string symptom_words(const Evidence& e, const Run& run) {
    const bool yes = e.answer == Answer::yes;
    switch (e.seen) {
    case Seen::smoke_joints:
        return yes ? "smoke at the joints" : "no smoke at the joints";
    case Seen::smoke_door:
        return yes ? "smoke at the opened door" : "no smoke at the opened door";
    case Seen::smoke_lighting:
        return yes ? "smoke at lighting" : "no smoke at lighting";
    case Seen::smoke_wind:
        return yes ? "smoke in wind" : "no more smoke in wind than in calm";
    case Seen::smoke_fan:
        return yes ? "smoke when a fan runs" : "no more smoke with fans than without";
    case Seen::sluggish:
        return yes ? "sluggish fire" : "the fire burns well";
    case Seen::roaring:
        return yes ? "roaring fire that cannot be turned down" : "the fire can be turned down";
    case Seen::drips:
        return (yes ? "drips from the flue" : "no drips")
               + (e.point == 0 ? std::string{} : ' ' + place_words(e, run));
    case Seen::smell:
        return yes ? "smell or cold air when idle" : "no smell when idle";
    case Seen::co_alarm:
        return yes ? "carbon monoxide alarm" : "no carbon monoxide alarm";
    case Seen::window:
        return yes ? "better with a window open" : "no better with a window open";
    default:
        return {};
    }
}

std::string answer_words(const Evidence& e, const Run& run) {
    switch (e.answer) {
    case Answer::in:
        return "smoke stick drawn in " + place_words(e, run);
    case Answer::out:
        return "smoke stick blown out " + place_words(e, run);
    case Answer::still:
        return "smoke stick still " + place_words(e, run);
    case Answer::over_weeks:
        return "built up over weeks";
    case Answer::overnight:
        return "came overnight";
    default:
        return "always so";
    }
}

std::string_view reading_words(Seen seen) {
    switch (seen) {
    case Seen::gas_temperature:
        return "gas temperature";
    case Seen::surface_temperature:
        return "surface temperature";
    case Seen::room_pressure:
        return "room pressure";
    case Seen::carbon_dioxide:
        return "CO2";
    case Seen::oxygen:
        return "O2";
    case Seen::moisture:
        return "moisture of the wood";
    case Seen::deposit:
        return "deposit";
    default:
        return "draft";
    }
}

bool depends_on_state(Seen seen) {
    switch (seen) {
    case Seen::smoke_joints:
    case Seen::smoke_door:
    case Seen::window:
    case Seen::stick:
    case Seen::draft:
    case Seen::gas_temperature:
    case Seen::surface_temperature:
    case Seen::room_pressure:
    case Seen::carbon_dioxide:
    case Seen::oxygen:
        return true;
    default:
        return false;
    }
}

bool has_place(Seen seen) {
    return seen == Seen::draft || seen == Seen::gas_temperature || seen == Seen::surface_temperature
           || seen == Seen::carbon_dioxide || seen == Seen::oxygen;
}

} // namespace

std::string words(const Evidence& e, const Case& c) {
    std::string text;
    if (e.is_reading()) {
        text = std::string{reading_words(e.seen)} + ' '
               + format_quantity(e.value, kind_of(e.seen), c.units);
        text += e.seen == Seen::gas_temperature && e.by_probe ? " by a bare probe" : "";
        text += has_place(e.seen) ? ' ' + place_words(e, c.run) : std::string{};
    } else if (e.seen == Seen::look) {
        text = std::string{e.look->look} + " found " + (e.answer == Answer::yes ? "bad" : "good");
    } else if (e.seen == Seen::worse || e.seen == Seen::stick) {
        text = answer_words(e, c.run);
    } else {
        text = symptom_words(e, c.run);
    }
    switch (e.aside) {
    case Aside::deposit_measured:
        return text + "; not weighed, as more deposit was measured than may stay";
    case Aside::stove_out:
        return text + " while the appliance was out; it speaks for no cause here";
    case Aside::no:
        break;
    }
    return depends_on_state(e.seen) ? text + " (" + words(e.situation, c) + ')' : text;
}

std::string expectation_words(const Evidence& e, double x, double share, const Case& c) {
    if (e.is_reading()) {
        return format_quantity(x, kind_of(e.seen), c.units, 2);
    }
    if (e.seen == Seen::stick) {
        switch (e.answer) {
        case Answer::in:
            return "drawn in";
        case Answer::out:
            return "blown out";
        default:
            return "still";
        }
    }
    if (e.seen == Seen::worse) {
        return e.answer == Answer::over_weeks  ? "over weeks"
               : e.answer == Answer::overnight ? "overnight"
                                               : "steady";
    }
    return share >= 0.8   ? "yes"
           : share >= 0.6 ? "probably yes"
           : share > 0.4  ? "may be"
           : share > 0.2  ? "probably no"
                          : "no";
}

Kind kind_of(Seen seen) {
    switch (seen) {
    case Seen::draft:
    case Seen::room_pressure:
        return Kind::pressure;
    case Seen::gas_temperature:
    case Seen::surface_temperature:
        return Kind::temperature;
    case Seen::carbon_dioxide:
    case Seen::oxygen:
        return Kind::fraction;
    case Seen::moisture:
        return Kind::moisture;
    case Seen::deposit:
        return Kind::length;
    default:
        return Kind::number;
    }
}

} // namespace fluewright::diagnosis
