#include "fluewright/model/catalog/catalog.hpp"
#include "stretches.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {
namespace {

/// Where a wanted piece belongs: its stretch and its place in it.
struct Owner {
    std::size_t stretch{};
    std::size_t piece{};
};

/// All pieces of one wall and size, over the whole job.
struct Wanted {
    CutTask task;
    std::vector<Owner> owners;
};

bool same_pipe(const PipeStretch& a, const PipeStretch& b) {
    return a.wall == b.wall && a.size == b.size;
}

Wanted wanted_like(const Job& job, const PipeStretch& first, const Sold& shop) {
    Wanted wanted;
    for (std::size_t i = 0; i < job.list.stretches.size(); ++i) {
        const PipeStretch& stretch = job.list.stretches[i];
        for (std::size_t k = 0; same_pipe(stretch, first) && k < stretch.pieces_m.size(); ++k) {
            wanted.task.wanted_m.push_back(stretch.pieces_m[k]);
            wanted.owners.push_back({i, k});
        }
    }
    for (const FixedLength& length : shop.lengths) {
        wanted.task.lengths.push_back({length.length_m, std::nullopt});
    }
    for (const StockPiece& piece : job.stock) {
        if (piece.count && fits(piece, first)) {
            wanted.task.lengths.push_back(
                {*piece.length_m, static_cast<std::size_t>(std::lround(*piece.count))});
        }
    }
    wanted.task.cut_loss_m = catalog::default_of(DefaultId::cut_loss_m).value;
    return wanted;
}

/// Whether the pipe widens to a socket at its chimney end, so that its plain end is the one to cut.
bool is_socketed(const Job& job, const PipeStretch& stretch) {
    const auto& parts = job.list.joints.parts;
    return std::any_of(parts.begin(), parts.end(), [&](const PartEnds& ends) {
        return ends.part == stretch.parts.front() && ends.chimney.end == PipeEnd::socket;
    });
}

std::string measure_of(const PipeStretch& stretch, bool socketed, bool from_offcut) {
    if (stretch.kind == WallKind::liner) {
        return "from either end";
    }
    if (socketed) {
        return "from the socket; keep the socket, cut the plain end off";
    }
    return from_offcut ? "from the plain end of the offcut; then crimp its other end"
                       : "from the crimped end; keep the crimp, cut the plain end off";
}

void add_cuts(const Job& job, const Wanted& wanted, const CutPlan& plan, bool socketed) {
    constexpr double whole_m = 0.0005;
    for (const Bar& bar : plan.bars) {
        const BarLength& stock = wanted.task.lengths[bar.length];
        for (std::size_t k = 0; k < bar.items.size(); ++k) {
            const double length_m = wanted.task.wanted_m[bar.items[k]];
            const Owner owner = wanted.owners[bar.items[k]];
            const PipeStretch& stretch = job.list.stretches[owner.stretch];
            if (stock.length_m - length_m > whole_m) {
                job.list.cuts.push_back({.place = stretch.place,
                                         .piece = owner.piece + 1,
                                         .length_m = length_m,
                                         .from_m = stock.length_m,
                                         .at_hand = stock.at_hand.has_value(),
                                         .from_offcut = k > 0,
                                         .measure = measure_of(stretch, socketed, k > 0)});
            }
        }
    }
}

} // namespace

void cuts(const Job& job) {
    PartsList& list = job.list;
    for (std::size_t i = 0; i < list.stretches.size(); ++i) {
        const PipeStretch& first = list.stretches[i];
        const auto begin = list.stretches.begin();
        const bool done = std::any_of(begin,
                                      begin + static_cast<std::ptrdiff_t>(i),
                                      [&](const auto& before) { return same_pipe(before, first); });
        const Sold shop = sold(job, first);
        if (done || !shop.cut) {
            continue;
        }
        Wanted wanted = wanted_like(job, first, shop);
        if (wanted.owners.empty()) {
            continue;
        }
        const bool socketed = is_socketed(job, first);
        // A cut makes a plain end. It can be crimped, but no socket can be made on it.
        wanted.task.most_per_bar = socketed ? 1 : wanted.owners.size();
        CutGroup group{
            first.wall, first.diameter_m, plan_cuts(wanted.task), wanted.task.lengths, first.size};
        add_cuts(job, wanted, group.plan, socketed);
        list.bought_m += group.plan.bought_m;
        list.offcut_m += group.plan.offcut_m;
        list.exact = list.exact && group.plan.exact;
        list.groups.push_back(std::move(group));
    }
}

} // namespace fluewright::parts
