#pragma once

#include "fluewright/advice/checks/check.hpp"

#include <array>

/// The matters that physics or trade practice speak of, in order of id, from j on.
namespace fluewright::checking {

inline constexpr auto own_matters_j_to_z = std::to_array<Matter>({
    {.id = "joint-leak-dilutes",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Leaky joints chill the flue",
     .meaning = "Room air drawn in through the joints cools the gas and takes part of what the "
                "flue can carry; walls turn wet and tar settles.",
     .remedy = "Seal the joints below it first, where the draft is greatest."},
    {.id = "joints-without-draft",
     .harm = Harm::fire,
     .severity = Severity::note,
     .per_place = true,
     .title = "Joints that no draft holds",
     .meaning = "Here the gas in the pipe is a little above the pressure of the air around it, as "
                "it is near the top of many a sound flue. The joint is tight enough for that.",
     .remedy = "Keep the joint tight; a freer cap lowers the pressure below it."},
    {.id = "level-run-too-flat",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Level run too flat",
     .meaning = "A level pipe must rise towards the chimney, or smoke lingers and tar runs out of "
                "the joints.",
     .remedy = "Raise the chimney end or lower the appliance end."},
    {.id = "level-run-too-long",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Level run too long",
     .meaning = "The pipe runs level for too great a share of the height that drives it.",
     .remedy = "Move the appliance nearer, or go up before going across."},
    {.id = "no-cleanout-at-turn-up",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = true,
     .title = "No cleanout where the flue turns up",
     .meaning = "Where a level run turns up, soot falls and gathers; an elbow there clogs unseen.",
     .remedy = "Replace the elbow by a tee with a cap that can be taken off."},
    {.id = "reduced-on-the-way",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Flue reduced on its way",
     .meaning = "The flue gets narrower on its way up. All gas must pass the narrowest place, and "
                "soot gathers at the step.",
     .remedy = "Carry one size through to the mouth."},
    {.id = "reversed-when-idle",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Cold air falls down the idle flue",
     .meaning = "With no fire the air in the flue is heavier than the draft of the house allows: "
                "it falls into the room, and a new fire must first push it out.",
     .remedy = "Open a window by the heater and warm the flue with burning paper before lighting; "
               "an enclosed or insulated chimney stays warmer."},
    {.id = "room-far-below-outdoors",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "The room is far below outdoor pressure",
     .meaning = "The room is lower than even a heater sealed against it may be used in. A burning "
                "fire may still draw; a dying one no longer does, and its carbon monoxide, which "
                "nobody smells, comes into the room.",
     .remedy = "No fire with these fans running. Stop them and let air in near the appliance."},
    {.id = "single-wall-outdoors",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Single-wall pipe outdoors",
     .meaning = "Bare pipe in the open cools the gas below the point where tar settles, rusts, and "
                "is no chimney in the sense of most codes.",
     .remedy = "Use an insulated chimney from where the run leaves the room."},
    {.id = "smoke-at-door",
     .harm = Harm::reloading,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Smoke at the opened door",
     .meaning =
         "Through an open door the run must draw air fast enough to keep the smoke in. Here it "
         "cannot, so smoke rolls out at the top before the door is half open.",
     .remedy = "Open the air control a minute before, open the door slowly and no further than "
               "stated, on embers, not on flames."},
    {.id = "smoke-at-front",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Smoke at the open front",
     .meaning = "The flue draws too little air through the opening to hold in the smoke: it rolls "
                "out under the lintel, and carbon monoxide with it, of embers without smoke.",
     .remedy =
         "Burn nothing in it until that is mended: by a smoke guard under the lintel, a raised "
         "hearth, a hood, a larger or higher flue, or an insert with a liner."},
    {.id = "smoke-at-joints",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Joints under pressure",
     .meaning = "Here the gas in the pipe is so far above the pressure of the air around it that a "
                "joint of this fit lets smoke and carbon monoxide into the house.",
     .remedy = "Find what holds the gas back above this place; sealing the joint alone hides it."},
    {.id = "smoke-may-seep-at-joints",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Joints that smoke may seep from",
     .meaning = "Here the gas in the pipe is above the pressure of the air around it, in a joint "
                "that holds most of it back or that stands in a shut space. A joint that has "
                "worked loose lets it out.",
     .remedy = "Look for what holds the gas back above this place, and have the joint looked at."},
    {.id = "straight-grows-past-its-joint",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Pipe grows more than its joint takes",
     .meaning = "A straight fixed at both ends that lengthens when hot pushes its joints apart or "
                "bends the pipe.",
     .remedy = "Put a slip joint or telescoping length in it, and fix it at one end only."},
    {.id = "surface-over-rating",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Surface hotter than its rating",
     .meaning = "The outside of the pipe gets hotter than its paint or wall is rated for.",
     .remedy = "Use a higher rated finish, or a cooler pipe further from the outlet."},
    {.id = "too-many-turns",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Too many turns",
     .meaning = "Every turn costs draft and gathers soot; past two right angles between heater and "
                "chimney the trade says no.",
     .remedy = "Straighten the way, or use two 45 degree elbows for a 90."},
    {.id = "unusual-input",
     .harm = Harm::draft,
     .severity = Severity::note,
     .per_place = true,
     .title = "Unusual value",
     .meaning = "A value is so far from what such installations have that the result should be "
                "doubted until it is checked.",
     .remedy = "Measure or read this value again."},
    {.id = "wall-below-acid-dew-point",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Acid condenses on the wall",
     .meaning =
         "The inner wall is dry of water and yet below the dew point of the sulfuric acid in "
         "the gas: acid eats steel, mortar and clay joints.",
     .remedy = "A liner made for the fuel, an insulated flue, or fuel with less sulfur."},
    {.id = "wall-below-creosote-threshold",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Wall cold enough for tar",
     .meaning = "Where the inner wall is colder than about 121 degC, tar from wood smoke settles "
                "on it as creosote, which narrows the flue and can burn.",
     .remedy = "Burn hotter and shorter, keep the wood dry, insulate or enclose the cold part, and "
               "look at it often."},
    {.id = "wall-below-dew-point",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Water condenses on the wall",
     .meaning = "The inner wall is below the dew point of the gas: water runs down the flue, with "
                "acid and tar in it.",
     .remedy = "Insulate the flue or bring it nearer the outlet's size."},
});

} // namespace fluewright::checking
