#include "advice/checks/physics/odd.hpp"
#include "fluewright/physics/combustion.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fluewright::checking {
namespace {

/// What one key of the file makes of the air of a fire.
struct ToldAir {
    std::string_view key;
    double ratio{};
};

/// The air ratios that the file tells of a fire, each from a figure of its own. What a gas flow
/// makes of it needs the fuel burned.
std::vector<ToldAir> told_of(const Appliance& w,
                             const ApplianceCase& a,
                             const Firing& firing,
                             std::optional<double> HighLow::*end) {
    std::vector<ToldAir> told;
    if (const auto& ratio = w.air_ratio.*end) {
        told.push_back({"air_ratio", *ratio});
    }
    if (const auto& share = w.carbon_dioxide.*end) {
        const double greatest = combustion::greatest_carbon_dioxide(a.analysis);
        told.push_back(
            {"carbon_dioxide",
             combustion::air_ratio_for_carbon_dioxide(a.analysis, std::min(*share, greatest))});
    }
    if (const auto& share = w.oxygen.*end) {
        told.push_back({"oxygen", combustion::air_ratio_for_oxygen(a.analysis, *share)});
    }
    if (w.gas_flow_kg_s.*end && (w.burn_rate_kg_s.*end || w.heat_input_w.*end)) {
        told.push_back(
            {"gas_flow",
             combustion::air_ratio_for_gas(
                 a.analysis, a.moisture, *(w.gas_flow_kg_s.*end) / firing.burn_rate_kg_s)});
    }
    return told;
}

/// An analyzer, a plate and a flow measured elsewhere differ; by more than this they are not of one
/// fire. Judgement.
constexpr double most_apart = 1.25;

void one_fire(Subject& s, std::optional<double> HighLow::*end, bool is_high) {
    const ApplianceCase& a = s.resolved.appliance;
    const std::vector<ToldAir> told =
        told_of(s.view.written.appliance, a, is_high ? a.high : a.low, end);
    const auto ends = std::minmax_element(
        told.begin(), told.end(), [](const auto& x, const auto& y) { return x.ratio < y.ratio; });
    if (told.empty()) {
        return;
    }
    const ToldAir& least = *ends.first;
    const ToldAir& most = *ends.second;
    const auto in_words = [&](const ToldAir& each) {
        return "`" + std::string{each.key} + "` says "
               + s.show(std::max(0.0, each.ratio), Kind::number);
    };
    const bool starved = least.ratio < 1.0 / most_apart;
    odd(s, !starved && most.ratio <= most_apart * least.ratio, "the combustion air", [&] {
        const std::string fire = is_high ? "high fire" : "low fire";
        std::string text = "Unusual: of the combustion air at " + fire
                           + ", over the least that would do, " + in_words(least);
        if (told.size() > 1) {
            text += ", " + in_words(most);
        }
        return text
               + (told.size() > 1 ? ". They are not of one fire; `" + std::string{told.front().key}
                                        + "` is taken: leave the other out, or correct it."
                                  : ". Fuel does not burn on less than 1: check it and the "
                                    "fuel burned.");
    });
}

/// A burn rate and a heat input that are not of one fire.
void heat_of_the_fuel(Subject& s, std::optional<double> HighLow::*end, bool is_high) {
    const Appliance& w = s.view.written.appliance;
    const ApplianceCase& a = s.resolved.appliance;
    const auto& input_w = w.heat_input_w.*end;
    if (!input_w || !(w.burn_rate_kg_s.*end)) {
        return;
    }
    const double burned_w = (is_high ? a.high : a.low).heat_in_fuel_w;
    const double share = *input_w / burned_w;
    odd(s, share <= most_apart && share * most_apart >= 1.0, "the heat input", [&] {
        return "Unusual: `heat_input` is " + s.show(*input_w, Kind::power)
               + ", and what `burn_rate` says is burned holds " + s.show(burned_w, Kind::power)
               + ". `burn_rate` is taken: leave the other out, or correct it.";
    });
}

/// A heater that carries its hood, and the hood as a part of the run: its gas is thinned twice.
void hood_told_twice(Subject& s) {
    odd(s,
        !has_part(s.view.written.run, PartKind::draft_hood)
            || s.resolved.appliance.type != ApplianceType::draft_hood,
        "the draft hood",
        [] {
            return "The file tells of a draft hood twice: a heater of `\"type\": \"draft-hood\"` "
                   "carries its own. Leave the part out, or give the type of the heater before the "
                   "hood, such as \"boiler\".";
        });
}

} // namespace

void doubtful_combustion(Subject& s) {
    hood_told_twice(s);
    one_fire(s, &HighLow::high, true);
    one_fire(s, &HighLow::low, false);
    heat_of_the_fuel(s, &HighLow::high, true);
    heat_of_the_fuel(s, &HighLow::low, false);
}

} // namespace fluewright::checking
