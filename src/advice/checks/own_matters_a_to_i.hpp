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
     .meaning = "Carbon monoxide was in the room. Its cause may not be in this file: no figure "
                "here clears the appliance, and no remedy here cures it.",
     .remedy = "If it sounds now, get everybody out and call for help. Light no fire before a "
               "sweep has examined the flue. `fluewright diagnose` asks what can be checked with "
               "the appliance cold."},
    {.id = "chimney-below-usual-height",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Chimney shorter than usual",
     .meaning = "The chimney top is lower above the heater's floor than the trade's usual least "
                "height. A short chimney has little draft to spare and catches downdrafts.",
     .remedy = "Raise the chimney top. Each 3 ft (1 m) of warm flue adds about 0.012 to 0.028 "
               "inH2O (3 to 7 Pa)."},
    {.id = "cold-air-falls-in-at-top",
     .harm = Harm::draft,
     .severity = Severity::note,
     .per_place = false,
     .title = "Cold air enters at the chimney top",
     .meaning = "The gas leaves so slowly that cold air enters beside it and cools the flue from "
                "the top. The computed draft does not count that: take it as the most there can be "
                "in this condition.",
     .remedy =
         "Use a flue nearer the outlet's size, narrow the chimney top, or burn a brisker fire."},
    {.id = "crimp-points-up",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Crimped end points up",
     .meaning = "Creosote and water run down the inside of a flue. Where the crimped end points "
                "up, they run out at the joint, down the outside and onto the heater.",
     .remedy = "Turn the part round, so that its crimped end points to the heater."},
    {.id = "damper-on-gas",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Hand damper behind a gas burner",
     .meaning = "A burner starts whether the damper is open or not. A closed blade sends its gas "
                "with carbon monoxide into the room.",
     .remedy = "Take the damper out."},
    {.id = "diameters-do-not-match",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Sizes do not match",
     .meaning = "The two ends of a joint are of different sizes. Inch and metric pipe look alike "
                "(6 in is 152.4 mm), but they do not fit tightly.",
     .remedy = "Fit a reducer, an increaser or an adapter, or buy both in one size."},
    {.id = "downdraft-in-wind",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "Downdraft in gusts",
     .meaning = "Wind pushes down on the chimney top here. In a gust that pressure exceeds the "
                "draft, and smoke puffs into the room.",
     .remedy = "Raise the chimney top clear of the ridge, buildings and trees. Where that cannot "
               "be done, fit an anti-downdraft cap."},
    {.id = "draft-short",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "Not enough draft",
     .meaning = "There is less draft at the outlet than the appliance requires in this condition. "
                "The fire burns sluggishly, and smoke comes into the room.",
     .remedy = "Reduce the greatest loss: heat lost by the gas, then fittings, then size."},
    {.id = "draft-too-strong",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Too much draft",
     .meaning = "Above its greatest draft the appliance can no longer be turned down. It burns "
                "fast, overheats, and sends its heat up the flue.",
     .remedy = "Fit a key damper or a draft regulator, if the maker of the appliance allows one."},
    {.id = "ends-do-not-mate",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Ends do not fit",
     .meaning = "Two plain ends, two crimped ends, or ends of two makes do not join tightly "
                "without an adapter.",
     .remedy = "Fit the adapter named between the two parts."},
    {.id = "fan-reverses-flue",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Fans draw air down the flue",
     .meaning = "The fans take more air than leaks into the house, and the rest comes down the "
                "flue. Gas of a low or dying fire comes back into the room.",
     .remedy = "Switch the fans off while the fire burns, or give them a make-up air inlet."},
    {.id = "fan-reverses-idle-flue",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Fans draw air down the idle flue",
     .meaning = "With no fire the fans draw outdoor air down the flue. Dying embers still keep the "
                "draft up, but a new fire lit with the fans running smokes.",
     .remedy = "Switch the fans off before lighting and while embers glow, or give them a make-up "
               "air inlet."},
    {.id = "fan-vent-not-sealed",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Fan-assisted vent with leaky joints",
     .meaning = "At the start, in wind, and with ash in the vent, the fan blows gas out of every "
                "leaky joint. A steady fire does not show it.",
     .remedy =
         "Seal every joint as the maker of the vent states, or use a vent made for pressure."},
    {.id = "flue-far-larger-than-outlet",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Flue far larger than the outlet",
     .meaning = "In a flue much larger than the outlet the gas is slow and cools. The draft builds "
                "late, the wall gets wet, and soot and creosote build up.",
     .remedy = "Line the flue to the size of the outlet."},
    {.id = "flue-smaller-than-outlet",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "Flue smaller than the outlet",
     .meaning = "The run is narrower than the flue collar. A narrower pipe costs most draft on a "
                "high fire and with the door open.",
     .remedy = "Use pipe of the outlet's size from the collar to the chimney top, unless the "
               "maker's instructions state a smaller flue."},
    {.id = "fuel-too-wet",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Fuel too wet",
     .meaning = "Wet wood spends its heat on boiling off water. The smoke is cool and wet: it "
                "draws badly and leaves creosote.",
     .remedy = "Season it: split it, stack it under cover for a year or more, and measure a "
               "freshly split face."},
    {.id = "gas-over-wall-rating",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Gas hotter than the wall's rating",
     .meaning = "The gas is hotter than this wall is rated for in continuous use.",
     .remedy = "Burn a smaller fire, or use pipe or chimney with a higher rating."},
    {.id = "gas-too-hot",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Overfiring, off the scale",
     .meaning = "Gas this hot is off the scale of a flue probe. It burns out stove and pipe and "
                "can set creosote alight.",
     .remedy =
         "Check burn rate, air and efficiency in the file. If they are right, burn smaller loads."},
    {.id = "heat-does-not-close",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = true,
     .title = "Heat balance does not close",
     .meaning = "Useful heat, flue-gas heat and unburned heat must add up to the heat in the fuel. "
                "The figures in the file do not, by more than readings scatter. One of them is "
                "wrong, and with it the draft.",
     .remedy =
         "Measure burn rate, gas flow and gas temperature again over the same hour. Check whether "
         "the burn rate is for dry or moist fuel, and whether the efficiency is net or gross."},
    {.id = "heater-overfired",
     .harm = Harm::fire,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Overfiring",
     .meaning = "Gas this hot at the outlet means overfiring. In the long run it burns out stove "
                "and pipe.",
     .remedy =
         "Check burn rate, air and efficiency in the file. If they are right, burn smaller loads."},
    {.id = "hood-spills",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = true,
     .title = "Draft hood spills",
     .meaning = "The flue vents less gas than the appliance makes. The rest spills from the hood "
                "into the room.",
     .remedy = "Look for a restriction above the hood, and for fans that depressurize the room."},
    {.id = "house-pulls-on-the-flue",
     .harm = Harm::draft,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Room depressurized",
     .meaning = "Fans, the stack effect of the house, or the fire in a tight house hold the room "
                "below outdoor pressure. The draft is enough while the fire burns well; lighting "
                "and burning down are harder.",
     .remedy = "Let air in near the appliance, low in the house, on the windward side."},
    {.id = "house-starves-the-fire",
     .harm = Harm::draft,
     .severity = Severity::failure,
     .per_place = false,
     .title = "Room depressurization takes the draft",
     .meaning =
         "Fans, the stack effect of the house, or the fire in a tight house hold the room below "
         "outdoor pressure. That is taken off the draft, which would otherwise be enough.",
     .remedy = "Let air in near the appliance, low in the house, on the windward side."},
    {.id = "ice-at-top",
     .harm = Harm::upkeep,
     .severity = Severity::warning,
     .per_place = false,
     .title = "Ice at the chimney top",
     .meaning = "The inner wall near the top is wet and below freezing. Ice builds up and narrows "
                "the flue day by day; in a long frost it can close it.",
     .remedy = "Insulate the flue up to its top, or bring it nearer the outlet's size. In frost, "
               "check the chimney top daily and burn no low fires."},
    {.id = "insert-without-liner",
     .harm = Harm::fire,
     .severity = Severity::danger,
     .per_place = false,
     .title = "Insert without a liner",
     .meaning = "The insert vents into bare masonry. The mortar lets smoke and carbon monoxide "
                "through, creosote soaks in, and the wide flue cools the gas.",
     .remedy = "Light no fire in it until a liner of the insert's size runs from its outlet to the "
               "chimney top."},
});

} // namespace fluewright::checking
