#include "finding_rules.hpp"

#include <array>

namespace fluewright::rules {
namespace {

/// A range outside of which a value is so rare that it is more likely a slip.
struct Usual {
    double value;
    Kind kind;
    double low;
    double high;
    std::string_view what;
};

} // namespace

void doubtful(const Subject& s) {
    const ApplianceCase& a = s.installation.appliance;
    const bool closed_stove = a.type == ApplianceType::stove;
    const double outlet_flux =
        a.high.gas_flow_kg_s / a.outlet_area_m2; // kg/(m2 s), about the velocity of the cold gas
    const std::array<Usual, 6> checks{{
        {a.moisture, Kind::moisture, 0.0, 0.4, "the moisture of the fuel"},
        {a.high.air_ratio,
         Kind::number,
         1.0,
         closed_stove ? 6.0 : 40.0,
         "the air ratio at high fire"},
        {a.high.gas_temperature_k,
         Kind::temperature,
         323.15,
         1073.15,
         "the gas temperature at the outlet"},
        {outlet_flux, Kind::number, 0.1, 6.0, "the gas flow per area of the outlet, in kg/(m2 s),"},
        {a.high.draft_needed_pa, Kind::pressure, 0.0, 40.0, "the draft the appliance needs"},
        {s.installation.total_rise_m(),
         Kind::length,
         1.0,
         25.0,
         "the height of the mouth over the outlet"},
    }};
    for (const Usual& check : checks) {
        if (check.value >= check.low && check.value <= check.high) {
            continue;
        }
        const bool above = check.value > check.high;
        Finding& f = s.add("unusual-input");
        f.place = "the input";
        f.kind = check.kind;
        f.figure = check.value;
        f.limit = above ? check.high : check.low;
        f.message = "Unusual: " + std::string{check.what} + " is " + s.show(check.value, check.kind)
                    + (above ? ", more than " : ", less than ") + s.show(*f.limit, check.kind)
                    + ".";
    }
}

} // namespace fluewright::rules
