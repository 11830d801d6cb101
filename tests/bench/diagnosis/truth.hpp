#pragma once

#include "dice.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/march/surroundings.hpp"
#include "fluewright/model/run/case.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

/// What stands there in truth, and what somebody sees and reads of it. Nothing here uses the
/// likelihoods of the diagnosis: the causes are built in by themselves, thresholds and noise are of
/// their own, and the truth departs from the file in heat, flow, weather and losses.
namespace bench {

struct Planted {
    std::string cause; ///< id, "nothing", or a flaw of the design
    double size{};
    int part{-1}; ///< of a cause that has a place
};

struct Effects {
    double fan_pa{};
    double house_pa{};
    double starved_pa{};
    double wind_pa{};
    double past_control{};
    double heat_share{1.0};
};

class Truth {
public:
    /// The installation of the file with a cause of trouble in it.
    Truth(const fluewright::Installation& written, const Planted& planted, Dice& dice);

    [[nodiscard]] bool possible() const { return solved_.has_value(); }

    [[nodiscard]] const Planted& planted() const { return planted_; }

    /// Whether this run draws more at high fire than its heater can hold, though the file's does
    /// not.
    [[nodiscard]] bool draws_too_hard() const;

    /// Of a truth that is no hidden cause, what departs from the file.
    void departs_by(const std::string& flaw) { planted_.cause = flaw; }

    /// Somebody's answer to a check of the table: an entry of the file; nothing where the check
    /// cannot be made. Repeated, it says the same.
    [[nodiscard]] std::optional<fluewright::Observation>
    answer(const std::string& kind, const std::string& look, const std::string& at);

    /// Whether a complaint would have been made at all.
    [[nodiscard]] bool complains() const;

    /// The complaints made.
    [[nodiscard]] std::vector<fluewright::Observation> complaints();

private:
    struct Moment {
        bool window_open{};
        bool fans_off{};
        bool windy{};
    };

    enum class Doing { high, low, embers, lighting, idle };

    struct Look {
        double draft_pa{};
        double gas_k{};
        double shown_gas_k{}; ///< the same by a bare probe
        double joints_pa{};
        double door_share{};
        double flow_share{1.0};
        double room_pa{};
        double coldest_k{};
        std::vector<double> part_draft_pa;
        std::vector<double> part_gas_k; ///< as a bare probe shows it
        std::vector<double> part_gas_share;
    };

    [[nodiscard]] fluewright::Surroundings air(Doing doing, const Moment& moment) const;
    [[nodiscard]] Look look(Doing doing, const Moment& moment) const;
    [[nodiscard]] bool smokes(const Moment& moment) const;
    [[nodiscard]] bool symptom(const std::string& kind) const;
    [[nodiscard]] bool seen(const std::string& kind);
    [[nodiscard]] double misread(double value, double spread, double wild_scale);
    [[nodiscard]] bool finds(const std::string& look);
    [[nodiscard]] std::string stick(const std::string& at, bool cold);
    [[nodiscard]] std::string course();

    Planted planted_;
    fluewright::Installation written_;
    std::optional<fluewright::Case> solved_;
    Effects effects_;
    std::vector<std::size_t> place_of_part_; ///< index in the true run of each part of the file
    double moisture_{};
    double written_flow_kg_s_{};
    Dice dice_;
    double person_{}; ///< how readily this person reports smoke
    std::map<std::string, fluewright::Observation> said_;
};

} // namespace bench
