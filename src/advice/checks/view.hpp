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
    const RunPart* run_part{}; ///< what the run knows of it
    bool in_chimney{};
    double height_m{}; ///< of its upper end, over the outlet

    [[nodiscard]] bool has_length() const { return run_part->has_length(); }

    /// Whether a distance is asked of it: of each length, and of a fitting where the file tells one
    /// or it stands where no pipe may. A fitting that says nothing stands as the pipe beside it.
    [[nodiscard]] bool has_distance() const {
        return has_length() || part->clearance_m || part->listed_clearance_m || part->shield
               || turns_hidden();
    }

    /// Whether it is asked what it passes, by the same measure.
    [[nodiscard]] bool has_passage() const {
        return has_length() || part->passes || turns_hidden();
    }

    /// Whether it has a sheet of its own: each length, and a fitting of which the file tells it.
    [[nodiscard]] bool has_sheet() const { return has_length() || part->wall.has_value(); }

    /// An elbow or tee out of sight.
    [[nodiscard]] bool turns_hidden() const {
        const bool turns = section->kind == PartKind::elbow || section->kind == PartKind::tee;
        return turns && (section->zone == Zone::attic || section->zone == Zone::chase);
    }

    [[nodiscard]] bool level() const { return run_part->level(); }

    [[nodiscard]] bool is_single() const { return run_part->wall_kind == WallKind::single; }

    /// Masonry without a liner: its mortar is all that keeps the gas in.
    [[nodiscard]] bool is_unlined() const { return wall->id.starts_with("unlined"); }

    [[nodiscard]] std::string key(std::string_view name) const { return run_part->pointer(name); }
};

/// The parts of the file that are in the run, in flow order.
[[nodiscard]] std::vector<Piece> pieces_of(const Installation& written, const Case& resolved);

/// All a check may look at.
class View {
public:
    /// `solution` is null where only checks of the shape are asked.
    View(const Installation& written,
         const Case& resolved,
         const Solution* solution,
         bool with_words = true,
         std::string_view body = "none");

    const Installation& written;
    const Case& resolved;
    bool with_words{true}; ///< whether anybody reads the messages; writing them takes its time
    bool one_charge{true}; ///< CheckOptions::one_charge
    std::string_view body; ///< whose rules are asked: "us", "ca", ..., "none"
    std::vector<Piece> pieces;

    [[nodiscard]] bool has_solution() const { return solution_ != nullptr; }

    /// The solved states; none without a solution.
    [[nodiscard]] std::span<const StateResult> states() const {
        return solution_ != nullptr ? std::span<const StateResult>{solution_->states}
                                    : std::span<const StateResult>{};
    }

    /// The joints of the run, worked out when first asked for.
    [[nodiscard]] const JointReport& joints() const;

    [[nodiscard]] const ApplianceCase& heater() const { return resolved.appliance; }

    [[nodiscard]] bool solid_fuel() const;

    /// Whether the appliance has this condition. Free burn is a fire whose air somebody has opened:
    /// what is not loaded by hand has none.
    [[nodiscard]] bool has(const StateResult& state) const {
        return state.kind != StateKind::free_burn || heater().has_door;
    }

    [[nodiscard]] bool fireplace() const { return heater().type == ApplianceType::fireplace; }

    [[nodiscard]] std::vector<const Piece*> connector() const;
    [[nodiscard]] std::vector<const Piece*> chimney() const;

    [[nodiscard]] double outlet_area_m2() const { return heater().outlet_area_m2; }

    /// Height of the chimney top over the outlet.
    [[nodiscard]] double rise_m() const { return resolved.total_rise_m(); }

    /// Useful output at high fire, kW.
    [[nodiscard]] double output_kw() const { return heater().high.heat_output_w / 1000.0; }

    /// Whether two figures are the same as printed in the units of the file.
    [[nodiscard]] bool same_as_printed(double figure, double other, Kind kind) const;

    /// Whether a figure reaches a limit once both are rounded as printed in the units of the file:
    /// an answer never says that 457 mm fall short of 457 mm.
    [[nodiscard]] bool reaches(double figure, double limit, Kind kind) const;

    /// Whether a part is of a chimney with walls outdoors, and not what stands over the roof of one
    /// that goes up in the house.
    [[nodiscard]] bool outdoors_below_roof(const Piece& piece) const {
        return piece.section->zone == Zone::outdoors && resolved.walls_outdoors;
    }

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return with_words ? format_quantity(value, kind, resolved.units) : std::string{};
    }

    [[nodiscard]] std::string place_of(const Piece& piece) const { return label(*piece.run_part); }

    /// "high fire, frost"
    [[nodiscard]] std::string words(const StateResult& state) const;

private:
    const Solution* solution_;
    UnitSystem file_units_;
    mutable std::optional<JointReport> joints_;
};

} // namespace fluewright::checking
