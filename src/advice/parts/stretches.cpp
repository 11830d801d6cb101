#include "stretches.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/same_name.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

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

bool fits(const StockPiece& piece, const PipeStretch& stretch) {
    const bool wall = !piece.wall || is_same_name(*piece.wall, stretch.wall)
                      || (catalog::find_wall(*piece.wall) != nullptr
                          && catalog::find_wall(*piece.wall)->id == stretch.wall);
    // What is at hand is round pipe of its diameter.
    const bool round = stretch.size.find(" x ") == std::string::npos;
    return wall && round
           && (!piece.diameter_m || std::abs(*piece.diameter_m - stretch.diameter_m) < 1e-3);
}

/// What the shop sells of this pipe: the file's lengths without a count, or else the catalog's.
Sold sold(const Job& job, const PipeStretch& stretch) {
    Sold all;
    all.cut = stretch.kind == WallKind::single || stretch.kind == WallKind::liner;
    const std::string_view system = system_of(stretch.diameter_m, job.view.resolved.units);
    for (const catalog::StockLength& row : catalog::stock_lengths()) {
        if (row.kind == stretch.kind && row.system == system) {
            all.lengths.push_back({row.length_m, row.least_m});
            all.lap_m = row.lap_m;
            all.cut = row.cut == "yes";
        }
    }
    std::vector<FixedLength> own;
    for (const StockPiece& piece : job.stock) {
        if (!piece.count && fits(piece, stretch)) {
            own.push_back({*piece.length_m, piece.shortest_m.value_or(*piece.length_m)});
        }
    }
    if (!own.empty()) {
        all.lengths = std::move(own);
    }
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
        } else if (build == Build::mitred) {
            ratio = 0.5;
        }
        const double radius_m = piece.part->radius_m.value_or(ratio * diameter_m);
        return radius_m * std::tan(0.5 * piece.section->turn_rad) + collar_m;
    }
    case PartKind::tee:
        // In masonry the pipe ends flush with the inside of the flue.
        return 0.5 * diameter_m + (piece.wall->kind == WallKind::masonry ? 0.0 : collar_m);
    case PartKind::reducer:
    case PartKind::increaser:
        // It stands in the way of the pipe after it.
        return piece.part->taper_length_m.value_or(0.0);
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

/// Cuttable pipe: full lengths and one cut. Where that cut would be a stub, the length before it
/// gives up just enough: two halves would each come out of a long piece.
void cut_up(PipeStretch& stretch, double longest_m) {
    constexpr double shortest_stub_m = 0.1;
    const double laying_m = longest_m - stretch.lap_m;
    double left_m = stretch.between_m;
    while (left_m > laying_m + 1e-6) {
        const bool stub_next = left_m - laying_m < shortest_stub_m;
        const double here_m = stub_next ? left_m - shortest_stub_m : laying_m;
        stretch.pieces_m.push_back(here_m + stretch.lap_m);
        left_m -= here_m;
    }
    if (left_m > 1e-6) {
        stretch.pieces_m.push_back(left_m + stretch.lap_m);
    }
}

/// Pieces at hand that may not be cut: the longest first, as long as they fit in.
void use_whole_pieces(const Job& job, PipeStretch& stretch, double& left_m) {
    constexpr double meets_m = 0.002;
    std::vector<StockPiece*> hand;
    for (StockPiece& piece : job.stock) {
        if (piece.count && fits(piece, stretch) && !piece.shortest_m) {
            hand.push_back(&piece);
        }
    }
    std::stable_sort(hand.begin(), hand.end(), [](const StockPiece* a, const StockPiece* b) {
        return *a->length_m > *b->length_m;
    });
    for (StockPiece* piece : hand) {
        while (*piece->count >= 1.0 && *piece->length_m <= left_m + meets_m) {
            stretch.pieces_m.push_back(*piece->length_m);
            ++stretch.at_hand;
            left_m -= *piece->length_m;
            *piece->count -= 1.0;
        }
    }
}

void fill(const Job& job, PipeStretch& stretch) {
    if (stretch.kind == WallKind::masonry) {
        return;
    }
    const Sold all = sold(job, stretch);
    const Part& first = job.view.written.run[static_cast<std::size_t>(stretch.parts.front())];
    stretch.lap_m = stretch.kind == WallKind::single ? first.lap_m.value_or(all.lap_m) : all.lap_m;
    if (stretch.between_m <= 0.0) {
        stretch.off_m = -stretch.between_m;
        stretch.note = "the fittings meet with nothing between and stand longer than drawn";
        return;
    }
    double longest_m = 0.0;
    for (const FixedLength& length : all.lengths) {
        longest_m = std::max(longest_m, length.length_m);
    }
    if (all.cut) {
        cut_up(stretch, std::max(longest_m, stretch.lap_m + 0.05));
        return;
    }
    constexpr double taller_is_fine_m = 0.31; // a foot at the mouth does no harm
    double left_m = stretch.between_m;
    use_whole_pieces(job, stretch, left_m);
    const MadeUp made = make_up(left_m, all.lengths, stretch.to_mouth ? taller_is_fine_m : 0.0);
    stretch.pieces_m.insert(stretch.pieces_m.end(), made.pieces_m.begin(), made.pieces_m.end());
    stretch.off_m = std::abs(made.off_m) > 0.0025 ? made.off_m : 0.0;
    stretch.telescopes = made.telescopes;
    if (made.telescopes) {
        stretch.note = "the last piece telescopes; set it to its length";
    } else if (stretch.off_m > 0.0) {
        stretch.note = stretch.to_mouth ? "the mouth stands higher than drawn"
                       : stretch.level  ? "no lengths make it up: set the heater farther off"
                                        : "no lengths make it up: it comes out longer than drawn";
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
            s.between_m += piece.section->length_m;
            before_m = 0.0;
            open = true;
            continue;
        }
        if (in_line(piece)) {
            continue;
        }
        const double takes_m = centre_to_face_m(piece);
        const bool turn =
            piece.section->kind == PartKind::elbow || piece.section->kind == PartKind::tee;
        if (open && turn) {
            all.back().between_m -= takes_m;
        }
        open = false;
        before_m = takes_m;
    }
    for (PipeStretch& s : all) {
        s.place = name_of(s.parts);
    }
    if (!all.empty()) {
        const Piece& last = job.view.pieces.back();
        all.back().to_mouth = last.has_length() || last.section->kind == PartKind::cap;
    }
    for (PipeStretch& s : all) {
        fill(job, s);
    }
}

} // namespace fluewright::parts
