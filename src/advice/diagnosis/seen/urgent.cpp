#include "urgent.hpp"

#include "advice/seen_trouble.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>

namespace fluewright::diagnosis {
namespace {

bool has_burner(const Case& resolved) {
    return burners.has(kind_of(resolved.appliance));
}

std::string alarm_words(bool burner) {
    return std::string{"A carbon monoxide alarm has sounded: get everybody out, call the "
                       "emergency number from outdoors, and see a doctor if anyone feels ill. "}
           + (burner ? "Shut off the fuel and the switch if you can do so on the way out. Leave "
                       "the burner off until a licensed technician has examined it and its vent; "
                       "the checks below leave it off."
                     : "Do not light the appliance again before a sweep has examined the flue; the "
                       "checks below leave it cold.");
}

std::string too_hot_words(bool burner) {
    return burner ? "The vent was seen far too hot: shut off the fuel and the switch, keep clear "
                    "of the pipe, and be ready to call the fire service. Leave the burner off "
                    "until a licensed technician has examined it and its vent."
                  : "The run was seen so hot that pipe glows or soon will: shut all air and the "
                    "door, keep clear of the pipe, and move away what burns. Be ready to call the "
                    "fire service: call it if this goes on, if the flue roars, or if anything near "
                    "the pipe smokes. Light no fire before a sweep has examined appliance and "
                    "flue.";
}

std::string reversed_words(double draft_pa, bool burner, UnitSystem units) {
    return "A draft of " + format_quantity(draft_pa, Kind::pressure, units)
           + " was measured. A minus means that gas comes out of the flue, with carbon monoxide in "
             "it. If that is so, "
           + (burner ? "shut off the fuel and the switch" : "stop feeding the fire")
           + ", open doors and windows, and leave the room. Did you mean a draft of "
           + format_quantity(-draft_pa, Kind::pressure, units)
           + "? Many gauges show suction with a minus: then write it without.";
}

std::string_view smoke_words(bool burner) {
    return burner ? "Gas in the room brings carbon monoxide with it. It has no smell and kills. "
                    "Shut off the fuel and the switch, open doors and windows, and leave the room. "
                    "Call for help if anybody has a headache."
                  : "Smoke in the room brings carbon monoxide with it. It has no smell and kills. "
                    "While it smokes: stop feeding the fire, open doors and windows, and leave the "
                    "room. Call for help if it does not stop, or if anybody has a headache.";
}

std::string_view use_words(bool no_fire, bool burner) {
    if (burner) {
        return "Leave the burner off until a licensed technician has found the cause and cured it.";
    }
    return no_fire ? "Do not use the appliance again until the cause is found and cured. The "
                     "checks below leave it cold."
                   : "Until the cause is found and cured, light it for nothing but a check that "
                     "needs a fire. Make it with somebody beside it, a window open and a working "
                     "carbon monoxide alarm. It ends as soon as smoke comes out.";
}

} // namespace

Urgent urgent_in(const std::vector<Observation>& observed,
                 const std::vector<Evidence>& evidence,
                 const std::vector<PresentDanger>& dangers,
                 const Case& resolved) {
    Urgent urgent;
    urgent.alarm = alarm_has_sounded(observed);
    urgent.alarm_when_out = std::any_of(evidence.begin(), evidence.end(), [](const Evidence& e) {
        return e.aside == Aside::stove_out;
    });
    urgent.too_hot = std::any_of(dangers.begin(), dangers.end(), [](const PresentDanger& danger) {
        return danger.id == "seen-too-hot";
    });
    for (const Observation& seen : observed) {
        for (const auto& [hazard, key] : hazards_of(seen, resolved.appliance)) {
            urgent.smoke |= hazard == Hazard::smoke || hazard == Hazard::blown_out;
            urgent.at_joints |= seen.smoke == SmokePlace::joints || hazard == Hazard::blown_out;
            urgent.roars |= hazard == Hazard::roaring;
            urgent.creosote |= hazard == Hazard::creosote;
            urgent.falls_back |= hazard == Hazard::fallen_back;
            if (hazard == Hazard::reversed) {
                urgent.reversed_pa = std::min(urgent.reversed_pa, *seen.draft_pa);
            }
        }
    }
    const double danger_pa = catalog::default_of(DefaultId::room_pressure_danger_pa).value;
    urgent.room_far_below = std::any_of(evidence.begin(), evidence.end(), [&](const Evidence& e) {
        return e.seen == Seen::room_pressure && e.value < danger_pa;
    });
    return urgent;
}

// The steps are those official bodies give: stop feeding, open up, leave, call for help, see a
// doctor; a chimney fire is left to the fire service and the flue examined before its next use.
// Those for a glowing pipe are common practice, no source.
std::vector<std::string> urgent_words(const Urgent& urgent, bool no_fire, const Case& resolved) {
    const bool burner = has_burner(resolved);
    std::vector<std::string> lines;
    if (urgent.alarm) {
        lines.push_back(alarm_words(burner));
    }
    if (urgent.alarm_when_out) {
        lines.emplace_back("It sounded while the appliance was out. Have every other source looked "
                           "at as well: embers and hot ash, another burner, a flue that passes "
                           "through, an engine or a garage, and the age of the alarm itself. "
                           "Until one is found, this flue stays under suspicion.");
    }
    if (urgent.too_hot) {
        lines.push_back(too_hot_words(burner));
    }
    if (urgent.reversed_pa < 0.0) {
        lines.push_back(reversed_words(urgent.reversed_pa, burner, resolved.units));
    }
    if (urgent.room_far_below) {
        lines.emplace_back(
            "The room was measured far below outdoor pressure. A dying fire does not draw against "
            "that, and its carbon monoxide comes into the room. Switch off every fan, open a "
            "window, and light no fire before the pressure is cured.");
    }
    if (urgent.falls_back) {
        lines.emplace_back(std::string{"Air comes down the cold flue. "}
                           + (burner ? "Leave the burner off until"
                                     : "Light no fire before the flue was warmed and")
                           + " a smoke stick at the open appliance is drawn in: else its gas "
                             "comes into the room, with carbon monoxide in it.");
    }
    if (urgent.smoke) {
        lines.emplace_back(smoke_words(burner));
    }
    if (urgent.smoke || urgent.nearly_shut) {
        if (!urgent.smoke) {
            lines.emplace_back("By what was seen the flue may be nearly shut. Then it sends its "
                               "gas into the room, with carbon monoxide in it.");
        }
        lines.emplace_back(use_words(no_fire, burner));
    }
    if (urgent.roars) {
        lines.emplace_back(burner
                               ? "If the flue itself roars, shakes or glows, shut off the fuel, "
                                 "get everybody out and call the fire service. Have the vent "
                                 "examined before it is used again."
                               : "If the flue itself roars, shakes or glows, it is a chimney fire: "
                                 "shut all air, get everybody out and call the fire service. Have "
                                 "the flue examined before it is used again.");
    }
    if (urgent.creosote) {
        lines.emplace_back("What runs black or brown from the flue of a wood fire is creosote, and "
                           "it burns. Have the flue swept before the next hot fire, whatever the "
                           "cause is.");
    }
    return lines;
}

bool may_be_made(const Check& check, const Urgent& urgent, bool no_fire) {
    if (check.fire == "no") {
        return true;
    }
    return !no_fire && !urgent.creosote && !urgent.roars;
}

bool needs_fire(const Evidence& e) {
    switch (e.seen) {
    case Seen::moisture:
    case Seen::deposit:
    case Seen::look:
    case Seen::worse:
    case Seen::smell:
        return false;
    default:
        return e.situation.doing != Doing::idle;
    }
}

} // namespace fluewright::diagnosis
