#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/physics/expansion.hpp"
#include "stretches.hpp"

#include <algorithm>
#include <vector>

namespace fluewright::parts {
namespace {

using checking::Piece;

/// What joints of pipe give that nobody calls a slip joint. Judgement.
constexpr double lap_play_m = 1e-3;

bool bends(const Piece& piece) {
    return piece.section->turn_rad > 0.1;
}

/// Whether what pushes a part pushes on: pipe and what stands in it, but nothing that a house or a
/// heater holds.
bool passes_on(const Piece& piece) {
    const WallKind kind = piece.wall->kind;
    return kind != WallKind::masonry && kind != WallKind::liner && kind != WallKind::insulated;
}

/// The first bend that pipe beside a stretch pushes against without being held before; null where
/// there is none. Pieces in the order from the stretch on.
template <class Pieces>
const Piece* bend_beside(const Pieces& pieces) {
    for (const Piece* piece : pieces) {
        if (bends(*piece)) {
            return piece;
        }
        if (!passes_on(*piece)) {
            return nullptr;
        }
    }
    return nullptr;
}

bool has_slip_joint(const Job& job, const PipeStretch& stretch) {
    return std::any_of(stretch.parts.begin(), stretch.parts.end(), [&](int index) {
        return job.view.written.run[static_cast<std::size_t>(index)].slip_joint.value_or(false);
    });
}

/// What takes up the growth without a piece that slides; empty where nothing does.
std::string gives(const Job& job, const PipeStretch& stretch) {
    if (stretch.has_slip_joint) {
        return "in its slip joint";
    }
    for (const int index : stretch.parts) {
        const Part& part = job.view.written.run[static_cast<std::size_t>(index)];
        if (part.expansion_allowed_m.value_or(0.0) > 0.0) {
            return "in its joints, by what the file allows";
        }
    }
    if (stretch.kind == WallKind::liner && stretch.to_top) {
        return "downwards at its foot, since it hangs from the top plate";
    }
    if (stretch.to_top) {
        return "upwards at the chimney top; leave it free in its bands and flashing";
    }
    std::vector<const Piece*> before;
    std::vector<const Piece*> after;
    for (const Piece& piece : job.view.pieces) {
        if (piece.index < stretch.parts.front()) {
            before.insert(before.begin(), &piece);
        } else if (piece.index > stretch.parts.back()) {
            after.push_back(&piece);
        }
    }
    for (const auto* side : {&after, &before}) {
        if (const Piece* bend = bend_beside(*side)) {
            return "into the bend at " + job.view.place_of(*bend);
        }
    }
    return {};
}

} // namespace

void growth(const Job& job) {
    for (PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind == WallKind::masonry) {
            continue;
        }
        Growth g;
        g.place = stretch.place;
        g.length_m = stretch.drawn_m;
        double hot_m_k = 0.0;
        for (const StateResult& state : job.view.states()) {
            if (state.kind != StateKind::high_fire) {
                continue;
            }
            double grows_m = 0.0;
            double m_k = 0.0;
            for (std::size_t i = 1; i < state.stations.size(); ++i) {
                const Section& section = job.view.resolved.sections[state.stations[i].section];
                const bool here =
                    std::find(stretch.parts.begin(), stretch.parts.end(), section.part)
                    != stretch.parts.end();
                if (!here || section.length_m <= 0.0) {
                    continue;
                }
                const WallBuild& wall = job.view.resolved.walls[section.wall];
                const bool stainless = wall.inner_material.find("stainless") != std::string::npos;
                const double mean_k = mean_wall_k(job.view.resolved, state, i);
                const double share = stainless ? expansion::stainless_steel(mean_k)
                                               : expansion::carbon_steel(mean_k);
                grows_m += section.length_m * std::max(0.0, share);
                m_k += section.length_m * mean_k;
            }
            if (grows_m > g.grows_m) {
                g.grows_m = grows_m;
                hot_m_k = m_k;
            }
        }
        if (g.grows_m <= 0.0) {
            continue;
        }
        g.mean_wall_k = hot_m_k / std::max(1e-6, g.length_m);
        stretch.has_slip_joint = has_slip_joint(job, stretch);
        g.where = gives(job, stretch);
        if (g.where.empty() && g.grows_m <= lap_play_m) {
            g.where = "in the play of its laps";
        }
        g.free = !g.where.empty();
        stretch.must_slide = !g.free;
        job.list.growth.push_back(std::move(g));
    }
}

void settle_growth(const Job& job) {
    for (Growth& growth : job.list.growth) {
        const auto& all = job.list.stretches;
        const auto stretch = std::find_if(
            all.begin(), all.end(), [&](const auto& s) { return s.place == growth.place; });
        if (stretch->telescopes()) {
            growth.free = true;
            growth.where = "in its telescoping piece; leave its halves free of each other";
        } else if (!growth.free && stretch->kind == WallKind::single) {
            growth.where = "nowhere: both its ends are held. Put in a slip joint";
        } else if (!growth.free) {
            growth.where = "nowhere: both its ends are held, and no telescoping piece goes in";
        }
    }
}

} // namespace fluewright::parts
