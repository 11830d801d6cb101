#include "fluewright/advice/checks/finding.hpp"

#include <array>

namespace fluewright {
namespace {

constexpr auto table = std::to_array<FindingInfo>({
    {.id = "chimney-below-usual-height",
     .severity = Severity::warning,
     .title = "Chimney lower than usual",
     .meaning =
         "The mouth is lower over the floor of the heater than the trade's usual least height. "
         "A short stack has little draft to spare, and wind and roof reach it easily.",
     .rule = "height of the mouth over the floor at least 15 ft (4.57 m)",
     .remedy = "Raise the top; every metre of warm flue adds 3 to 7 Pa.",
     .source = "practice",
     .mark = "common practice"},
    {.id = "crimp-points-up",
     .severity = Severity::warning,
     .title = "Inserted end points to the chimney",
     .meaning = "Tar and water run down the inside of a flue. Where the inserted end points up, "
                "they run out at the joint, down the outside and onto the heater.",
     .rule = "at every joint the crimped or inserted end belongs to the part above",
     .remedy = "Turn the part round, so that its crimped end points to the heater.",
     .source = "csa-b365-list",
     .mark = "quoted"},
    {.id = "diameters-do-not-match",
     .severity = Severity::warning,
     .title = "Two sizes meet",
     .meaning = "The two sides of a joint are of different sizes. Sizes of inches and millimetres "
                "look alike (6 in is 152.4 mm) and still do not fit tightly.",
     .rule = "bores of a joint within 1 mm of each other",
     .remedy = "Put a reducer, an increaser or an adapter between, or buy both of one size.",
     .source = "practice",
     .mark = "common practice"},
    {.id = "downdraft-in-wind",
     .severity = Severity::fault,
     .title = "Gusts push down the flue",
     .meaning =
         "The mouth stands where wind presses on it. In a gust that pressure exceeds the draft, "
         "and smoke puffs into the room.",
     .rule =
         "draft - c rho v^2/2 ((gust factor)^2 - 1) >= 0 at the outlet, c > 0 the wind pressure "
         "coefficient of the mouth",
     .remedy =
         "Raise the mouth clear of the ridge and of what stands near it; a cowl made for downdraft "
         "helps where that cannot be done.",
     .source = "memory",
     .mark = "from memory"},
    {.id = "draft-short",
     .severity = Severity::fault,
     .title = "Not enough draft",
     .meaning =
         "The run delivers less draft at the outlet than the appliance needs in this state. The "
         "fire will be sluggish and smoke will come out wherever it can.",
     .rule = "draft available >= draft needed, at the outlet; available = buoyancy - friction - "
             "fittings "
             "- acceleration - what the room holds back",
     .remedy =
         "Find the greatest loss in the budget of this state: cooling, then fittings, then size.",
     .source = "heater-manuals",
     .mark = "looked up"},
    {.id = "draft-too-strong",
     .severity = Severity::warning,
     .title = "Too much draft",
     .meaning =
         "Above its greatest draft the appliance can no longer be held down: it burns fast, runs "
         "hot and sends its heat up the flue.",
     .rule = "draft at the outlet <= greatest draft of the appliance (usually 20 to 25 Pa)",
     .remedy = "Fit a damper or a draft regulator if the maker of the appliance allows one.",
     .source = "heater-manuals",
     .mark = "looked up"},
    {.id = "ends-do-not-mate",
     .severity = Severity::warning,
     .title = "Ends that do not go together",
     .meaning = "Two plain ends, two crimped ends, or ends of two makes cannot be joined tightly "
                "without a piece between.",
     .rule = "crimped into plain or socket, plain into socket, flange on flange, locking ends of "
             "one make",
     .remedy = "Put the adapter named between the two parts.",
     .source = "practice",
     .mark = "common practice"},
    {.id = "fan-reverses-flue",
     .severity = Severity::danger,
     .title = "Fans draw air down the flue",
     .meaning =
         "The fans take more air than the leaks of the house give at a small pressure; the flue is "
         "the widest hole left, and gas of a low or dying fire comes back into the room.",
     .rule = "draft at the outlet >= 0 with the fans running",
     .remedy = "Switch the fans off with the fire, or give them an inlet of their own.",
     .source = "hearth-system",
     .mark = "judgement"},
    {.id = "flue-far-larger-than-outlet",
     .severity = Severity::warning,
     .title = "Flue far larger than the outlet",
     .meaning =
         "In a flue much larger than the outlet the gas slows, cools and wets the wall; the draft "
         "comes late and soot and tar settle.",
     .rule = "flue area <= 3 x outlet area, or 2 x with walls of the chimney outdoors",
     .remedy = "Line the flue to the size of the outlet.",
     .source = "mechanical-code-ny",
     .mark = "looked up"},
    {.id = "flue-smaller-than-outlet",
     .severity = Severity::warning,
     .title = "Flue smaller than the outlet",
     .meaning =
         "The run is narrower than the appliance's collar. The appliance was made for its collar's "
         "size; a narrower pipe takes draft just when the fire is large or the door is open.",
     .rule = "no part of the connector or chimney smaller in area than the outlet",
     .remedy = "Use pipe of the outlet's size from the collar to the mouth.",
     .source = "stove-ordinance",
     .mark = "looked up"},
    {.id = "fuel-too-wet",
     .severity = Severity::warning,
     .title = "Fuel too wet",
     .meaning =
         "Boiling the water out of wet wood takes heat that should lift the smoke, and the cool, "
         "wet smoke leaves tar.",
     .rule = "wood below 20 % moisture on the wet basis (25 % of the dry weight)",
     .remedy = "Split it, stack it under a roof, and measure a fresh split face.",
     .source = "bimschv-1",
     .mark = "computed"},
    {.id = "gas-over-wall-rating",
     .severity = Severity::danger,
     .title = "Gas hotter than the wall's rating",
     .meaning = "The gas is hotter than this kind of wall may carry for hours.",
     .rule = "gas temperature <= continuous rating of the wall (factory-built chimney 1000 degF, "
             "538 degC)",
     .remedy = "Lower the fire, or use a wall with a higher rating.",
     .source = "ul103",
     .mark = "looked up"},
    {.id = "gas-slow-at-mouth",
     .severity = Severity::note,
     .title = "Gas leaves slowly",
     .meaning = "Gas slower than about half a metre a second falls back in gusts and cools inside "
                "the flue.",
     .rule = "gas velocity at the mouth >= 0.5 m/s",
     .remedy = "A flue nearer the outlet's size, or a brisker fire.",
     .source = "velocity-note",
     .mark = "looked up"},
    {.id = "gas-too-hot",
     .severity = Severity::danger,
     .title = "Overfiring",
     .meaning =
         "Gas this hot at the outlet means overfiring: it burns out stove and pipe and can light "
         "what has settled in the flue.",
     .rule =
         "gas at the outlet below 900 degF (482 degC); over 1200 degF (649 degC) is off the scale",
     .remedy =
         "Check burn rate, air and efficiency in the file; if they are right, burn less at a time.",
     .source = "probe-instructions",
     .mark = "looked up"},
    {.id = "hood-spills",
     .severity = Severity::danger,
     .title = "Draft hood spills",
     .meaning = "The flue carries less than the appliance makes: the rest leaves by the hood.",
     .rule = "flow through the opening of the hood inwards at every fire",
     .remedy = "Look for what holds the gas back above the hood, and for what lowers the room.",
     .source = "judgement",
     .mark = "computed"},
    {.id = "house-starves-the-fire",
     .severity = Severity::fault,
     .title = "The house starves the fire",
     .meaning =
         "The room is below outdoor pressure by fans, by the house's own stack effect or by the "
         "air the fire takes out of tight walls. All of it is lost to the draft.",
     .rule = "room at most 4 Pa below outdoors; and draft >= need with what the room takes",
     .remedy = "Let air in near the appliance, low in the house and on the side the wind meets.",
     .source = "room-air-rule",
     .mark = "looked up"},
    {.id = "joint-leak-dilutes",
     .severity = Severity::warning,
     .title = "Leaky joints chill the flue",
     .meaning =
         "Room air drawn in through the joints cools the gas and takes part of what the flue can "
         "carry; walls turn wet and tar settles.",
     .rule = "air through the joints at most a tenth of the gas at the outlet",
     .remedy = "Seal the joints below it first, where the draft is greatest.",
     .source = "judgement",
     .mark = "judgement"},
    {.id = "level-run-too-flat",
     .severity = Severity::warning,
     .title = "Level run too flat",
     .meaning = "A level pipe must rise towards the chimney, or smoke lingers and tar runs out of "
                "the joints.",
     .rule = "rise >= 1/4 in per ft (20 mm per m, 2 %)",
     .remedy = "Raise the chimney end or lower the appliance end.",
     .source = "stove-ordinance",
     .mark = "looked up"},
    {.id = "level-run-too-long",
     .severity = Severity::warning,
     .title = "Level run too long",
     .meaning = "The pipe runs level for too great a share of the height that drives it.",
     .rule = "level run <= 75 % of the height of the flue above it; 100 % with insulated pipe",
     .remedy = "Move the appliance nearer, or go up before going across.",
     .source = "stove-ordinance",
     .mark = "looked up"},
    {.id = "no-cleanout-at-turn-up",
     .severity = Severity::warning,
     .title = "No cleanout where the flue turns up",
     .meaning =
         "Where a level run turns up, flakes of soot fall and gather; an elbow there clogs unseen.",
     .rule = "a tee with a cleanout where the flue turns up",
     .remedy = "Replace the elbow by a tee with a cap that can be taken off.",
     .source = "practice",
     .mark = "common practice"},
    {.id = "reduced-on-the-way",
     .severity = Severity::warning,
     .title = "Flue reduced on its way",
     .meaning =
         "The flue gets narrower on its way up. All gas must pass the narrowest place, and soot "
         "gathers at the step.",
     .rule = "no part smaller in area than a part before it",
     .remedy = "Carry one size through to the mouth.",
     .source = "stove-ordinance",
     .mark = "looked up"},
    {.id = "reversed-when-idle",
     .severity = Severity::warning,
     .title = "Cold air falls down the idle flue",
     .meaning =
         "With no fire the air in the flue is heavier than the draft of the house allows: it falls "
         "into the room, and a new fire must first push it out.",
     .rule = "draft at the outlet >= 0 with the flue at the temperature of its surroundings",
     .remedy =
         "Open a window by the appliance and warm the flue with burning paper before lighting; an "
         "enclosed or insulated chimney stays warmer.",
     .source = "hearth-system",
     .mark = "looked up"},
    {.id = "single-wall-outdoors",
     .severity = Severity::warning,
     .title = "Single-wall pipe outdoors",
     .meaning =
         "Bare pipe in the open cools the gas below the point where tar settles, rusts, and is no "
         "chimney in the sense of most codes.",
     .rule = "single-wall pipe only from the appliance to the chimney, not outdoors",
     .remedy = "Use an insulated chimney from where the run leaves the room.",
     .source = "mechanical-code-ca-2013",
     .mark = "looked up"},
    {.id = "smoke-at-door",
     .severity = Severity::warning,
     .title = "Smoke at the opened door",
     .meaning =
         "With the door open the run must draw enough air through the whole opening that the room "
         "exceeds the firebox even at the top edge. Here it cannot, so smoke rolls out at the top.",
     .rule = "room minus box at the top edge of the opening >= 0",
     .remedy = "Open the air control a minute before, open the door slowly and no further than "
               "stated, on "
               "embers, not on flames.",
     .source = "judgement",
     .mark = "computed"},
    {.id = "smoke-at-joints",
     .severity = Severity::danger,
     .title = "Joints under pressure",
     .meaning = "Here the gas in the pipe is above the pressure of the air around it: every gap "
                "lets smoke "
                "and carbon monoxide out.",
     .rule = "static pressure in the flue < pressure of the air around it, at every joint",
     .remedy = "Find what holds the gas back above this place; sealing the joint alone hides it.",
     .source = "judgement",
     .mark = "computed"},
    {.id = "straight-grows-past-its-joint",
     .severity = Severity::warning,
     .title = "Pipe grows more than its joint takes",
     .meaning =
         "A straight fixed at both ends that lengthens when hot pushes its joints apart or bends "
         "the pipe.",
     .rule = "dL/L = 1.2e-5 t + 0.4e-8 t^2 - 2.416e-4 (carbon steel, t in degC); a slip joint or a "
             "turn "
             "takes about 10 mm",
     .remedy =
         "Put a slip joint or a telescoping length in this straight, and fix it at one end only.",
     .source = "en1993-1-2",
     .mark = "looked up"},
    {.id = "surface-over-rating",
     .severity = Severity::danger,
     .title = "Surface hotter than its rating",
     .meaning = "The outside of the pipe gets hotter than its paint or wall is rated for.",
     .rule = "temperature of the outer face at high fire <= rating stated for it",
     .remedy = "Use a higher rated finish, or a cooler pipe further from the outlet.",
     .source = "judgement",
     .mark = "computed"},
    {.id = "too-many-turns",
     .severity = Severity::warning,
     .title = "Too many turns",
     .meaning = "Every turn costs draft and gathers soot; past two right angles between heater and "
                "chimney "
                "the trade says no.",
     .rule = "turns between heater and chimney <= 180 degrees together",
     .remedy = "Straighten the way, or use two 45 degree elbows for a 90.",
     .source = "stove-ordinance",
     .mark = "looked up"},
    {.id = "unusual-input",
     .severity = Severity::note,
     .title = "Unusual value",
     .meaning =
         "A value is so far from what such installations have that the result should be doubted "
         "until it is checked.",
     .rule = "the ranges in which the correlations and defaults were compared with measurements",
     .remedy = "Measure or read this value again.",
     .source = "judgement",
     .mark = "judgement"},
    {.id = "wall-below-creosote-threshold",
     .severity = Severity::warning,
     .title = "Wall cold enough for tar",
     .meaning =
         "Where the inner wall is colder than about 121 degC, tar from wood smoke settles on it as "
         "creosote, which narrows the flue and can burn.",
     .rule = "inner wall >= 250 degF (121 degC) while there is smoke; sources spread from 93 to "
             "127 degC",
     .remedy = "Burn hotter and shorter, keep the wood dry, insulate or enclose the cold part, and "
               "look at "
               "it often.",
     .source = "stack-leaflet",
     .mark = "looked up"},
    {.id = "wall-below-dew-point",
     .severity = Severity::warning,
     .title = "Water condenses on the wall",
     .meaning = "The inner wall is below the dew point of the gas: water runs down the flue, with "
                "acid and "
                "tar in it.",
     .rule = "inner wall > water dew point; t = 4077.9 / (23.6448 - ln p) - 236.67",
     .remedy = "Insulate the flue or bring it nearer the outlet's size.",
     .source = "en13384-1",
     .mark = "from memory"},
});

} // namespace

std::string_view name(Severity severity) {
    constexpr std::array<std::string_view, 4> names{"danger", "fault", "warning", "note"};
    return names[static_cast<std::size_t>(severity)];
}

std::span<const FindingInfo> finding_table() {
    return table;
}

const FindingInfo* find_finding(std::string_view id) {
    for (const FindingInfo& row : table) {
        if (row.id == id) {
            return &row;
        }
    }
    return nullptr;
}

} // namespace fluewright
