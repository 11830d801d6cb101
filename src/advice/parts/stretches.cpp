#include "stretches.hpp"

#include "box.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "small.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {

using checking::Piece;

std::string_view system_of(double diameter_m, UnitSystem units) {
    constexpr double near_m = 0.0006;
    for (const catalog::TradeSize& row : catalog::trade_sizes()) {
        if (std::abs(row.inside_diameter_m - diameter_m) < near_m) {
            return row.system;
        }
    }
    return units == UnitSystem::us ? "inch" : "metric";
}

namespace {

BarLength bar_of(double length_m, double shortest_m) {
    return {.length_m = length_m,
            .at_hand = std::nullopt,
            .cost = length_m,
            .shortest_m = shortest_m < length_m ? shortest_m : 0.0};
}

/// Where some lengths of a pipe have a price, those are what can be bought: money is held against
/// money only.
void take_prices(const Job& job, const PipeStretch& stretch, std::vector<BarLength>& lengths) {
    std::vector<BarLength> priced;
    for (const BarLength& length : lengths) {
        const auto price = job.prices.of_length(
            stretch.wall, stretch.diameter_m, length.length_m, length.telescopes());
        if (price) {
            priced.push_back(length);
            priced.back().cost = *price;
        }
    }
    if (!priced.empty()) {
        lengths = std::move(priced);
    }
}

} // namespace

bool is_one_piece(const PipeStretch& stretch) {
    const auto* wall = catalog::find_wall(stretch.wall);
    const bool rigid = wall != nullptr && wall->id.starts_with("rigid");
    return stretch.kind == WallKind::liner && !rigid;
}

/// What the shop sells of this pipe: the file's lengths without a count, or else the catalog's.
Sold sold(const Job& job, const PipeStretch& stretch) {
    Sold all;
    all.cut = stretch.kind == WallKind::single || stretch.kind == WallKind::liner;
    const std::string_view system = system_of(stretch.diameter_m, job.view.resolved.units);
    const bool rigid = stretch.kind == WallKind::liner && !is_one_piece(stretch);
    const WallKind sold_as = rigid ? WallKind::single : stretch.kind;
    for (const catalog::StockLength& row : catalog::stock_lengths()) {
        if (row.kind == sold_as && row.system == system) {
            all.lengths.push_back(bar_of(row.length_m, row.least_m));
            all.lap_m = row.lap_m;
            all.cut = row.cut == "yes";
        }
    }
    std::vector<BarLength> own;
    for (const StockPiece& piece : job.stock) {
        if (!piece.count
            && why_not(piece, stretch, is_socketed(job, stretch), job.view.resolved.units)
                   .empty()) {
            own.push_back(bar_of(*piece.length_m, piece.shortest_m.value_or(*piece.length_m)));
        }
    }
    if (!own.empty()) {
        all.lengths = std::move(own);
    }
    take_prices(job, stretch, all.lengths);
    return all;
}

namespace {

/// From the centre of a turn to the face a pipe stops at.
double centre_to_face_m(const Piece& piece) {
    const double collar_m = catalog::default_of(DefaultId::elbow_collar_m).value;
    const double diameter_m = piece.run_part->bore.diameter_m;
    switch (piece.section->kind) {
    case PartKind::elbow: {
        const Build build = piece.part->build.value_or(Build::gored);
        double ratio = catalog::default_of(DefaultId::elbow_radius_over_diameter_gored).value;
        if (build == Build::smooth) {
            ratio = catalog::default_of(DefaultId::elbow_radius_over_diameter_smooth).value;
        } else if (build == Build::mitered) {
            ratio = 0.5;
        }
        const double radius_m = piece.part->radius_m.value_or(ratio * diameter_m);
        return radius_m * std::tan(0.5 * piece.section->turn_rad) + collar_m;
    }
    case PartKind::tee:
    case PartKind::draft_regulator: // by the tee it stands on
        // In masonry the pipe ends flush with the inside of the flue.
        return 0.5 * diameter_m + (piece.wall->kind == WallKind::masonry ? 0.0 : collar_m);
    case PartKind::reducer:
    case PartKind::increaser:
        // It stands in the way of the pipe after it.
        return piece.part->taper_length_m.value_or(adapter_lays_m);
    default:
        return 0.0;
    }
}

bool in_line(const Piece& piece) {
    const PartKind kind = piece.section->kind;
    return kind == PartKind::damper || kind == PartKind::screen || kind == PartKind::obstruction;
}

bool continues(const PipeStretch& stretch, const Piece& piece, const std::string& size) {
    return stretch.wall == piece.wall->name && stretch.size == size
           && stretch.level == piece.level();
}

std::string name_of(const std::vector<int>& parts) {
    const std::string first = std::to_string(parts.front() + 1);
    return parts.size() == 1 ? "straight " + first
                             : "straights " + first + " to " + std::to_string(parts.back() + 1);
}

void lap(const Job& job, PipeStretch& stretch) {
    if (stretch.kind == WallKind::masonry) {
        return;
    }
    const Sold all = sold(job, stretch);
    const Part& first = job.view.written.run[static_cast<std::size_t>(stretch.parts.front())];
    stretch.lap_m = stretch.kind == WallKind::single ? first.lap_m.value_or(all.lap_m) : all.lap_m;
    if (stretch.between_m <= 0.0) {
        stretch.off_m = -stretch.between_m;
        stretch.note = "the fittings meet with nothing between them and are longer than drawn";
    }
}

} // namespace

namespace {

/// An adapter stands in the way of a stretch beside it: of one that can be cut, else of that above.
void make_room_for_adapters(const Job& job) {
    auto& all = job.list.stretches;
    for (const Joint& joint : job.list.joints.joints) {
        if (joint.bought_adapter().empty()) {
            continue;
        }
        PipeStretch* beside = nullptr;
        for (PipeStretch& s : all) {
            const bool meets = s.parts.front() == joint.above || s.parts.back() == joint.below;
            if (meets && s.kind != WallKind::masonry
                && (beside == nullptr || s.kind == WallKind::single)) {
                beside = &s;
            }
        }
        if (beside != nullptr) {
            beside->between_m -= adapter_lays_m;
        }
    }
}

} // namespace

void stretches(const Job& job) {
    auto& all = job.list.stretches;
    double before_m = 0.0; // what the fitting before takes
    bool open = false;     // whether the last stretch may go on
    for (const Piece& piece : job.view.pieces) {
        if (piece.has_length()) {
            const std::string size = bore_name(piece.run_part->bore, job.view.resolved.units);
            if (!open || !continues(all.back(), piece, size)) {
                all.push_back({});
                PipeStretch& s = all.back();
                s.wall = piece.wall->name;
                s.kind = piece.wall->kind;
                s.diameter_m = piece.run_part->bore.diameter_m;
                s.size = size;
                s.level = piece.level();
                s.between_m = -before_m;
            }
            PipeStretch& s = all.back();
            s.parts.push_back(piece.index);
            s.drawn_m += piece.section->length_m;
            s.rise_m += piece.section->rise_m;
            s.between_m += piece.section->length_m;
            before_m = 0.0;
            open = true;
            continue;
        }
        if (in_line(piece)) {
            continue;
        }
        if (piece.section->kind == PartKind::draft_regulator && !takes_a_tee(job, piece)) {
            continue; // it sits in the free end of a tee beside it, or in brick
        }
        const double takes_m = centre_to_face_m(piece);
        const bool regulator = piece.section->kind == PartKind::draft_regulator;
        const bool turn = regulator || piece.section->kind == PartKind::elbow
                          || piece.section->kind == PartKind::tee;
        if (open && turn) {
            all.back().between_m -= takes_m;
        }
        // The tee of a regulator that nothing parts from a fitting goes on from the face of that.
        before_m = regulator && !open ? before_m + 2.0 * takes_m : takes_m;
        open = false;
    }
    for (PipeStretch& s : all) {
        s.place = name_of(s.parts);
    }
    if (!all.empty()) {
        const Piece& last = job.view.pieces.back();
        all.back().to_top = last.has_length() || last.section->kind == PartKind::cap;
    }
    make_room_for_adapters(job);
    for (PipeStretch& s : all) {
        lap(job, s);
    }
}

} // namespace fluewright::parts
