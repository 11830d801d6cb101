#include "cases.hpp"

#include "installations.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace bench {

using namespace fluewright;

namespace {

struct Plan {
    std::string_view cause;
    double low;
    double high;
};

/// Sizes planted; each must be bad enough for a complaint, or it is drawn again.
const std::vector<Plan> plans{{"blockage", 0.4, 0.95},
                              {"deposits", 0.004, 0.035},
                              {"clogged-screen", 0.4, 0.95},
                              {"leaky-joints", 0.0008, 0.0095},
                              {"shut-damper", 0.55, 0.93},
                              {"clogged-passages", 1.6, 9.0},
                              {"leaky-stove", 0.4, 1.4},
                              {"fan", 4.0, 22.0},
                              {"house-suction", 3.0, 11.0},
                              {"starved-house", 4.0, 18.0},
                              {"downdraft", 6.0, 38.0},
                              {"wet-wood", 0.28, 0.48},
                              {"low-fire", 0.25, 0.7},
                              {"smaller-flue", 0.6, 0.88}};

const std::vector<std::string_view> flaws{
    "too-short", "too-narrow", "too-wide", "cold-flue", "low-room", "restricted", "wide-opening"};

/// A part where the cause can sit; -1 for everywhere, -2 where the run has no such part.
int place_for(std::string_view cause, const Installation& written, Dice& dice) {
    std::vector<int> parts;
    for (std::size_t i = 0; i < written.run.size(); ++i) {
        const Part& part = written.run[i];
        const bool turn = part.part == PartKind::elbow || part.part == PartKind::tee;
        const bool chimney = i + 2 == written.run.size();
        const bool fits = cause == "blockage"
                              ? turn || chimney || (part.part == PartKind::cap && !part.mesh_m)
                          : cause == "clogged-screen" ? part.mesh_m.has_value()
                          : cause == "shut-damper"    ? part.part == PartKind::damper
                          : cause == "leaky-joints"   ? part.part == PartKind::tee
                                                      : false;
        if (fits) {
            parts.push_back(static_cast<int>(i));
        }
    }
    if (cause == "deposits") {
        return dice.chance(0.5) ? 0 : static_cast<int>(written.run.size()) - 2;
    }
    if (cause == "smaller-flue") {
        return dice.chance(0.6) ? 0 : -1;
    }
    if (cause == "leaky-joints" && (parts.empty() || dice.chance(0.4))) {
        return -1;
    }
    const bool needs_part =
        cause == "blockage" || cause == "clogged-screen" || cause == "shut-damper";
    if (needs_part && parts.empty()) {
        return -2;
    }
    return parts.empty() ? -1 : dice.one_of(parts);
}

CaseOfBench draw(Dice& dice) {
    const double kind = dice.even();
    // Which cause is settled first, so that causes which seldom show are not drawn more seldom.
    const Plan& plan = dice.one_of(plans);
    const std::string_view flaw = dice.one_of(flaws);
    while (true) {
        Installation written = sound_installation(dice);
        Planted planted{"nothing", 0.0, -1};
        if (kind >= 0.1 && kind < 0.2) {
            if (!put_flaw(written, flaw, dice) || works(written)) {
                continue;
            }
            planted.cause = std::string{flaw};
        } else if (kind >= 0.2) {
            planted = {std::string{plan.cause},
                       dice.between(plan.low, plan.high),
                       place_for(plan.cause, written, dice)};
            if (planted.part == -2) {
                continue;
            }
        }
        Truth truth(written, planted, dice);
        if (planted.cause == "nothing" && truth.possible() && truth.draws_too_hard()) {
            truth.departs_by("strong-draft");
        }
        if (truth.possible() && (planted.cause == "nothing" || truth.complains())) {
            return {std::move(written), std::move(truth)};
        }
    }
}

} // namespace

CaseOfBench make_complaint(std::uint64_t number) {
    Dice dice(0x5eed0000ULL + number);
    CaseOfBench made = draw(dice);
    made.written.observed = made.truth.complaints();
    return made;
}

CaseOfBench make_case(std::uint64_t number) {
    CaseOfBench made = make_complaint(number);
    Dice dice(0xface0000ULL + number);
    auto& observed = made.written.observed;
    const auto perhaps = [&](double share,
                             const std::string& kind,
                             const std::string& look = "",
                             const std::string& at = "") {
        const bool asked = dice.chance(share);
        const bool there = std::any_of(observed.begin(), observed.end(), [&](const Observation& o) {
            return (o.smoke && kind == "smoke-" + std::string{name(*o.smoke)})
                   || (o.sluggish && kind == "sluggish") || (o.roaring && kind == "roaring");
        });
        if (asked && !there) {
            if (const auto seen = made.truth.answer(kind, look, at)) {
                observed.push_back(*seen);
            }
        }
    };
    // Of what costs nothing, a sixth is missing; of what takes tools or a ladder, half.
    for (const char* kind :
         {"smoke-joints", "smoke-door", "smoke-lighting", "smoke-wind", "smoke-fan"}) {
        perhaps(0.85, kind);
    }
    for (const char* kind : {"sluggish", "roaring", "smell", "worse", "window"}) {
        perhaps(0.85, kind);
    }
    perhaps(0.6, "drips");
    perhaps(0.8, "draft", "", "outlet");
    perhaps(0.75, "gas-temperature", "", "outlet");
    perhaps(0.7, "moisture");
    perhaps(0.5, "room-pressure");
    for (const char* look : {"cap", "door seal", "joints", "sizes"}) {
        perhaps(0.6, "look", look);
    }
    perhaps(0.45, "look", "flue");
    perhaps(0.4, "look", "baffle");
    const auto& run = made.written.run;
    if (std::any_of(
            run.begin(), run.end(), [](const Part& p) { return p.part == PartKind::damper; })) {
        perhaps(0.7, "look", "damper");
    }
    std::size_t in_room = 1;
    while (in_room < run.size() && !run[in_room].zone) {
        ++in_room;
    }
    perhaps(0.4, "draft-upper", "", std::to_string(in_room));
    perhaps(0.35, "gas-upper", "", std::to_string(in_room));
    perhaps(0.5, "stick", "", std::to_string(1 + dice.below(in_room)));
    perhaps(0.5, "stick-cold", "", "outlet");
    return made;
}

} // namespace bench
