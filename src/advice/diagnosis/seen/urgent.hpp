#pragma once

#include "evidence.hpp"
#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/model/run/heater_kind.hpp"

/// What was seen that somebody has to act on before any cause is looked for.
namespace fluewright::diagnosis {

struct Urgent {
    bool alarm{};          ///< a carbon monoxide alarm has sounded
    bool alarm_when_out{}; ///< and the appliance was out
    bool too_hot{};        ///< the pipe or the gas was seen far too hot
    bool smoke{};          ///< smoke came into the room while it burned
    bool at_joints{};      ///< it came out of the joints: the flue is under pressure
    bool room_far_below{}; ///< the room was measured below what any heater is allowed
    bool nearly_shut{};    ///< what leads leaves little of the flue open
    bool roars{};
    bool creosote{};      ///< what runs from the flue of a fire burns itself
    bool falls_back{};    ///< air came down the cold flue: what is lit comes into the room
    double reversed_pa{}; ///< the draft measured while it burned, where that has a minus; or 0

    /// Whether nobody may light it, and every check has to leave it cold.
    [[nodiscard]] bool keeps_cold() const {
        return alarm || too_hot || at_joints || room_far_below || nearly_shut || falls_back
               || reversed_pa < 0.0;
    }
};

/// `dangers` are those of the file, by its own checks.
[[nodiscard]] Urgent urgent_in(const std::vector<Observation>& observed,
                               const std::vector<Evidence>& evidence,
                               const std::vector<PresentDanger>& dangers,
                               const Case& resolved);

/// What to do at once, the most urgent first; empty where nothing that was seen calls for it.
/// `no_fire` as in Diagnosis.
[[nodiscard]] std::vector<std::string>
urgent_words(const Urgent& urgent, bool no_fire, const Case& resolved);

/// Whether a check may be made: none that needs a fire where nobody may light it, nor under
/// creosote or where the fire could not be held down.
[[nodiscard]] bool may_be_made(const Check& check, const Urgent& urgent, bool no_fire);

/// Whether something cannot be watched or measured without lighting the appliance.
[[nodiscard]] bool needs_fire(const Evidence& evidence);

} // namespace fluewright::diagnosis
