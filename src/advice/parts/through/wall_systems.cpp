#include "advice/checks/wall_system.hpp"
#include "advice/parts/small.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "through.hpp"

#include <algorithm>

/// The parts of each way through a wall: no two systems are built alike.
namespace fluewright::parts {
namespace {

using checking::Piece;

constexpr std::string_view handbooks = "pass-through-handbooks";
constexpr double larger_by_m = 2.0 * constants::inch_m; ///< bore of a larger insulated length

/// Of insulation round a length, and of each air channel of a thimble.
std::string inch(const Job& job) {
    constexpr int digits = 2; // 25 mm, as the trade has it
    return format_quantity(constants::inch_m, Kind::length, job.view.resolved.units, digits);
}

/// One way through a wall, measured for a piece.
class WallOpening {
public:
    WallOpening(
        const Job& job, const Piece& piece, const Piece* next, PassThrough way, std::string where)
        : job_(job), piece_(piece), way_(way), system_(checking::wall_system(way)),
          where_(std::move(where)) {
        // What the file tells counts where it is more; the length in the wall is of the chimney
        // that it goes into.
        if (way == PassThrough::insulated_length && next != nullptr
            && next->wall->kind == WallKind::insulated) {
            const double inside_m = next->run_part->bore.diameter_m;
            const double thick_m = 0.5 * (outside_diameter_m(*next->wall, inside_m) - inside_m);
            system_.round_m = std::max(system_.round_m, thick_m);
        }
        kept_m_ = std::max(system_.kept_m, piece.part->pass_through_clearance_m.value_or(0.0));
    }

    /// "12 in"
    [[nodiscard]] std::string kept() const { return job_.view.show(kept_m_, Kind::length); }

    [[nodiscard]] std::string deep() const { return job_.view.show(system_.deep_m, Kind::length); }

    /// "an opening of 22 in by 22 in clear of combustibles"
    [[nodiscard]] std::string opening() const {
        const double more_m = 2.0 * (system_.round_m + kept_m_);
        return opening_words(job_, piece_, more_m);
    }

    /// Adds a line with the source of the systems.
    void add(std::string what,
             std::string why,
             double count = 1.0,
             std::optional<double> other_size_m = std::nullopt) const {
        PartsLine line{
            .what = std::move(what),
            .count = count,
            .where = where_,
            .why = std::move(why),
            .source = std::string{way_ == PassThrough::wood_cut_back
                                      ? catalog::rule_of(RuleId::connector_wall_pass_through).source
                                      : handbooks}};
        if (other_size_m) {
            line.size = size_name(*other_size_m, job_.view.resolved.units);
            line.diameter_m = *other_size_m;
        } else {
            take_size(job_, piece_, line);
        }
        parts::add(job_, std::move(line));
    }

    static std::string opening_words(const Job& job, const Piece& piece, double more_m) {
        const FlueBore& bore = piece.run_part->bore;
        const auto side = [&](double inside_m) {
            const double outside_m =
                piece.is_single() ? inside_m : outside_diameter_m(*piece.wall, inside_m);
            return job.view.show(outside_m + more_m, Kind::length);
        };
        return "an opening of " + side(bore.round() ? bore.diameter_m : bore.width_m) + " by "
               + side(bore.round() ? bore.diameter_m : bore.depth_m) + " clear of combustibles";
    }

private:
    const Job& job_;
    const Piece& piece_;
    PassThrough way_;
    checking::WallSystem system_;
    double kept_m_{};
    std::string where_;
};

void cover_plates(const WallOpening& wall, std::string_view also = {}) {
    wall.add("cover plate of sheet steel",
             "one on each face of the wall: closes the opening" + std::string{also},
             2.0);
}

void brick(const WallOpening& wall) {
    wall.add("fireclay liner through the wall",
             "as long as the wall is deep; the pipe goes through it in one piece");
    wall.add("brickwork round the liner",
             wall.kept() + " of brick from the liner to combustibles all round, at least "
                 + wall.deep() + " deep: frame " + wall.opening());
}

void insulated_length(const Job& job,
                      const Piece& piece,
                      const Piece* next,
                      const WallOpening& wall) {
    wall.add("factory-built chimney length through the wall",
             "its insulation is packed solid and at least " + inch(job) + "; " + wall.kept()
                 + " of air from it to combustibles all round: frame " + wall.opening());
    cover_plates(wall, " and holds the length in its middle");
    job.list.assumed.push_back(
        "the pipe ends in the adapter at the length in the wall, which takes "
        "its place: cut "
        + job.view.place_of(piece) + " to the face of the wall");
    // A factory-built tee outdoors takes that length as it is; its adapter then sits on the room
    // side.
    const bool goes_on = next != nullptr && next->wall->kind == WallKind::insulated;
    wall.add("adapter from pipe to the length in the wall",
             "joins pipe and length at each end of it",
             goes_on ? 0.0 : 2.0);
    if (goes_on) {
        job.list.assumed.push_back("the length in the wall goes into " + job.view.place_of(*next)
                                   + " or the tee before it; the adapter listed there sits on the "
                                     "room side of the wall");
    }
}

void larger_length(const Piece& piece, const Job& job, const WallOpening& wall) {
    const double inside_m = piece.run_part->bore.diameter_m + larger_by_m;
    wall.add("factory-built chimney length through the wall",
             job.view.show(larger_by_m, Kind::length) + " larger than the pipe, at least "
                 + wall.deep() + " long, its insulation packed solid and at least " + inch(job)
                 + "; " + wall.kept() + " of air from it to combustibles all round: frame "
                 + wall.opening(),
             1.0,
             inside_m);
    cover_plates(wall,
                 " and holds pipe and length apart; the pipe goes through in one piece, air all "
                 "round it");
}

} // namespace

void through_wall(const Job& job,
                  const Piece& piece,
                  const Piece* next,
                  std::optional<PassThrough> way,
                  const std::string& where) {
    if (piece.wall->kind == WallKind::insulated) {
        thimble(job,
                piece,
                "wall thimble of the chimney's make",
                where,
                "keeps the clearance where the chimney passes" + opening_by_label(job, piece));
        trim_collar(job, piece, where);
        return;
    }
    if (!way) {
        thimble(job,
                piece,
                "wall thimble",
                where,
                "the file does not tell how it goes through: through a combustible wall only a "
                "listed thimble or a system of `pass_through` will do, each with its own opening");
        trim_collar(job, piece, where);
        return;
    }
    const WallOpening wall(job, piece, next, *way, where);
    switch (*way) {
    case PassThrough::brick:
        brick(wall);
        break;
    case PassThrough::insulated_length:
        insulated_length(job, piece, next, wall);
        break;
    case PassThrough::ventilated_thimble:
        thimble(job,
                piece,
                "ventilated wall thimble",
                where,
                "sheet of 24 gauge with two air channels of " + inch(job)
                    + "; the pipe goes through it in one piece");
        wall.add("glass fiber round the thimble",
                 wall.kept() + " from the thimble to combustibles all round: frame "
                     + wall.opening());
        cover_plates(wall);
        break;
    case PassThrough::larger_insulated_length:
        larger_length(piece, job, wall);
        break;
    case PassThrough::wood_cut_back:
        wall.add("noncombustible cover for the opening",
                 "closes it on each face; the wall is cut back by " + wall.kept()
                     + " all round the pipe: " + wall.opening(),
                 2.0);
        break;
    case PassThrough::noncombustible_wall:
        thimble(
            job,
            piece,
            "wall thimble",
            where,
            "the wall is noncombustible: set in with mortar, it lets the pipe move and come out");
        break;
    case PassThrough::listed_system:
        thimble(job,
                piece,
                "wall thimble listed with the pipe",
                where,
                "opening and clearance are those of its label: frame by its instructions");
        break;
    case PassThrough::none:
        job.list.assumed.push_back(
            "nothing is listed for the wall at " + where
            + ": no part makes bare pipe right in it; choose a system for `pass_through`");
        return;
    }
    trim_collar(job, piece, where);
}

std::string opening_by_label(const Job& job, const Piece& piece) {
    if (!is_metal_chimney(piece)) {
        return {};
    }
    const auto framed = [&](double kept_m, std::string_view why) {
        return ": frame " + WallOpening::opening_words(job, piece, 2.0 * kept_m) + ", "
               + job.view.show(kept_m, Kind::length) + std::string{why};
    };
    const Given& label = piece.part->listed_clearance_m;
    if (label) {
        return framed(*label, " all round as its label asks");
    }
    const bool factory = piece.wall->kind == WallKind::insulated;
    if (!factory && !job.view.solid_fuel()) {
        return ": frame the opening as the label of the vent asks";
    }
    return framed(factory ? catalog::rule_of(RuleId::factory_chimney_clearance).figure
                          : catalog::rule_of(RuleId::connector_clearance_double_wall).second,
                  " all round as is usual; its label decides");
}

} // namespace fluewright::parts
