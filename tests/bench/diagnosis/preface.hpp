#pragma once

#include <string_view>

namespace bench {

/// What stands in docs/diagnosis.md before the figures.
inline constexpr std::string_view preface = R"(# Diagnosis: how it works, and how often it is right

Written by `diagnosis_benchmark --report docs/diagnosis.md`; a test compares this page with a fresh run.

## How it works

`fluewright diagnose` takes what was seen (`observed`) as evidence. Each hidden cause of `data/causes.csv` is
built into the run at every place where it can sit and at ten sizes (six of a leak); each of these runs is solved in every
state and weather the evidence speaks of, twice, for a fire somewhat cooler and somewhat hotter than the file
says. A fire burns only as well as the draft lets it: where the draft falls short, flow and heat fall until
both agree (`model/warmup/tended.hpp`). A symptom is reported by a share of people that grows with the figure behind
it (`data/symptoms.csv`); a reading scatters round what is predicted (`data/readings.csv`), and one in 25 is off
by much more. Bayes' rule gives each cause and size its probability; the three likeliest causes are then tried
in pairs. The run without a hidden cause takes part. Its share goes to the flaws of the design, each by how
much of the complaints and of the lacking draft its best cure takes away, and to nothing being wrong. A flaw that
the file shows also has a weight of its own, for what the trade tells of it and the model does not compute: the
more glaring it is, and the more pages name it for that symptom (`told` in `data/causes.csv`), the more. Where
nobody complains, a sound run is taken to be likelier. Everything is summed on a fixed grid, so the same file
gives the same answer.

Where no cause accounts for all that was seen, the file is doubted: each figure that changes what a run shows is taken
as it may have been meant (a decimal point, feet for meters, pascals for inches of water, the dry basis of a moisture meter).
Figures with which the run without a hidden cause shows all of it are named, and so is the reading without which the rest
has an explanation.

The next check is the one that narrows the causes down most for its effort: the fall of the entropy of the
causes to be expected, over the effort in `data/checks.csv`.

## What it rests on

The weights of the causes before anything is seen are judgement. Published frequencies contradict each other,
since every trade sees its own cause; the weights therefore lie within a factor of three. The shares of people
who report a symptom, the shares of causes a look finds, and how a trouble came, are judgement too. What is
computed is what each cause does to draft, heat and flow.

## Symptoms and causes the model does not join

Of 108 pairs of symptom and cause that sweeps, makers, officials and forums name, 58 are published checks
(`docs/validation.md`, "Symptoms by cause"): with the cause in the run more than half would report the symptom.

Physics of the model could tell these, but it does not give the symptom at the sizes tried, in a run with
little to spare:

| symptom | cause | why not |
| --- | --- | --- |
| smokes when lit cold | damper shut; many elbows; wet wood | the idle flue and the trickle of kindling gas hardly feel resistance; kindling is taken as dry |
| smokes at the opened door | flue too large | a wide flue costs little pressure; its slow warming is not in a steady state |
| smokes at joints | flue too large; wet wood | the draft falls, but no joint comes above the room while the burn rate follows the draft |
| smokes at joints | air leaking into the flue | the leak draws air in; another appliance on the flue is not in the file |
| smokes in wind | short chimney; house suction; leaks; cold outside chimney | what wind does at the chimney top is in the cause downdraft only; these runs need more than a gust of 3 Pa, or smoke in calm as well |
| sluggish fire | flue too large; cold outside chimney; many elbows | the loss stays below the draft the fire needs |
| drips | air leaking into the flue | the air cools the gas, and the lower dew point and better draft nearly make up for it |

These it cannot express: masonry slow to warm (the warm-up tells it); a cracked or fallen liner; joints the
wrong way round; a pipe pushed too far into the flue; soaked masonry and a missing rain cap; a heater too small,
or one whose least air is too much; very dry wood and chimney fires as causes of a roaring fire; deposits that
gather on level runs; another appliance on the same flue; back-puffs, which are no steady flow; smoke from
another flue or in another room; air cut off on glowing coals. "Worse over weeks" and "came overnight" are weighed
by shares in `data/causes.csv`, not computed.

## The benchmark

Each case is a random installation with one planted cause of random place and size, bad enough for somebody to
complain; of ten cases one has no cause, and one a flaw that its file shows. The truth departs from the file:
burn rate by 8 %, efficiency by two points, losses by 15 %, weather, room pressure, heights, and in a quarter of
the cases the heat transfer of the European calculation. Where that alone carries the draft past what the heater can
hold, the truth of a case without a cause is too much draft, not "nothing". Readings carry noise, three in a hundred are off by
much; symptoms have thresholds of the person's own, and three in a hundred are told wrongly; looks miss and
find what is not there. Of what costs nothing to observe a sixth is missing, of what takes tools or a ladder
about half. None of the diagnosis' likelihoods is used in making the cases, but the same solver is, and spreads of
the same order: figures for real flues would be worse.

Spreads, thresholds and the weight of the design were chosen while looking at 600 other cases of the same kind (there
80 and 77 % came first, 95 and 94 % among the first three).

"Nothing hidden" and "the design as a whole" count as one answer.

)";

} // namespace bench
