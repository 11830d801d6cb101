#pragma once

#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/model/run/case.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Which changes could do something to an installation: by topic, each in the file of its name.
namespace fluewright {

/// Gathers the changes that do something to one installation.
class Offer {
public:
    Offer(const Installation& written, const Case& present);

    std::vector<Remedy> take() && { return std::move(remedies_); }

    void passage(); ///< remedy_offer.cpp
    void fire();    ///< offer_fire.cpp
    void shape();   ///< remedy_offer.cpp
    void pipe();    ///< offer_pipe.cpp
    void damper();  ///< remedy_offer.cpp

    /// offer_less.cpp: smaller amounts of the same change, from the least up.
    void less_than(const Remedy& remedy);

private:
    void add(Remedy remedy);

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return format_quantity(value, kind, case_.units);
    }

    [[nodiscard]] bool us() const { return case_.units == UnitSystem::us; }

    void sizes(RemedyKind kind, std::size_t begin, std::size_t end, std::string_view what);
    void raise();
    void near_heater();
    void moved_by(double away_m);
    void raise_by(double height_m);
    void inlet_of(double area_m2, double target_pa);
    void open_up_to(double height_m);
    void house();
    void room_at(double pressure_pa);
    void no_more_than(double share);
    void regulator_at(double setting_pa);
    void hearth();
    void liners();
    void insulated(std::string_view wall);
    void caps();

    Installation before_;    ///< spelled out
    std::optional<Run> run_; ///< of before_, part for part
    const Case& case_;
    std::vector<Remedy> remedies_;
};

/// The same change in smaller amounts, in steps of the trade from the least up; empty where it has
/// no amount that could be less.
[[nodiscard]] std::vector<Remedy>
lesser_remedies(const Remedy& remedy, const Installation& written, const Case& present);

} // namespace fluewright
