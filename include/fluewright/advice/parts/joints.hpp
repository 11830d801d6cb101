#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Do the ends of the parts go together, and does liquid that runs down stay inside?
namespace fluewright {

/// Makers' tolerances: within this, two bores are one size.
inline constexpr double same_bore_m = 0.001;

/// What one side brings to a joint.
struct EndFacts {
    PipeEnd end{};
    double diameter_m{}; ///< inside; of one that is not round, that of the circle of equal area
    std::string wall;    ///< id; locking ends mate within one wall only
    bool rectangular{};  ///< not round
    bool oval{};         ///< of what is not round
    double width_m{};    ///< of what is not round
    double depth_m{};
    bool assumed{}; ///< the file does not say
    /// Of sheet that pliers crimp: thin round single-wall pipe. An adapter is often saved by that.
    bool can_crimp{};

    /// Takes over size and shape, and nothing of the end.
    void take_bore(const FlueBore& bore) {
        diameter_m = bore.diameter_m;
        rectangular = !bore.round();
        oval = bore.oval;
        width_m = bore.width_m;
        depth_m = bore.depth_m;
    }
};

enum class Mating : std::uint8_t {
    good,      ///< they go together, liquid stays inside
    points_up, ///< they go together, but the inserted end points to the chimney
    never,     ///< they do not go together
};

enum class Bore : std::uint8_t {
    same,
    inch_and_metric, ///< nearly the same size of the two systems: fits by force or not at all
    wider_above,
    narrower_above,
    other_shape,
};

struct Fit {
    Mating mating{};
    Bore bore{};
    /// What to put between, with the size and the end of both its sides; empty where nothing is
    /// needed. Its inserted ends point to the heater, so that liquid stays inside.
    std::string adapter;
    PipeEnd adapter_heater_end{};  ///< of that adapter
    PipeEnd adapter_chimney_end{}; ///< of that adapter
    /// Whether the plain end above may be crimped instead, so that no adapter is needed.
    bool crimps{};
    /// No adapter lets every inserted end point to the heater: one of the parts must have other
    /// ends.
    bool other_part{};
};

/// The end that points to the chimney of the part below against the end that points to the heater
/// of the part above.
[[nodiscard]] Fit fit_of(const EndFacts& below, const EndFacts& above, UnitSystem units);

/// What fit_of() finds for the ends alone, without the words for an adapter.
[[nodiscard]] Mating mating_of(const EndFacts& below, const EndFacts& above);

struct Joint {
    int below{-1}; ///< index in the run; -1 is the outlet
    int above{};
    std::string place; ///< "between straight 1 and elbow 2"
    EndFacts lower;    ///< chimney end of the part below
    EndFacts upper;    ///< heater end of the part above
    Fit fit;
    /// The parts at this joint that lie upside down, "straight 1 and straight 2".
    std::string turn_round;
    /// Once every part that lies upside down is turned round: as `fit` where none is.
    Fit turned;

    /// What is bought for it: the adapter, unless turning round or crimping does.
    [[nodiscard]] std::string_view bought_adapter() const {
        return turned.crimps ? std::string_view{} : std::string_view{turned.adapter};
    }

    /// Whether anything must be turned or put between here.
    [[nodiscard]] bool needs_something() const;
    /// What to do, in sentences; empty where nothing is needed.
    [[nodiscard]] std::string cure() const;
};

struct PartEnds {
    int part{};
    EndFacts heater;
    EndFacts chimney;
    double thickness_m{}; ///< of the sheet; 0 where it has none
    bool thickness_assumed{};
};

struct JointReport {
    std::vector<PartEnds> parts;
    std::vector<Joint> joints; ///< in flow order
};

/// Every joint of the run. Ends the file leaves out are those usual for the wall: thin single-wall
/// pipe crimped towards the heater and plain above, thick pipe plain and socketed, double-wall and
/// factory-built locking, masonry open; the collar of the heater a socket. Common practice, no
/// source.
[[nodiscard]] JointReport joints_of(const Case& resolved);

/// Finds the parts that lie upside down: of all ways to turn parts round, the one that leaves the
/// fewest joints in need of an adapter, and of those the one with the fewest turns. Only a part
/// whose ends the file states is turned, and only where `may_turn` has it.
void turn_parts(JointReport& report, const std::vector<bool>& may_turn, UnitSystem units);

/// "6 in" or "150 mm" for a trade size, else the diameter in the given units.
[[nodiscard]] std::string size_name(double diameter_m, UnitSystem units);

/// "round", "oval" or "square", as adapters are named; rectangular counts as square.
[[nodiscard]] constexpr std::string_view shape_name(bool round, bool oval) {
    return round ? "round" : oval ? "oval" : "square";
}

/// The size a part is sold by: size_name() of a round one, else its sides: "oval 8 in x 5 in".
[[nodiscard]] std::string bore_name(const FlueBore& bore, UnitSystem units);

} // namespace fluewright
