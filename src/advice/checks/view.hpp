#pragma once

#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What the checks look at.
namespace fluewright::checking {

/// A part of the run beside the section it became.
struct Piece {
    int index{};
    const Part* part{};
    const Section* section{};
    const WallBuild* wall{};
    bool in_chimney{};
    double height_m{}; ///< of its upper end, over the outlet

    [[nodiscard]] bool has_length() const { return section->length_m > 0.0; }

    [[nodiscard]] bool level() const;

    [[nodiscard]] std::string key(std::string_view name) const;
};

/// Whether a section runs more across than up.
[[nodiscard]] bool is_level(const Section& section);
[[nodiscard]] bool is_upright(const Section& section);

/// Index of the first section of the chimney: the first upright part outdoors, in masonry or with
/// an insulated wall; what lies before it is the connector.
[[nodiscard]] std::size_t chimney_start(const Case& installation);

/// The parts of the file that are in the run, in flow order.
[[nodiscard]] std::vector<Piece> pieces_of(const Installation& written, const Case& installation);

/// "elbow 2", "the mouth", "the outlet": parts are numbered as in the file, from 1.
[[nodiscard]] std::string place_of(const Section& section);

/// All a check may look at.
class View {
public:
    /// `solution` is null where only checks of the shape are asked.
    View(const Installation& written,
         const Case& installation,
         const Solution* solution,
         bool with_words = true);

    const Installation& written;
    const Case& installation;
    bool with_words{true}; ///< whether anybody reads the messages; writing them takes its time
    std::vector<Piece> pieces;

    [[nodiscard]] bool has_solution() const { return solution_ != nullptr; }

    /// The solved states; none without a solution.
    [[nodiscard]] std::span<const StateResult> states() const {
        return solution_ != nullptr ? std::span<const StateResult>{solution_->states}
                                    : std::span<const StateResult>{};
    }

    /// The joints of the run, worked out when first asked for.
    [[nodiscard]] const JointReport& joints() const;

    [[nodiscard]] const ApplianceCase& heater() const { return installation.appliance; }

    [[nodiscard]] bool solid_fuel() const;

    [[nodiscard]] bool fireplace() const { return heater().type == ApplianceType::fireplace; }

    [[nodiscard]] std::vector<const Piece*> connector() const;
    [[nodiscard]] std::vector<const Piece*> chimney() const;

    [[nodiscard]] double outlet_area_m2() const { return heater().outlet_area_m2; }

    /// Height of the mouth over the outlet.
    [[nodiscard]] double rise_m() const { return installation.total_rise_m(); }

    /// Useful output at high fire, kW.
    [[nodiscard]] double output_kw() const { return heater().high.heat_output_w / 1000.0; }

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return with_words ? format_quantity(value, kind, installation.units) : std::string{};
    }

    [[nodiscard]] std::string place_of(const Piece& piece) const {
        return checking::place_of(*piece.section);
    }

    /// "high fire, frost"
    [[nodiscard]] std::string words(const StateResult& state) const;

private:
    const Solution* solution_;
    mutable std::optional<JointReport> joints_;
};

} // namespace fluewright::checking
