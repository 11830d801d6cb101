#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr Limits phase_time{Kind::duration, 0.0, 7.0 * 86400.0, "a week of one fire", true};
constexpr Limits phase_rate{
    Kind::mass_rate, 0.0, 100.0 / 3600.0, "appliances this program is made for"};

constexpr std::array burn_fields{
    Field<BurnEntry>{text("name", {"What this stretch of time is called.", "lighting"}),
                     &BurnEntry::name},
    Field<BurnEntry>{
        required(quantity("for", phase_time, {"How long the fire burns so.", "20 min"})),
        &BurnEntry::duration_s},
    Field<BurnEntry>{required(quantity("burn_rate",
                                       phase_rate,
                                       {"Fuel burned in that time, on the basis of the "
                                        "appliance's burn rate; 0 kg/h when the fire is out.",
                                        "2 kg/h"})),
                     &BurnEntry::burn_rate_kg_s},
};

} // namespace

template <>
std::span<const Field<BurnEntry>> fields() {
    return burn_fields;
}

} // namespace fluewright
