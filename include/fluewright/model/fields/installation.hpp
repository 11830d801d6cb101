#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/appliance.hpp"
#include "fluewright/model/fields/building.hpp"
#include "fluewright/model/fields/given.hpp"
#include "fluewright/model/fields/house.hpp"
#include "fluewright/model/fields/observed.hpp"
#include "fluewright/model/fields/own.hpp"
#include "fluewright/model/fields/part.hpp"
#include "fluewright/model/fields/site.hpp"
#include "fluewright/model/fields/stock.hpp"

#include <string>
#include <vector>

/// What the user wrote, in SI and nothing added: every member that may be left out is optional, and
/// no default is filled in here. resolve() turns it into a Case and notes each value it had to
/// assume. The tables in model/fields/fields.hpp tell the key, the kind of quantity, the range and
/// the meaning of every member; reader, schema and reference are made from them.
namespace fluewright {

/// A spread the user wrote behind a value: `"4.2 m ± 0.1 m"`.
struct Tolerance {
    std::string pointer; ///< of the value; a bare value of low and high fire is /high
    double half_width;   ///< SI

    bool operator==(const Tolerance&) const = default;
};

struct Installation {
    Word id; ///< what a batch calls the record, so that results can be joined to it
    Word title;
    Choice<FileUnits> units; ///< metric or us: how the text output shows quantities
    Site site;
    Appliance appliance;
    std::vector<Part> run;
    std::vector<OwnFuel> fuels;
    std::vector<OwnWall> walls;
    std::vector<OwnFitting> fittings;
    std::vector<Observation> observed;
    std::vector<BurnEntry> burn;
    Building building;
    std::vector<StockPiece> stock;
    std::vector<Tolerance> tolerances;
    int us_quantities{0};     ///< how many quantities were typed in US units
    int metric_quantities{0}; ///< how many in metric units

    bool operator==(const Installation&) const = default;
};

/// The units of a file: those it states, else those most of its quantities are typed in.
[[nodiscard]] inline UnitSystem units_of(const Installation& in) {
    const bool us = in.units ? *in.units == FileUnits::us : in.us_quantities > in.metric_quantities;
    return us ? UnitSystem::us : UnitSystem::metric;
}

} // namespace fluewright
