#include "advice/checks/subject.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::checking {
namespace {

/// One fire, as the file has it and as it was worked out.
struct WrittenFire {
    std::string_view name;
    const Firing& firing;
    Given HighLow::*end;
};

/// Useful heat that the file states for a fire [W]; none where it follows from the other heats.
Given stated_useful_w(const Appliance& w, const WrittenFire& fire) {
    if (const Given& output_w = w.heat_output_w.*fire.end) {
        return output_w;
    }
    return w.efficiency.*fire.end ? Given{fire.firing.heat_output_w} : std::nullopt;
}

/// Whether the file states more of the heats than follow from each other.
bool overstated(const Appliance& w, const WrittenFire& fire) {
    // What a low fire burns follows from the high one where the file does not say.
    const bool burned = w.burn_rate_kg_s.*fire.end || w.heat_input_w.*fire.end
                        || w.burn_rate_kg_s.high || w.heat_input_w.high;
    if (w.gas_temperature_k.*fire.end && w.efficiency.*fire.end) {
        return true; // whatever burns, the shares of it must come to one
    }
    return burned
           && (w.gas_temperature_k.*fire.end
               || (w.efficiency.*fire.end && w.heat_output_w.*fire.end));
}

void balance(Subject& s, const WrittenFire& fire) {
    const Appliance& w = s.view.written.appliance;
    if (!overstated(w, fire)) {
        return;
    }
    const Firing& f = fire.firing;
    const Given stated_w = stated_useful_w(w, fire);
    // Unstated useful heat is the rest, and the rest cannot be less than nothing.
    const double useful_w = stated_w.value_or(0.0);
    const double sum_w = useful_w + f.heat_to_flue_w + f.heat_unburned_w;
    const double missed_w = sum_w - f.heat_in_fuel_w;
    const double share =
        (stated_w ? std::abs(missed_w) : std::max(0.0, missed_w)) / f.heat_in_fuel_w;
    const double most = catalog::default_of(DefaultId::heat_balance_scatter).value;
    CheckResult* found =
        s.hold(own("heat-does-not-close"),
               share <= most,
               {.kind = Kind::fraction, .figure = share, .limit = most, .weight = share - most},
               {.section = nullptr, .place = fire.name});
    if (found == nullptr || !s.with_words()) {
        return;
    }
    const auto power = [&](double watt) { return s.show(watt, Kind::power); };
    found->message = "At " + std::string{fire.name} + " the fuel holds " + power(f.heat_in_fuel_w)
                     + ", and the figures of the file make it " + power(sum_w) + ": "
                     + (stated_w ? power(useful_w) + " useful, " : "") + power(f.heat_to_flue_w)
                     + " in the gas and " + power(f.heat_unburned_w) + " unburned (assumed)"
                     + (stated_w ? "." : ", with nothing left for the room.");
}

} // namespace

void heat_balance(Subject& s) {
    const ApplianceCase& a = s.resolved.appliance;
    balance(s, {"high fire", a.high, &HighLow::high});
    balance(s, {"low fire", a.low, &HighLow::low});
}

} // namespace fluewright::checking
