#pragma once

#include "fluewright/advice/checks/check.hpp"

#include <array>

/// The matters that physics or trade practice speak of, in order of id, from a on.
namespace fluewright::checking {

inline constexpr auto own_matters_a_to_i = std::to_array<Matter>({
    {.id = "alarm-has-sounded",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "A carbon monoxide alarm has sounded",
     .meaning =
         "Carbon monoxide was in the room. What let it in may not be in this file at all: no "
         "figure here clears the appliance, and no change here is its cure.",
     .remedy = "Everybody out, and call for help if it sounds now. No fire before a sweep has "
               "examined the flue; `fluewright diagnose` asks what can be seen with the appliance "
               "cold."},
    {.id = "chimney-below-usual-height",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Chimney lower than usual",
     .meaning =
         "The mouth is lower over the floor of the heater than the trade's usual least height. A "
         "short stack has little draft to spare, and wind and roof reach it easily.",
     .remedy = "Raise the top; every metre of warm flue adds 3 to 7 Pa."},
    {.id = "cold-air-falls-in-at-top",
     .harm = Harm::draft,
     .severity = Severity::note,
     .per_place = false,
     .title = "Cold air falls in at the chimney top",
     .meaning = "The gas leaves the top so slowly for its lightness that cold air falls in beside "
                "it and cools the flue from above. The computed draft does not count that and is "
                "doubtful in this state: take it for the most there can be.",
     .remedy = "A flue nearer the outlet's size, a narrower top, or a brisker fire."},
    {.id = "crimp-points-up",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Inserted end points to the chimney",
     .meaning = "Tar and water run down the inside of a flue. Where the inserted end points up, "
                "they run out at the joint, down the outside and onto the heater.",
     .remedy = "Turn the part round, so that its crimped end points to the heater."},
    {.id = "damper-on-gas",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Damper by hand behind a gas burner",
     .meaning = "A burner starts whether the damper is open or not. A blade that stands turned "
                "sends its gas with carbon monoxide into the room.",
     .remedy = "Take the damper out."},
    {.id = "diameters-do-not-match",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Two sizes meet",
     .meaning = "The two sides of a joint are of different sizes. Sizes of inches and millimetres "
                "look alike (6 in is 152.4 mm) and still do not fit tightly.",
     .remedy = "Put a reducer, an increaser or an adapter between, or buy both of one size."},
    {.id = "downdraft-in-wind",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "Gusts push down the flue",
     .meaning = "The mouth stands where wind presses on it. In a gust that pressure exceeds the "
                "draft, and smoke puffs into the room.",
     .remedy = "Raise the mouth clear of the ridge and of what stands near it; a cowl made for "
               "downdraft helps where that cannot be done."},
    {.id = "draft-short",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "Not enough draft",
     .meaning = "The run delivers less draft at the outlet than the appliance needs in this state. "
                "The fire will be sluggish and smoke will come out wherever it can.",
     .remedy = "Find the greatest loss of this state: cooling, then fittings, then size."},
    {.id = "draft-too-strong",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Too much draft",
     .meaning = "Above its greatest draft the appliance can no longer be held down: it burns fast, "
                "runs hot and sends its heat up the flue.",
     .remedy = "Fit a damper or a draft regulator if the maker of the appliance allows one."},
    {.id = "ends-do-not-mate",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Ends that do not go together",
     .meaning = "Two plain ends, two crimped ends, or ends of two makes cannot be joined tightly "
                "without a piece between.",
     .remedy = "Put the adapter named between the two parts."},
    {.id = "fan-reverses-flue",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Fans draw air down the flue",
     .meaning =
         "The fans take more air than the leaks of the house give at a small pressure; the flue is "
         "the widest hole left, and gas of a low or dying fire comes back into the room.",
     .remedy = "Switch the fans off with the fire, or give them an inlet of their own."},
    {.id = "fan-reverses-idle-flue",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Fans draw air down the idle flue",
     .meaning = "With no fire the fans draw outdoor air down the flue. The warmth of dying embers "
                "still turns it, yet a new fire lit against the fans smokes.",
     .remedy = "Switch the fans off before lighting and while embers glow, or give them an inlet."},
    {.id = "fan-vent-not-sealed",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Vent behind a fan with joints that leak",
     .meaning =
         "The fan presses gas out of every leaking joint at the start, in wind, and when ash "
         "lies in the vent, though a steady fire may keep the vent below the room.",
     .remedy = "Seal every joint as the maker of the vent asks, or use a vent made for pressure."},
    {.id = "flue-far-larger-than-outlet",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Flue far larger than the outlet",
     .meaning = "In a flue much larger than the outlet the gas slows, cools and wets the wall; the "
                "draft comes late and soot and tar settle.",
     .remedy = "Line the flue to the size of the outlet."},
    {.id = "flue-smaller-than-outlet",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Flue smaller than the outlet",
     .meaning =
         "The run is narrower than the appliance's collar. The appliance was made for its collar's "
         "size; a narrower pipe takes draft just when the fire is large or the door is open.",
     .remedy = "Use pipe of the outlet's size from the collar to the mouth."},
    {.id = "fuel-too-wet",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Fuel too wet",
     .meaning = "Boiling the water out of wet wood takes heat that should lift the smoke, and the "
                "cool, wet smoke leaves tar.",
     .remedy = "Split it, stack it under a roof, and measure a fresh split face."},
    {.id = "gas-over-wall-rating",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Gas hotter than the wall's rating",
     .meaning = "The gas is hotter than this kind of wall may carry for hours.",
     .remedy = "Lower the fire, or use a wall with a higher rating."},
    {.id = "gas-pipe-too-near",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Gas pipe too near to what burns",
     .meaning =
         "Single-wall pipe of a gas burner is cooler than that of a fire, and still dries and "
         "chars what burns beside it in the long run.",
     .remedy = "Move the pipe, or take double-wall gas vent, whose label gives its distance."},
    {.id = "gas-too-hot",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Overfiring, off the scale",
     .meaning = "Gas this hot at the outlet is off the scale of a flue probe: it burns out stove "
                "and pipe and can light what has settled in the flue.",
     .remedy = "Check burn rate, air and efficiency in the file; if they are right, burn less at a "
               "time."},
    {.id = "heat-does-not-close",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Measured heats do not add up",
     .meaning =
         "Useful heat, heat in the flue gas and unburned heat must come to the heat in the "
         "fuel. Here the figures of the file miss that by more than measurement scatters: one "
         "of them is wrong, and with it the draft.",
     .remedy =
         "Measure burn rate, gas flow and gas temperature again, over the same hour; see "
         "whether the burn rate is of dry or of moist fuel and the efficiency on the net or the "
         "gross heating value."},
    {.id = "heater-overfired",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Overfiring",
     .meaning =
         "Gas this hot at the outlet means overfiring: in the long run it burns out stove and "
         "pipe. What wall it reaches has a rating and a check of its own.",
     .remedy = "Check burn rate, air and efficiency in the file; if they are right, burn less at a "
               "time."},
    {.id = "hood-spills",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Draft hood spills",
     .meaning = "The flue carries less than the appliance makes: the rest leaves by the hood.",
     .remedy = "Look for what holds the gas back above the hood, and for what lowers the room."},
    {.id = "house-pulls-on-the-flue",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "The house pulls on the flue",
     .meaning = "The room is below outdoor pressure by fans, by the house's own stack effect or by "
                "the air the fire takes out of tight walls. The draft holds against it while the "
                "fire burns well; lighting and dying down are harder.",
     .remedy = "Let air in near the appliance, low in the house and on the side the wind meets."},
    {.id = "house-starves-the-fire",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "The house starves the fire",
     .meaning = "The room is below outdoor pressure by fans, by the house's own stack effect or by "
                "the air the fire takes out of tight walls. All of it is lost to the draft, and "
                "without it the draft would do.",
     .remedy = "Let air in near the appliance, low in the house and on the side the wind meets."},
    {.id = "ice-at-top",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Ice grows at the chimney top",
     .meaning =
         "The inner wall near the top is wet and below freezing: ice grows from the water of "
         "the gas and narrows the flue day by day, in the longest frosts down to nothing.",
     .remedy =
         "Insulate the flue up to its top or bring it nearer the outlet's size; in frost, look "
         "at the top daily and do not burn low."},
    {.id = "insert-without-liner",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Insert without a liner",
     .meaning = "The gas of an insert goes straight into masonry that no liner parts from it: its "
                "mortar lets smoke and carbon monoxide through, tar soaks in, and the wide flue "
                "cools the gas.",
     .remedy = "Burn nothing in it before a liner of the insert's size goes from its outlet to the "
               "chimney top."},
});

} // namespace fluewright::checking
