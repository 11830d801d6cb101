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
    {"bend-too-near-heater", burners, {}, "Gas that turns before it has risen starts badly.", {}},
    {"cap-too-close", burners, {}, "A cap set low chokes the flue and gathers ice.", {}},
    {"chimney-unlined",
     burners,
     {},
     "Bare brick lets gas through its joints, and the water of the gas softens them.",
     {}},
    {"cold-air-falls-in-at-top",
     burners,
     "Cold air falls in at the top",
     {},
     "A flue nearer the outlet's size, or a narrower top."},
    {"crimp-points-up",
     burners,
     {},
     "Water runs down the inside of a flue. Where the inserted end points up, it runs out at the "
     "joint, down the outside and onto the heater.",
     {}},
    {"draft-short",
     burners,
     {},
     "The run delivers less draft at the outlet than the appliance needs. The flame burns badly, "
     "and its gas with carbon monoxide comes out wherever it can.",
     {}},
    {"draft-short",
     {HeaterKind::open_fire},
     {},
     "The run gives less draft at the outlet than it takes to bring the air of the opening and the "
     "gas of this fire into the flue. The smoke rolls out under the lintel.",
     {}},
    {"draft-too-strong",
     {HeaterKind::oil},
     {},
     "Above its greatest draft the burner gets too much air and sends its heat up the flue.",
     "Fit a draft regulator, set to what the maker of the burner asks."},
    {"draft-too-strong",
     {HeaterKind::gas, HeaterKind::gas_hood, HeaterKind::pellets},
     {},
     "Above its greatest draft the burner gets too much air and sends its heat up the flue.",
     "Ask the maker of the burner what holds the draft of a vent this tall."},
    {"fan-reverses-flue",
     burners,
     {},
     "The fans take more air than the leaks of the house give at a small pressure; the flue is the "
     "widest hole left, and gas of the burner comes back into the room.",
     "Give the fans an inlet of their own, or let a contact stop them while the burner runs."},
    {"fan-reverses-idle-flue",
     burners,
     {},
     "With the burner off the fans draw outdoor air down the flue, and it starts against them.",
     "Give the fans an inlet of their own, or let a contact stop them while the burner runs."},
    {"flue-far-larger-than-outlet",
     burners,
     {},
     "In a flue much larger than the outlet the gas slows, cools and wets the wall; the draft "
     "comes "
     "late.",
     {}},
    {"hearth-wall-too-thin",
     burners,
     {},
     "A wall that does not burn passes its heat on to what burns behind it.",
     {}},
    {"ice-at-top",
     burners,
     "Ice grows at the top",
     {},
     "Insulate the flue up to its top or bring it nearer the outlet's size; in frost, look at the "
     "top daily."},
    {"joint-leak-dilutes",
     burners,
     {},
     "Room air drawn in through the joints cools the gas and takes part of what the flue can "
     "carry; "
     "walls turn wet.",
     {}},
    {"level-run-too-flat",
     burners,
     {},
     "A level pipe must rise on its way out, or gas lingers and water stands in it.",
     "Raise its far end or lower the appliance end."},
    {"no-cleanout-at-turn-up",
     {HeaterKind::pellets},
     "Nothing to take off where the flue turns up",
     "Where a level run turns up, fly ash falls and gathers; an elbow there clogs unseen.",
     "Replace the elbow by a tee with a cap that can be taken off."},
    {"pipe-too-long", burners, {}, "A long connector cools the gas and has many joints.", {}},
    {"reversed-when-idle",
     {HeaterKind::open_fire},
     {},
     {},
     "Open a window by the hearth and warm the flue with burning paper held up in the throat "
     "before "
     "lighting; shut the damper when the hearth is cold."},
    {"reversed-when-idle",
     burners,
     {},
     "With the burner off the air in the flue is heavier than the draft of the house allows: it "
     "falls into the room, and the burner starts against it.",
     "Let air into the room, or enclose or insulate the flue, which then stays warmer."},
    {"single-wall-outdoors",
     burners,
     {},
     "Bare pipe in the open cools the gas until its water settles, rusts, and is no chimney in the "
     "sense of most codes.",
     {}},
    {"too-many-turns",
     gas_burners,
     {},
     "Every turn costs draft; past two right angles between heater and vent the trade says no.",
     {}},
    {"wall-below-dew-point",
     burners,
     {},
     "The inner wall is below the dew point of the gas: water runs down the flue, and it is acid.",
     {}},
    {"wall-below-dew-point",
     {HeaterKind::open_fire, HeaterKind::masonry_heater},
     {},
     "The inner wall is below the dew point of the gas: water runs down the flue, with acid and "
     "soot in it.",
     {}},
});

} // namespace fluewright::checking
