#include "fluewright/advice/parts/joints.hpp"

#include <array>
#include <cmath>
#include <utility>

namespace fluewright {
namespace {

// An adapter costs more than any number of turns; an inserted end that points to the chimney has no
// adapter, so it costs more still.
constexpr int turn_cost = 1;
constexpr int adapter_cost = 1000;
constexpr int points_up_cost = 1200;

bool turnable(const PartEnds& ends) {
    return !ends.heater.assumed && !ends.chimney.assumed && ends.heater.end != ends.chimney.end
           && std::abs(ends.heater.diameter_m - ends.chimney.diameter_m) < same_bore_m;
}

int cost_of(Mating mating) {
    return mating == Mating::good ? 0 : mating == Mating::never ? adapter_cost : points_up_cost;
}

const EndFacts& heater_end(const PartEnds& ends, bool turned) {
    return turned ? ends.chimney : ends.heater;
}

const EndFacts& chimney_end(const PartEnds& ends, bool turned) {
    return turned ? ends.heater : ends.chimney;
}

/// Cheapest cost of everything below a part that lies as drawn (0) or turned (1), and how the part
/// below it lies then.
struct Step {
    std::array<int, 2> cost{};
    std::array<bool, 2> below_turned{};
};

std::vector<bool> cheapest_turns(const JointReport& report, const std::vector<bool>& may_turn) {
    constexpr int never = 1 << 28;
    const std::size_t count = report.parts.size();
    std::vector<Step> steps(count);
    for (std::size_t i = 0; i < count; ++i) {
        const bool may = may_turn[i] && turnable(report.parts[i]);
        for (const bool turned : {false, true}) {
            const auto k = static_cast<std::size_t>(turned);
            steps[i].cost[k] = never;
            if (turned && !may) {
                continue;
            }
            for (const bool below : {false, true}) {
                if (i == 0 && below) {
                    continue;
                }
                const EndFacts& lower =
                    i == 0 ? report.joints[0].lower : chimney_end(report.parts[i - 1], below);
                const EndFacts& upper = heater_end(report.parts[i], turned);
                const int before = i == 0 ? 0 : steps[i - 1].cost[static_cast<std::size_t>(below)];
                const int here =
                    before + cost_of(mating_of(lower, upper)) + (turned ? turn_cost : 0);
                if (here < steps[i].cost[k]) {
                    steps[i].cost[k] = here;
                    steps[i].below_turned[k] = below;
                }
            }
        }
    }
    std::vector<bool> turns(count, false);
    bool turned = count > 0 && steps.back().cost[1] < steps.back().cost[0];
    for (std::size_t i = count; i-- > 0;) {
        turns[i] = turned;
        turned = steps[i].below_turned[static_cast<std::size_t>(turned)];
    }
    return turns;
}

} // namespace

void turn_parts(JointReport& report, const std::vector<bool>& may_turn, UnitSystem units) {
    const std::vector<bool> turns = cheapest_turns(report, may_turn);
    for (std::size_t i = 0; i < report.joints.size(); ++i) {
        Joint& joint = report.joints[i];
        const bool below = i > 0 && turns[i - 1];
        if (!below && !turns[i]) {
            joint.turned = joint.fit;
            continue;
        }
        const EndFacts& lower = i > 0 ? chimney_end(report.parts[i - 1], below) : joint.lower;
        joint.turned = fit_of(lower, heater_end(report.parts[i], turns[i]), units);
        // "between straight 1 and elbow 2"
        constexpr std::string_view between = "between ";
        constexpr std::string_view link = " and ";
        const std::size_t middle = joint.place.find(link);
        const std::string under = joint.place.substr(between.size(), middle - between.size());
        const std::string over = joint.place.substr(middle + link.size());
        joint.turn_round = below && turns[i] ? under + " and " + over
                           : below           ? under
                           : turns[i]        ? over
                                             : "";
    }
}

bool Joint::needs_something() const {
    return !turn_round.empty() || !turned.adapter.empty() || turned.other_part
           || fit.mating == Mating::points_up;
}

std::string Joint::cure() const {
    std::string text;
    if (!turn_round.empty()) {
        const bool both = turn_round.find(" and ") != std::string::npos;
        text = "Turn " + turn_round + " round; " + (both ? "they are" : "it is") + " upside down.";
    }
    if (turned.crimps) {
        const std::size_t link = place.find(" and ");
        text += (text.empty() ? "" : " Then: ") + std::string{"Crimp the end of "}
                + place.substr(link + 5)
                + " that points to the heater; or put in: " + turned.adapter + ".";
    } else if (!turned.adapter.empty()) {
        text += (text.empty() ? "Put in: " : " Then put in: ") + turned.adapter + ".";
    }
    if (turned.other_part) {
        text += (text.empty() ? "" : " ")
                + std::string{"Use a part whose crimped end points to the heater."};
    }
    return text;
}

} // namespace fluewright
