#include "advice/checks/subject.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <array>

namespace fluewright::checking {
namespace {

/// A range outside of which a value is so rare that it is more likely a slip.
struct Usual {
    double value;
    Kind kind;
    double low;
    double high;
    std::string_view what;
    std::string_view place; ///< the same in a word or two
};

void wet_wood(Subject& s) {
    const double most = catalog::default_of(DefaultId::moisture_limit_wet).value;
    const ApplianceCase& a = s.resolved.appliance;
    if (a.fuel_group != FuelGroup::wood) {
        return;
    }
    CheckResult* f = s.hold(own("fuel-too-wet"),
                            a.moisture <= most,
                            {.kind = Kind::moisture,
                             .figure = a.moisture,
                             .limit = most,
                             .weight = a.moisture / most - 1.0},
                            {.section = nullptr, .place = "the fuel"});
    if (f != nullptr && s.with_words()) {
        f->message = "The wood holds " + s.show(a.moisture, Kind::moisture) + " of water; "
                     + s.show(most, Kind::moisture) + " is the most that burns cleanly.";
    }
}

} // namespace

void doubtful(Subject& s) {
    wet_wood(s);
    const ApplianceCase& a = s.resolved.appliance;
    const bool closed_stove = a.type == ApplianceType::stove;
    const double outlet_flux =
        a.high.gas_flow_kg_s / a.outlet_area_m2; // kg/(m2 s), about the velocity of the cold gas
    const std::array<Usual, 6> checks{{
        {a.moisture, Kind::moisture, 0.0, 0.4, "the moisture of the fuel", "the fuel"},
        {a.high.air_ratio,
         Kind::number,
         1.0,
         closed_stove ? 6.0 : 40.0,
         "the air ratio at high fire",
         "the air ratio"},
        {a.high.gas_temperature_k,
         Kind::temperature,
         323.15,
         1073.15,
         "the gas temperature at the outlet",
         "the gas temperature"},
        {outlet_flux,
         Kind::number,
         0.1,
         6.0,
         "the gas flow per area of the outlet, in kg/(m2 s),",
         "the gas flow"},
        {a.high.draft_needed_pa,
         Kind::pressure,
         0.0,
         40.0,
         "the draft the appliance needs",
         "the needed draft"},
        {s.resolved.total_rise_m(),
         Kind::length,
         1.0,
         25.0,
         "the height of the mouth over the outlet",
         "the height"},
    }};
    for (const Usual& check : checks) {
        const bool above = check.value > check.high;
        const double limit = above ? check.high : check.low;
        CheckResult* f =
            s.hold(own("unusual-input"),
                   check.value >= check.low && check.value <= check.high,
                   {.kind = check.kind, .figure = check.value, .limit = limit, .weight = 0.0},
                   {.section = nullptr, .place = check.place});
        if (f == nullptr || !s.with_words()) {
            continue;
        }
        f->message = "Unusual: " + std::string{check.what} + " is "
                     + s.show(check.value, check.kind) + (above ? ", more than " : ", less than ")
                     + s.show(limit, check.kind) + ".";
    }
}

} // namespace fluewright::checking
