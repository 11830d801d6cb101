#pragma once

#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "seen/situation.hpp"

#include <optional>
#include <vector>

/// Causes as changes to the installation.
namespace fluewright::diagnosis {

/// Where a cause sits: parts of the file's run, counted from 0.
struct Place {
    int first{-1};
    int last{-1};
    std::string words{}; ///< "at part 4, the elbow"; empty where a cause has no place
};

struct CauseAt {
    const Cause* cause{};
    Place place;
    double size{};
};

/// The installation with its causes in it, solved as it really is.
struct Altered {
    Case made;
    AirEffects air;
    double uncontrolled_share{};   ///< of a high fire's air that passes the control, at 12 Pa
    double heat_share{1.0};        ///< heat of a high fire over that in the file
    double written_flow_kg_s{};    ///< of a high fire in the file
    std::vector<double> deposit_m; ///< by part
    std::vector<CauseAt> causes;
    const Cause* flaw{}; ///< of the design, that the trouble may come from without being computed
    double flaw_grade{}; ///< 0: only just no longer sound, 1: glaring
};

/// The places a hidden cause can sit in; empty where the installation cannot have it. What was seen
/// with a gauge below and above a piece of the run points to that piece.
[[nodiscard]] std::vector<Place>
places_of(const Cause& cause, const Case& resolved, const std::vector<Observation>& seen = {});

/// The installation with these causes; nothing where they cannot be built in.
[[nodiscard]] std::optional<Altered>
alter(const Installation& written, const Case& resolved, const std::vector<CauseAt>& causes);

/// Whether water that ran out at a point, 0 where none is told, is no matter of the flaw: pipe lies
/// upside down at another place.
[[nodiscard]] bool is_elsewhere(const Altered& altered, std::size_t point);

} // namespace fluewright::diagnosis
