#include "fluewright/model/run/heater_kind.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/fields/own_names.hpp"
#include "model/resolve/usual_fuel.hpp"

namespace fluewright {

std::optional<HeaterKind> kind_of(const Installation& written) {
    const Choice<ApplianceType> type = burning_type(written.appliance);
    if (!type) {
        return std::nullopt;
    }
    const std::string fuel =
        written.appliance.fuel.name.value_or(std::string{resolving::usual_fuel(*type)});
    if (const OwnFuel* own = find_own(written.fuels, fuel)) {
        return own->group ? std::optional{kind_of(*type, *own->group)} : std::nullopt;
    }
    const catalog::Fuel* row = catalog::find_fuel(fuel);
    return row != nullptr ? std::optional{kind_of(*type, row->group)} : std::nullopt;
}

} // namespace fluewright
