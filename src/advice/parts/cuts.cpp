#include "box.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "laying.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {

std::string_view name(MeasuredEnd end) {
    switch (end) {
    case MeasuredEnd::crimped:
        return "crimped";
    case MeasuredEnd::socket:
        return "socket";
    case MeasuredEnd::plain:
        return "plain";
    case MeasuredEnd::either:
        break;
    }
    return "either";
}

namespace parts {
namespace {

std::string measure_of(const Cut& cut) {
    switch (cut.from) {
    case MeasuredEnd::either:
        return "from either end";
    case MeasuredEnd::socket:
        return "from the socket; keep the socket, cut the plain end off";
    case MeasuredEnd::plain:
        return "from the plain end of the offcut; then crimp its other end";
    case MeasuredEnd::crimped:
        break;
    }
    return "from the crimped end; keep the crimp, cut the plain end off";
}

/// A piece of the plan that lies in a stretch.
struct Lying {
    const Bar* bar;
    std::size_t turn;
    StretchPiece piece;
};

/// In a stretch, whole lengths lie first, then cut ones, what telescopes last.
int rank(const Lying& lying) {
    return lying.piece.telescopes ? 3 : !lying.piece.is_cut ? 0 : lying.turn == 0 ? 1 : 2;
}

std::vector<Lying> lying_in(const CutPlan& plan, const CutTask& task, std::size_t straight) {
    constexpr double whole_m = 0.0005;
    std::vector<Lying> all;
    for (const Bar& bar : plan.bars) {
        const BarLength& length = task.lengths[bar.length];
        for (std::size_t k = 0; k < bar.pieces.size(); ++k) {
            if (bar.pieces[k].straight != straight) {
                continue;
            }
            const double piece_m = bar.pieces[k].length_m;
            const bool cut = !length.telescopes() && length.length_m - piece_m > whole_m;
            all.push_back({&bar,
                           k,
                           {.length_m = cut || length.telescopes() ? piece_m : length.length_m,
                            .from_m = length.length_m,
                            .at_hand = length.at_hand.has_value(),
                            .is_cut = cut,
                            .telescopes = length.telescopes()}});
        }
    }
    std::stable_sort(all.begin(), all.end(), [](const Lying& a, const Lying& b) {
        return rank(a) != rank(b) ? rank(a) < rank(b) : a.piece.length_m > b.piece.length_m;
    });
    return all;
}

/// Rounds what is cut or set to the grid of the sheet; what one piece is off, the next takes up, so
/// that the sum is off by no more than half a step, or a step where the length had nothing to spare
/// and its pieces are rounded down.
void round_to_sheet(std::vector<Lying>& pieces, double grid_m) {
    double carried_m = 0.0;
    const auto is_tight = [&](const Lying& lying) {
        const double rounding_m = 0.5 * grid_m * static_cast<double>(lying.bar->pieces.size());
        return lying.piece.is_cut && lying.bar->offcut_m < rounding_m;
    };
    for (Lying& lying : pieces) {
        if (is_tight(lying)) {
            const double wanted_m = lying.piece.length_m;
            lying.piece.length_m = std::floor(wanted_m / grid_m + 1e-6) * grid_m;
            carried_m += wanted_m - lying.piece.length_m;
        }
    }
    for (Lying& lying : pieces) {
        if ((lying.piece.is_cut && !is_tight(lying)) || lying.piece.telescopes) {
            const double wanted_m = lying.piece.length_m + carried_m;
            lying.piece.length_m = std::round(wanted_m / grid_m) * grid_m;
            carried_m = wanted_m - lying.piece.length_m;
        }
    }
}

class Sawing {
public:
    Sawing(const Job& job, CutTask task, std::vector<std::size_t> owners)
        : job_(job), task_(std::move(task)), owners_(std::move(owners)) {}

    /// Plans, lays and lists; what was taken.
    const std::vector<Bar>& plan() {
        PartsList& list = job_.list;
        const PipeStretch& first = list.stretches[owners_.front()];
        CutGroup group{first.wall,
                       first.diameter_m,
                       job_.from_box ? out_of_box(job_, owners_, task_.lengths, &task_)
                                     : plan_cuts(task_),
                       task_.lengths,
                       first.size};
        const bool socketed = is_socketed(job_, first);
        const double grid_m = sheet_grid_m(job_.view.resolved.units);
        const std::size_t cuts_before = list.cuts.size();
        for (std::size_t k = 0; k < owners_.size(); ++k) {
            PipeStretch& stretch = list.stretches[owners_[k]];
            std::vector<Lying> pieces = lying_in(group.plan, task_, k);
            round_to_sheet(pieces, grid_m);
            for (const Lying& lying : pieces) {
                stretch.pieces.push_back(lying.piece);
                if (lying.piece.is_cut) {
                    add_cut(stretch, lying, group.plan, socketed);
                }
            }
            if (stretch.telescopes()) {
                stretch.note = "the last piece telescopes; set it to its length";
            }
            if (pieces.empty()) {
                stretch.off_m = -stretch.between_m;
                stretch.note = job_.from_box ? "nothing at hand fits it; it is short"
                                             : "no length fills it; it is short";
            } else if (stretch.off_m < 0.0) {
                stretch.note = "what is at hand leaves it short";
            }
        }
        const auto begin = list.cuts.begin() + static_cast<std::ptrdiff_t>(cuts_before);
        std::stable_sort(begin, list.cuts.end(), [](const Cut& a, const Cut& b) {
            return a.stock != b.stock ? a.stock < b.stock : a.turn < b.turn;
        });
        list.bought_m += group.plan.bought_m;
        list.offcut_m += group.plan.offcut_m;
        list.exact = list.exact && group.plan.exact;
        list.groups.push_back(std::move(group));
        return list.groups.back().plan.bars;
    }

private:
    void
    add_cut(const PipeStretch& stretch, const Lying& lying, const CutPlan& plan, bool socketed) {
        Cut cut{.place = stretch.place,
                .wall = stretch.wall,
                .size = stretch.size,
                .piece = stretch.pieces.size(),
                .length_m = lying.piece.length_m,
                .from_m = lying.piece.from_m,
                .stock = number_of(*lying.bar, plan),
                .turn = lying.turn + 1,
                .rest_m = lying.piece.from_m,
                .at_hand = lying.piece.at_hand,
                .from_offcut = lying.turn > 0,
                .from = is_one_piece(stretch) ? MeasuredEnd::either
                        : socketed            ? MeasuredEnd::socket
                        : lying.turn > 0      ? MeasuredEnd::plain
                                              : MeasuredEnd::crimped,
                .crimp = lying.turn > 0 && !is_one_piece(stretch) && !socketed,
                .measure = {}};
        for (std::size_t k = 0; k < lying.turn; ++k) {
            cut.rest_m -= lying.bar->pieces[k].length_m + task_.cut_loss_m;
        }
        cut.measure = measure_of(cut);
        job_.list.cuts.push_back(std::move(cut));
    }

    /// Lengths that are cut are numbered over the whole list.
    [[nodiscard]] std::size_t number_of(const Bar& bar, const CutPlan& plan) const {
        std::size_t before = 0;
        for (const CutGroup& group : job_.list.groups) {
            before += group.plan.bars.size();
        }
        return before + static_cast<std::size_t>(&bar - plan.bars.data()) + 1;
    }

    const Job& job_;
    CutTask task_;
    std::vector<std::size_t> owners_; ///< stretches, by the straights of the task
};

void saw_together(const Job& job,
                  const PipeStretch& first,
                  const Sold& shop,
                  const std::vector<std::size_t>& owners) {
    CutTask task;
    Lengths lengths = lengths_for(job, first, shop.lengths);
    task.lengths = std::move(lengths.bars);
    task.cut_loss_m = catalog::default_of(DefaultId::cut_loss_m).value;
    task.stub_m = stub_m;
    // A cut makes a plain end. It can be crimped, but no socket can be made on it.
    task.shares = !is_socketed(job, first);
    double longest_m = 0.0;
    for (const BarLength& length : task.lengths) {
        longest_m = std::max(longest_m, length.length_m);
    }
    for (const std::size_t i : owners) {
        PipeStretch& stretch = job.list.stretches[i];
        task.straights.push_back({stretch.between_m, stretch.lap_m});
        if (is_one_piece(stretch)) {
            task.stub_m = 1e3; // no liner is pieced together
            if (stretch.between_m > longest_m && !job.from_box) {
                task.lengths.push_back({.length_m = stretch.between_m,
                                        .at_hand = std::nullopt,
                                        .cost = stretch.between_m,
                                        .shortest_m = 0.0});
                lengths.at_hand.push_back(nullptr);
                stretch.note = "longer than what is usually sold: order it in one length";
            }
        }
    }
    for (const Bar& bar : Sawing(job, std::move(task), owners).plan()) {
        take(lengths.at_hand[bar.length]);
    }
}

void saw(const Job& job, const PipeStretch& first, const Sold& shop) {
    // The searches tell straights apart by the bits of a word; nobody builds so many.
    constexpr std::size_t most_together = 24;
    const std::vector<std::size_t> all = stretches_like(job, first);
    for (std::size_t i = 0; i < all.size(); i += most_together) {
        const std::size_t end = std::min(all.size(), i + most_together);
        saw_together(job,
                     first,
                     shop,
                     {all.begin() + static_cast<std::ptrdiff_t>(i),
                      all.begin() + static_cast<std::ptrdiff_t>(end)});
        job.list.exact = job.list.exact && all.size() <= most_together;
    }
}

} // namespace

bool is_socketed(const Job& job, const PipeStretch& stretch) {
    const auto& parts = job.list.joints.parts;
    return std::any_of(parts.begin(), parts.end(), [&](const PartEnds& ends) {
        return ends.part == stretch.parts.front() && ends.chimney.end == PipeEnd::socket;
    });
}

double sheet_grid_m(UnitSystem units) {
    constexpr double inch_m = 0.0254;
    return units == UnitSystem::us ? inch_m / 16.0 : 0.001;
}

void cuts(const Job& job) {
    const std::vector<PipeStretch>& all = job.list.stretches;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const PipeStretch& first = all[i];
        const auto before = all.begin() + static_cast<std::ptrdiff_t>(i);
        const bool done = std::any_of(
            all.begin(), before, [&](const auto& other) { return same_pipe(job, other, first); });
        if (done || first.kind == WallKind::masonry) {
            continue;
        }
        Sold shop = sold(job, first);
        if (job.from_box) {
            shop.lengths.clear();
        }
        for (const BarLength& length : shop.lengths) {
            job.list.sold.push_back(
                {first.wall, first.diameter_m, length.length_m, length.telescopes()});
        }
        if (shop.cut) {
            saw(job, first, shop);
        } else {
            assemble(job, first, shop);
        }
    }
}

} // namespace parts
} // namespace fluewright
