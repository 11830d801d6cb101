#include "box.hpp"

#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/same_name.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/structure.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fluewright {
namespace {

std::vector<std::string_view> walls_of_run(const Case& resolved) {
    std::vector<std::string_view> names;
    for (const RunPart& part : resolved.run.parts) {
        const std::string_view name = resolved.walls[part.wall].name;
        if (part.wall_kind != WallKind::masonry
            && std::find(names.begin(), names.end(), name) == names.end()) {
            names.push_back(name);
        }
    }
    return names;
}

bool is_pipe(StockKind kind) {
    return kind != StockKind::cap && kind != StockKind::thimble && kind != StockKind::damper
           && kind != StockKind::adapter;
}

} // namespace

Faults box_faults(const std::vector<StockPiece>& stock,
                  const Installation& written,
                  const Case& resolved) {
    Faults faults;
    const std::vector<std::string_view> walls = walls_of_run(resolved);
    const std::string allowed = joined(walls);
    for (std::size_t i = 0; i < stock.size(); ++i) {
        const StockPiece& piece = stock[i];
        const std::string entry = "/stock/" + std::to_string(i);
        if (piece.wall && !is_known_name(*piece.wall, Words::walls, written)) {
            const auto nearest = nearest_word(*piece.wall, walls);
            faults.push_back({entry + "/wall",
                              "`" + *piece.wall + "` is not a known wall",
                              {},
                              "walls of this run: " + allowed,
                              nearest ? "did you mean `" + std::string{*nearest} + "`?" : ""});
        } else if (!piece.wall && is_pipe(piece.kind())) {
            faults.push_back({entry,
                              "the stock does not say what its pipe is made of",
                              {},
                              {},
                              "add `wall`; walls of this run: " + allowed});
        }
    }
    return faults;
}

namespace parts {
namespace {

constexpr double same_angle_rad = std::numbers::pi / 180.0;

bool near(const Given& given, double value, double tolerance) {
    return given && std::abs(*given - value) <= tolerance;
}

std::string_view kind_name(StockKind kind) {
    return words_of(kind)[static_cast<std::size_t>(kind)];
}

bool same_wall(const StockPiece& piece, std::string_view wall) {
    if (!piece.wall) {
        return false;
    }
    const auto* row = catalog::find_wall(*piece.wall);
    return is_same_name(*piece.wall, wall) || (row != nullptr && row->id == wall);
}

/// Ends fit as they are, or once the piece is turned round.
bool ends_fit(const StockPiece& piece, const WantedFitting& wanted) {
    const auto agree = [](const Choice<PipeEnd>& has, const std::optional<PipeEnd>& asked) {
        return !has || !asked || *has == *asked;
    };
    const bool turns = wanted.kind == StockKind::elbow;
    return (agree(piece.heater_end, wanted.heater_end)
            && agree(piece.chimney_end, wanted.chimney_end))
           || (turns && agree(piece.chimney_end, wanted.heater_end)
               && agree(piece.heater_end, wanted.chimney_end));
}

bool serves(const StockPiece& piece, const WantedFitting& wanted) {
    return piece.kind() == wanted.kind && piece.count && *piece.count >= 0.5
           && (wanted.wall.empty() || same_wall(piece, wanted.wall))
           && near(piece.diameter_m, wanted.diameter_m, same_bore_m)
           && (!wanted.to_diameter_m
               || near(piece.to_diameter_m, *wanted.to_diameter_m, same_bore_m))
           && (!wanted.angle_rad || near(piece.angle_rad, *wanted.angle_rad, same_angle_rad))
           && ends_fit(piece, wanted);
}

std::string size_words(const StockPiece& piece, UnitSystem units) {
    std::string words = piece.diameter_m ? size_name(*piece.diameter_m, units) : "any size";
    if (piece.to_diameter_m) {
        words += " to " + size_name(*piece.to_diameter_m, units);
    }
    return words;
}

std::string piece_words(const StockPiece& piece, UnitSystem units) {
    std::string words = piece.wall ? *piece.wall + ", " : "";
    words += kind_name(piece.kind());
    if (piece.kind() == StockKind::straight && piece.length_m) {
        words += piece.shortest_m ? " that telescopes to " : " of ";
        words += format_quantity(*piece.length_m, Kind::length, units, 4);
    }
    if (piece.angle_rad) {
        words += " of " + format_quantity(*piece.angle_rad, Kind::angle, units);
    }
    return words;
}

std::string why_left(const Job& job, const StockPiece& piece, double had) {
    if (piece.kind() != StockKind::straight) {
        return *piece.count < had
                   ? "the run has no more of them"
                   : "the run asks for no such " + std::string{kind_name(piece.kind())}
                         + " of that wall, size, angle and those ends";
    }
    std::string why = "the run has no pipe";
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind == WallKind::masonry) {
            continue;
        }
        const std::string not_here =
            why_not(piece, stretch, is_socketed(job, stretch), job.view.resolved.units);
        if (not_here.empty()) {
            return "nothing is left for it to do, or it would lie as a stub";
        }
        why = same_wall(piece, stretch.wall) || why == "the run has no pipe" ? not_here : why;
    }
    return why;
}

} // namespace

bool take_fitting(const Job& job, const WantedFitting& wanted) {
    for (StockPiece& piece : job.stock) {
        if (serves(piece, wanted)) {
            *piece.count -= 1.0;
            return true;
        }
    }
    return false;
}

std::string
why_not(const StockPiece& piece, const PipeStretch& stretch, bool socketed, UnitSystem units) {
    if (piece.kind() != StockKind::straight || !piece.length_m) {
        return "it is no straight";
    }
    if (!same_wall(piece, stretch.wall)) {
        return "the run has no straight of this wall";
    }
    // What is at hand is round pipe of its diameter.
    const bool round = stretch.size.find(" x ") == std::string::npos;
    if (!round
        || (piece.diameter_m && std::abs(*piece.diameter_m - stretch.diameter_m) >= same_bore_m)) {
        return "its size is " + size_words(piece, units) + ", that of the run " + stretch.size;
    }
    if (stretch.kind == WallKind::single) {
        const bool wide =
            piece.chimney_end == PipeEnd::socket || piece.heater_end == PipeEnd::socket;
        const bool made = piece.chimney_end || piece.heater_end;
        if (made && wide != socketed) {
            return socketed ? "it has no socket, and the run's pipe goes together by sockets"
                            : "it has a socket, and the run's pipe is crimped";
        }
    }
    return {};
}

void leftovers(const Job& job) {
    for (std::size_t i = 0; i < job.stock.size(); ++i) {
        const StockPiece& piece = job.stock[i];
        if (piece.count && *piece.count >= 0.5) {
            const UnitSystem units = job.view.resolved.units;
            job.list.left_in_box.push_back({.what = piece_words(piece, units),
                                            .size = size_words(piece, units),
                                            .count = *piece.count,
                                            .why = why_left(job, piece, job.had[i])});
        }
    }
}

} // namespace parts
} // namespace fluewright
