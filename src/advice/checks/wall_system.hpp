#pragma once

#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/fields/part_words.hpp"

/// What a way through a wall asks for: the check of a run and the list of its parts measure by the
/// same figures.
namespace fluewright::checking {

/// Measures of one way [m]; 0 where it has none.
struct WallSystem {
    double round_m{}; ///< liner, insulation or air channels, round the flue of the pipe
    double kept_m{};  ///< from their outside to the wood
    double deep_m{};  ///< least depth of them through the wall
};

/// The measures of a system; wood that is cut back stays as far off as bare pipe asks.
///
/// Source  heater handbooks, systems A to D   [pass-through-handbooks]; wood cut back as the rule
/// of
///         bare pipe   [mechanical-code-ca-2013]
[[nodiscard]] inline WallSystem wall_system(PassThrough way) {
    if (const catalog::WallPass* row = catalog::find_wall_pass(name(way))) {
        return {.round_m = row->round_m, .kept_m = row->kept_m, .deep_m = row->deep_m};
    }
    return {.kept_m = way == PassThrough::wood_cut_back
                          ? catalog::rule_of(RuleId::connector_clearance_single_wall).figure
                          : 0.0};
}

} // namespace fluewright::checking
