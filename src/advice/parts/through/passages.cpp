#include "advice/parts/box.hpp"
#include "advice/parts/small.hpp"
#include "through.hpp"

#include <algorithm>

namespace fluewright::parts {

using checking::Piece;

namespace {

PartsLine line_of_size(
    const Job& job, const Piece& piece, std::string what, std::string where, std::string why) {
    PartsLine line{.what = std::move(what),
                   .where = std::move(where),
                   .why = std::move(why),
                   .source = std::string{trade_practice}};
    take_size(job, piece, line);
    return line;
}

} // namespace

void thimble(
    const Job& job, const Piece& piece, std::string what, std::string where, std::string why) {
    PartsLine line = line_of_size(job, piece, std::move(what), std::move(where), std::move(why));
    line.at_hand = take_fitting(job,
                                {.kind = StockKind::thimble,
                                 .wall = {},
                                 .diameter_m = line.diameter_m,
                                 .to_diameter_m = std::nullopt,
                                 .angle_rad = std::nullopt,
                                 .heater_end = std::nullopt,
                                 .chimney_end = std::nullopt});
    add(job, std::move(line));
}

void at_piece(
    const Job& job, const Piece& piece, std::string what, std::string where, std::string why) {
    add(job, line_of_size(job, piece, std::move(what), std::move(where), std::move(why)));
}

void trim_collar(const Job& job, const Piece& piece, const std::string& where) {
    at_piece(job, piece, "trim collar", where, "covers the gap around the pipe, on the room side");
}

namespace {

void ceiling(const Job& job, const Piece& piece, std::string_view what, const std::string& where) {
    at_piece(job,
             piece,
             std::string{what} + " firestop",
             where,
             "keeps the clearance and stops fire at the floor" + opening_by_label(job, piece));
    trim_collar(job, piece, where);
}

void roof(const Job& job, const Piece& piece, bool out_of_chase, const std::string& where) {
    const Given& pitch = job.view.written.site.roof.pitch_rad;
    const std::string slope = pitch ? " for a pitch of " + job.view.show(*pitch, Kind::angle)
                                    : ", for the pitch of your roof";
    at_piece(job,
             piece,
             out_of_chase ? "chase cover with collar" : "roof flashing" + slope,
             where,
             "keeps the rain out" + (out_of_chase ? "" : opening_by_label(job, piece)));
    at_piece(job,
             piece,
             "storm collar",
             where,
             out_of_chase ? "sheds the water onto the cover" : "sheds the water onto the flashing");
}

bool upright(const Piece* piece) {
    return piece != nullptr && !piece->level();
}

/// Where the run goes from the zone of `before` into that of `piece`.
void crossing(const Job& job, const Piece& before, const Piece& piece) {
    const Zone from = before.section->zone;
    const Zone to = piece.section->zone;
    const std::string under = "under " + job.view.place_of(piece);
    if (from == to) {
        return;
    }
    if (before.is_single() && piece.is_single() && !before.level()) {
        job.list.assumed.push_back(
            "nothing is listed where single-wall pipe goes up out of the " + std::string{name(from)}
            + ", at " + job.view.place_of(piece)
            + ": a chimney begins below; say what it `passes` and run `check`");
        return;
    }
    if (to == Zone::outdoors) {
        const bool told_wall =
            before.part->passes == Passage::wall || piece.part->passes == Passage::wall;
        if (leads_out_through_wall(*before.run_part, *piece.run_part)) {
            if (!told_wall) {
                through_wall(job,
                             before,
                             &piece,
                             before.part->pass_through ? before.part->pass_through
                                                       : piece.part->pass_through,
                             "between " + job.view.place_of(before) + " and outdoors");
            }
        } else if (upright(&piece) && before.part->passes != Passage::roof
                   && piece.part->passes != Passage::roof) {
            roof(job, piece, from == Zone::chase, under);
        }
    } else if (from == Zone::room && upright(&piece)) {
        const bool told =
            before.part->passes == Passage::ceiling || before.part->passes == Passage::floor
            || piece.part->passes == Passage::ceiling || piece.part->passes == Passage::floor;
        if (!told) {
            ceiling(job, piece, "ceiling", under);
        }
    }
    if (to == Zone::attic) {
        at_piece(job, piece, "attic shield", under, "keeps insulation and stored things off");
    }
}

/// Whether a part must not pass where it passes: no firestop or flashing makes that good.
bool must_not_pass(const Job& job, const Piece& piece) {
    return std::any_of(
        job.list.dangers.begin(), job.list.dangers.end(), [&](const PresentDanger& danger) {
            return danger.id == "pipe-passes-where-it-must-not" && danger.part == piece.index;
        });
}

/// What the file says that a part passes.
void told(const Job& job, const Piece& piece, const Piece* before, const Piece* next) {
    const std::string where = job.view.place_of(piece);
    switch (piece.part->passes.value_or(Passage::nothing)) {
    case Passage::wall:
        through_wall(job, piece, next, piece.part->pass_through, where);
        break;
    case Passage::ceiling:
        ceiling(job, piece, "ceiling", where);
        break;
    case Passage::floor:
        ceiling(job, piece, "floor", where);
        break;
    case Passage::roof:
        roof(job, piece, before != nullptr && before->section->zone == Zone::chase, where);
        break;
    case Passage::attic:
    case Passage::closet:
    case Passage::nothing:
        break;
    }
}

} // namespace

void passages(const Job& job) {
    const Piece* before = nullptr;
    const std::vector<Piece>& pieces = job.view.pieces;
    for (auto at = pieces.begin(); at != pieces.end(); ++at) {
        const Piece& piece = *at;
        if (!piece.has_length()) {
            continue;
        }
        const auto after =
            std::find_if(at + 1, pieces.end(), [](const Piece& each) { return each.has_length(); });
        const Piece* next = after == pieces.end() ? nullptr : &*after;
        const bool brick = piece.wall->kind == WallKind::masonry;
        const bool liner = piece.wall->kind == WallKind::liner;
        const bool brick_before =
            before != nullptr
            && (before->wall->kind == WallKind::masonry || before->wall->kind == WallKind::liner);
        if (!brick && !liner && !must_not_pass(job, piece)) {
            told(job, piece, before, next);
            if (before != nullptr && !brick_before && !must_not_pass(job, *before)) {
                crossing(job, *before, piece);
            }
        }
        if ((brick || liner) && before != nullptr && !brick_before) {
            thimble(job,
                    *before,
                    "thimble for the masonry, cemented in",
                    "between " + job.view.place_of(*before) + " and " + job.view.place_of(piece),
                    "holds the pipe where it enters the flue, flush with the inner face");
            trim_collar(job, *before, job.view.place_of(*before) + ", at the masonry");
        }
        before = &piece;
    }
}

} // namespace fluewright::parts
