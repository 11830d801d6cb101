#pragma once

#include "fluewright/advice/checks/check.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <array>

/// What a matter is called, means and asks of kinds of heater for which the words of the general
/// row do not hold: a burner has no tar, a hearth no door.
namespace fluewright::checking {

/// Takes the place of the words of the matter of its id for these kinds. Empty: as in the general
/// row.
struct KindWords {
    std::string_view id;
    Kinds kinds;
    std::string_view title;
    std::string_view meaning;
    std::string_view remedy;
};

inline constexpr auto kind_words = std::to_array<KindWords>({
    {"alarm-has-sounded",
     burners,
     {},
     {},
     "If it sounds now, get everybody out and call for help. Keep the burner off until a licensed "
     "technician has examined it and its vent. `fluewright diagnose` asks what can be checked with "
     "the burner off."},
    {"bend-too-near-heater",
     burners,
     {},
     "An elbow too close to the collar makes starting hard.",
     {}},
    {"cap-too-close", burners, {}, "A low cap restricts the flue and collects ice.", {}},
    {"chimney-unlined",
     burners,
     {},
     "Unlined brick lets gas through its joints, and condensate softens them.",
     {}},
    {"cold-air-falls-in-at-top",
     burners,
     "Cold air enters at the chimney top",
     {},
     "Use a flue nearer the outlet's size, or narrow the chimney top."},
    {"crimp-points-up",
     burners,
     {},
     "Water runs down the inside of a flue. Where the crimped end points up, it runs out at the "
     "joint, down the outside and onto the heater.",
     {}},
    {"draft-short",
     burners,
     {},
     "There is less draft at the outlet than the appliance requires. The burner burns badly, and "
     "its gas with carbon monoxide comes into the room.",
     {}},
    {"draft-short",
     {HeaterKind::open_fire},
     {},
     "There is less draft at the outlet than it takes to draw the air of the opening and the smoke "
     "of this fire into the flue. Smoke rolls out under the lintel.",
     {}},
    {"draft-too-strong",
     {HeaterKind::oil},
     {},
     "Above its greatest draft the burner gets too much air and sends its heat up the flue.",
     "Fit a draft regulator, set as the maker of the burner states."},
    {"draft-too-strong",
     {HeaterKind::gas, HeaterKind::gas_hood, HeaterKind::pellets},
     {},
     "Above its greatest draft the burner gets too much air and sends its heat up the flue.",
     "Ask the maker of the burner what holds the draft of a vent this tall."},
    {"fan-reverses-flue",
     burners,
     {},
     "The fans take more air than leaks into the house, and the rest comes down the flue. Gas of "
     "the burner comes back into the room.",
     "Give the fans a make-up air inlet, or have an interlock stop them while the burner runs."},
    {"fan-reverses-idle-flue",
     burners,
     {},
     "With the burner off the fans draw outdoor air down the flue, and the burner starts in a "
     "downdraft.",
     "Give the fans a make-up air inlet, or have an interlock stop them while the burner runs."},
    {"flue-far-larger-than-outlet",
     burners,
     {},
     "In a flue much larger than the outlet the gas is slow and cools. The draft builds late, and "
     "the wall gets wet.",
     {}},
    {"gas-too-hot",
     burners,
     "Gas far too hot",
     "No burner in order sends gas this hot up its vent, and neither pipe nor masonry is made for "
     "it.",
     "Check the figures in the file. If they are right, shut the burner off until a licensed "
     "technician has examined it."},
    {"hearth-wall-too-thin",
     burners,
     {},
     "A thin masonry wall passes its heat on to combustibles behind it.",
     {}},
    {"ice-at-top",
     burners,
     "Ice at the chimney top",
     {},
     "Insulate the flue up to its top, or bring it nearer the outlet's size. In frost, check the "
     "chimney top daily."},
    {"joint-leak-dilutes",
     burners,
     {},
     "Room air drawn in through the joints cools the gas and uses up draft. Walls get wet.",
     {}},
    {"level-run-too-flat",
     burners,
     {},
     "A horizontal run must rise towards the top, or gas lingers and water collects in it.",
     "Raise its far end or lower the appliance end."},
    {"run-falls",
     burners,
     "Vent falls on its way to the top",
     {},
     "Hang the vent so that it rises all the way to its top."},
    {"no-cleanout-at-turn-up",
     {HeaterKind::pellets},
     "No cleanout where the flue turns up",
     "Fly ash collects where a horizontal run turns up. An elbow there clogs unseen.",
     "Replace the elbow by a tee with a removable cap."},
    {"pipe-too-long", burners, {}, "A long connector cools the gas and has many joints.", {}},
    {"reversed-when-idle",
     {HeaterKind::open_fire},
     {},
     {},
     "Before lighting, open a window near the hearth and warm the flue with burning paper held up "
     "in the throat. Shut the damper when the hearth is cold."},
    {"reversed-when-idle",
     burners,
     {},
     "With the burner off, cold air comes down the flue into the room, and the burner starts in a "
     "downdraft.",
     "Let air into the room, or enclose or insulate the flue to keep it warmer."},
    {"seen-too-hot",
     burners,
     {},
     "Pipe this hot glows, or soon will, and sets fire to what stands near. A sound burner does "
     "not heat its vent like that.",
     "Shut off the fuel and the switch, keep clear of the pipe, and be ready to call the fire "
     "service. Keep the burner off until a licensed technician has examined it and its vent."},
    {"single-wall-outdoors",
     burners,
     {},
     "Single-wall pipe outdoors cools the gas until its water condenses, and it rusts. Most codes "
     "do not accept it as a chimney.",
     {}},
    {"too-many-turns",
     gas_burners,
     {},
     "Every turn costs draft. Trade practice allows two 90 degree turns between heater and vent.",
     {}},
    {"wall-below-dew-point",
     burners,
     {},
     "The inner wall is below the dew point of the gas. Acid water runs down the flue.",
     {}},
    {"wall-below-dew-point",
     {HeaterKind::open_fire, HeaterKind::masonry_heater},
     {},
     "The inner wall is below the dew point of the gas. Water runs down the flue, with acid and "
     "soot in it.",
     {}},
});

} // namespace fluewright::checking
