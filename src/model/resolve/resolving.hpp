#pragma once

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/march/march.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/run/case.hpp"

#include <string>
#include <string_view>

/// The steps of resolve(), one file each.
namespace fluewright::resolving {

/// What is being built, and the two lists every step may add to.
struct CaseWork {
    const Installation& written;
    Case& made;
    Faults& faults;

    /// The value written, or else the catalog's default, noted.
    double value_or_default(const Given& given,
                            std::string_view pointer,
                            std::string_view what,
                            Kind kind,
                            DefaultId default_id) const;

    void assume(std::string_view pointer,
                std::string_view what,
                Kind kind,
                double value,
                std::string_view source,
                std::string_view mark) const;

    void assume_word(std::string_view pointer,
                     std::string_view what,
                     std::string_view word,
                     std::string_view source,
                     std::string_view mark) const;

    void fault(std::string_view pointer, std::string_view message, std::string_view help) const;
};

void site(const CaseWork& work);
void appliance(const CaseWork& work);

/// High and low fire of the appliance: what burns, and what it sends up.
void fires(const CaseWork& work, const catalog::ApplianceDefault& defaults);

/// Gives a fire this temperature at the outlet, and the heat that goes with it.
void take_gas_temperature(const CaseWork& work, GasChoice fire, double gas_k);

/// Gas temperatures of the file that a bare probe has shown: the true ones in their place. The run
/// must be known.
void probe(const CaseWork& work);

void fuel(const CaseWork& work); ///< of the appliance: analysis, moisture, heating value

/// The loading door and what the firebox behind it holds of heat.
void door(const CaseWork& work, const catalog::ApplianceDefault& defaults);

void run(const CaseWork& work);
void burn(const CaseWork& work);

/// The house whose balance gives the room pressure, unless that is given.
void house(const CaseWork& work);

/// What wind does at the chimney top.
void top_wind(const CaseWork& work);

/// The first minutes of a fire.
void kindling(const CaseWork& work);

/// Leakage of the joints, gates of draft regulators and openings of draft hoods.
void joints(const CaseWork& work);

/// Index in Case::walls of the named wall, with `deposit` on its inside; built on first use.
std::size_t wall_index(const CaseWork& work, std::string_view name, const WallLayer& deposit);

/// The layer a deposit makes; thickness 0 where the part has none.
WallLayer deposit_layer(const CaseWork& work, const Part& part, std::string_view pointer);

} // namespace fluewright::resolving
