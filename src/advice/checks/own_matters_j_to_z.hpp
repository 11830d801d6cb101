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
     .title = "Leaky joints cool the flue",
     .meaning = "Room air drawn in through the joints cools the gas and takes part of what the "
                "flue can carry; walls turn wet and creosote forms.",
     .remedy = "Seal the lowest joints first, where the draft is greatest."},
    {.id = "joints-without-draft",
     .harm = Harm::fire,
     .severity = Severity::note,
     .per_place = true,
     .title = "Joints without draft",
     .meaning = "The gas in the pipe is slightly above the pressure of the air around it, as near "
                "the top of many sound flues. The joint is tight enough for that.",
     .remedy = "Keep the joint tight. A more open cap lowers the pressure below it."},
    {.id = "level-run-too-flat",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Horizontal run too flat",
     .meaning = "A horizontal run must rise towards the chimney, or smoke lingers and creosote "
                "runs out of the joints.",
     .remedy = "Raise the chimney end, or lower the appliance end."},
    {.id = "level-run-too-long",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Horizontal run too long",
     .meaning = "The horizontal run is too long for the height above it.",
     .remedy = "Move the appliance nearer, or rise before going across."},
    {.id = "no-cleanout-at-turn-up",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = true,
     .title = "No cleanout where the flue turns up",
     .meaning = "Soot collects where a horizontal run turns up. An elbow there clogs unseen.",
     .remedy = "Replace the elbow by a tee with a removable cap."},
    {.id = "reduced-on-the-way",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Flue reduced along the run",
     .meaning = "The flue gets narrower along the run. All the gas must pass the narrowest place, "
                "and soot builds up at the step.",
     .remedy = "Keep one size up to the chimney top."},
    {.id = "reversed-when-idle",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Downdraft when idle",
     .meaning = "With no fire, cold air comes down the flue into the room. A new fire smokes until "
                "the flue is warm.",
     .remedy = "Before lighting, open a window near the heater and warm the flue with burning "
               "paper. An enclosed or insulated chimney stays warmer."},
    {.id = "room-far-below-outdoors",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Room far below outdoor pressure",
     .meaning =
         "The room is below the limit even for a sealed heater. A good fire may still draw; a "
         "dying one does not, and its carbon monoxide comes into the room. Nobody smells it.",
     .remedy =
         "Light no fire with these fans running. Stop them and let air in near the appliance."},
    {.id = "run-falls",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = true,
     .title = "Pipe falls towards the chimney",
     .meaning =
         "Gas moves by rising. A pipe that falls holds it back, most of all when the fire is "
         "low, and it comes out of the joints before that pipe.",
     .remedy = "Hang the pipe so that it rises all the way to the chimney, by 1/4 in per ft (20 mm "
               "per m) at least."},
    {.id = "seen-too-hot",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "The run was seen far too hot",
     .meaning = "Pipe this hot glows, or soon will. It sets fire to what stands near, and to "
                "creosote in the flue; it may be a chimney fire. Such heat warps pipe and cracks "
                "liners.",
     .remedy =
         "If it burns now: shut all air and the door, keep clear of the pipe, and be ready to "
         "call the fire service. Light no fire before a sweep has examined appliance and "
         "flue."},
    {.id = "single-wall-outdoors",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Stovepipe outdoors",
     .meaning =
         "Stovepipe, single-wall or double-wall, is made for the room. Outdoors it cools the "
         "gas until creosote forms, and it rusts. Most codes do not accept it as a chimney.",
     .remedy = "Use factory-built chimney from where the run leaves the room."},
    {.id = "smoke-at-door",
     .harm = Harm::reloading,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Smoke at the opened door",
     .meaning = "The run does not draw enough air through the open door. Smoke rolls out at the "
                "top before the door is half open.",
     .remedy = "Reload on embers, not on flames. Open the air control a minute before; then open "
               "the door slowly, no further than stated."},
    {.id = "smoke-at-front",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Smoke at the open front",
     .meaning =
         "The flue draws too little air through the opening. Smoke rolls out under the lintel, and "
         "carbon monoxide with it; embers give off carbon monoxide without smoke.",
     .remedy = "Light no fire until that is mended. Fit a smoke guard under the lintel, a hood, a "
               "raised hearth, a larger or taller flue, or an insert with a liner."},
    {.id = "smoke-at-joints",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Joints under positive pressure",
     .meaning = "The gas in the pipe is above the pressure of the air around it. A joint of this "
                "fit lets smoke and carbon monoxide into the house.",
     .remedy = "Find the restriction above this joint. Sealing the joint alone only hides it."},
    {.id = "smoke-may-seep-at-joints",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Joints that may leak smoke",
     .meaning = "The gas in the pipe is above the pressure of the air around it, at a joint that "
                "is nearly tight or in a closed space. Once loose, it leaks smoke.",
     .remedy = "Look for a restriction above this joint, and have the joint checked."},
    {.id = "stovepipe-for-chimney",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Stovepipe stands for the chimney",
     .meaning = "Stovepipe outdoors fouls fast, since it is cold, and rusts where nobody looks. "
                "It is not made to hold a chimney fire, and what falls apart then hangs "
                "against the house.",
     .remedy = "Build a chimney, factory-built or lined masonry, from where the run leaves the "
               "room. Light no fire before."},
    {.id = "straight-grows-past-its-joint",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Pipe expands more than its joint takes",
     .meaning = "A straight fixed at both ends pushes its joints apart or bends when it lengthens "
                "in the heat.",
     .remedy = "Fit a slip joint or a telescoping length, and fix the straight at one end only."},
    {.id = "surface-over-rating",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Surface hotter than its rating",
     .meaning = "The outside of the pipe gets hotter than its paint or wall is rated for.",
     .remedy = "Use a finish with a higher rating, or burn a smaller fire."},
    {.id = "too-many-turns",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Too many turns",
     .meaning = "Every turn costs draft and collects soot. Trade practice allows two 90 degree "
                "turns between heater and chimney.",
     .remedy = "Straighten the run, or replace a 90 degree elbow by two of 45."},
    {.id = "unusual-input",
     .harm = Harm::draft,
     .severity = Severity::note,
     .per_place = true,
     .title = "Unusual value",
     .meaning =
         "A value is far from what such installations have. Doubt the result until it is checked.",
     .remedy = "Measure or read this value again."},
    {.id = "wall-below-acid-dew-point",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Acid condenses on the wall",
     .meaning = "The inner wall is below the acid dew point of the gas. Acid corrodes steel, "
                "mortar and clay joints.",
     .remedy = "Fit a liner made for this fuel, insulate the flue, or burn fuel with less sulfur."},
    {.id = "wall-below-creosote-threshold",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Creosote on the flue wall",
     .meaning = "Where the inner wall is below about 250 degF (121 degC), wood smoke leaves "
                "creosote on it. Creosote narrows the flue and can burn.",
     .remedy = "Burn dry wood in brisk fires, insulate or enclose the cold part, and check it for "
               "creosote often."},
    {.id = "wall-below-dew-point",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Water condenses on the wall",
     .meaning = "The inner wall is below the dew point of the gas. Water runs down the flue, with "
                "acid and creosote in it.",
     .remedy = "Insulate the flue, or bring it nearer the outlet's size."},
});

} // namespace fluewright::checking
