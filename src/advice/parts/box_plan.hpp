#pragma once

#include "fluewright/advice/parts/cut_list.hpp"

#include <vector>

/// What can be laid out of the pieces at hand alone, nothing bought.
namespace fluewright::parts {

/// A straight to be laid as far as the pieces reach.
struct BoxStraight {
    double between_m{};
    double lap_m{};        ///< how far each of its pieces goes into the next
    double may_exceed_m{}; ///< of pipe that is not cut: how much longer is as good as met
};

struct BoxTask {
    std::vector<BoxStraight> straights;
    std::vector<BarLength> lengths; ///< those sold are passed over
    bool cuts{};                    ///< whether the pipe may be cut
    bool pieced{true};              ///< whether several may lie in one straight
    bool shares{};                  ///< whether an offcut can be a piece of its own
    double cut_loss_m{};
    double stub_m{}; ///< least that a piece lays that does not fill its straight alone
};

struct BoxPlan {
    CutPlan plan;
    std::vector<double> off_m; ///< of each straight; under 0: so much is short
    bool exact{true};          ///< shown that nothing comes nearer
};

/// The plan nearest to the straights: the least off in sum, then the fewest straights off, then the
/// fewest pieces and cuts.
///
/// Notes  Straights are laid in every order, each with whole pieces and at most one that is cut for
///        it; what is left of that may serve a later one. Any plan whose pieces form no ring of
///        lengths and straights can be laid so. Branch and bound; `exact` is false where it was
///        broken off after a fixed amount of work.
[[nodiscard]] BoxPlan plan_from_box(const BoxTask& task);

} // namespace fluewright::parts
