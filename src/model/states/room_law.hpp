#pragma once

#include "fluewright/model/states/states.hpp"

#include <algorithm>

namespace fluewright {

/// The room against outdoors by the air that a state takes out of it: where the house tells it and
/// the run lets in no air of its own, that is a function of the fire's flow, and needs no search of
/// its own. Otherwise the pressure the model has.   [theory eq. 32]
class RoomLaw {
public:
    RoomLaw(const FlueModel& model, StateKind kind)
        : around_(&model.surroundings()),
          by_house_(around_->house.known() && !model.has_leaks() && fire_of(kind) == Fire::burning),
          takes_air_(!model.resolved().house.outdoor_air || is_door_open(kind)) {}

    /// With the fire taking `air_kg_s`.
    [[nodiscard]] double pressure_pa(double air_kg_s) const {
        return by_house_
                   ? around_->house.room_pressure_pa(takes_air_ ? std::max(0.0, air_kg_s) : 0.0)
                   : around_->room_pressure_pa;
    }

    [[nodiscard]] bool is_fixed() const { return !by_house_; }

private:
    const Surroundings* around_;
    bool by_house_;
    bool takes_air_;
};

} // namespace fluewright
