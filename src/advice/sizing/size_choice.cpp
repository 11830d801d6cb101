#include "size_rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace fluewright::sizing {
namespace {

/// Of masonry: whether what stands keeps its section.
bool is_as_wide(const SizeRow& row) {
    return row.clay_liner.empty() && !row.lines_masonry();
}

} // namespace

const SizeRow* best_row(const SizeTable& table) {
    const auto order = [&](const SizeRow& row) {
        return std::tuple{!row.works && !(row.present && table.sweeping_cures),
                          !row.present,
                          std::abs(row.height_m - table.present_height_m),
                          table.separate && row.connector != row.chimney,
                          table.varies_masonry && !is_as_wide(row),
                          row.lines_masonry() && !table.varies_masonry,
                          row.chimney_m,
                          row.connector_m};
    };
    const SizeRow* best = nullptr;
    for (const SizeRow& row : table.rows) {
        const bool stands =
            row.ruled_out_by.empty() || (row.present && table.sweeping_cures && !row.against_rule);
        if (row.score && stands && (best == nullptr || order(row) < order(*best))) {
            best = &row;
        }
    }
    return best;
}

std::string size_not_met(const CheckResults& checks) {
    constexpr std::array<std::string_view, 2> of_size{"flue-smaller-than-outlet",
                                                      "flue-small-for-opening"};
    for (const CheckResult& result : checks) {
        const bool is_of_size =
            std::find(of_size.begin(), of_size.end(), result.check->matter->id) != of_size.end();
        if (is_of_size && result.outcome == CheckOutcome::not_met) {
            return std::string{result.check->matter->title};
        }
    }
    return {};
}

const SizeRow* nearest_row(const SizeTable& table) {
    const SizeRow* nearest = nullptr;
    for (const SizeRow& row : table.rows) {
        if (row.score && !row.against_rule
            && (nearest == nullptr || row.score->least_spare > nearest->score->least_spare)) {
            nearest = &row;
        }
    }
    return nearest;
}

const SizeRow* present_row(const SizeTable& table) {
    const auto row = std::find_if(
        table.rows.begin(), table.rows.end(), [](const SizeRow& r) { return r.present; });
    return row == table.rows.end() ? nullptr : &*row;
}

std::string stands_anyway(const SizeTable& table, const SizeRow& row) {
    if (row.works || table.against.empty()) {
        return {};
    }
    return " No size clears these: " + std::string{table.against.front()->title} + '.';
}

std::string
seldom_sold(const catalog::TradeSize& size, const Run& run, std::size_t begin, std::size_t end) {
    struct Pipe {
        WallKind kind;
        std::string_view key; ///< in the table
        std::string_view words;
    };

    constexpr std::array pipes{Pipe{WallKind::single, "single", "single-wall"},
                               Pipe{WallKind::double_wall, "double", "double-wall"},
                               Pipe{WallKind::insulated, "insulated", "insulated"},
                               Pipe{WallKind::liner, "liner", "liner"}};
    std::string words;
    for (const Pipe& pipe : pipes) {
        const bool used = std::any_of(run.parts.begin() + static_cast<std::ptrdiff_t>(begin),
                                      run.parts.begin() + static_cast<std::ptrdiff_t>(end),
                                      [&](const RunPart& part) {
                                          return part.has_choice_of_size() && part.has_length()
                                                 && part.wall_kind == pipe.kind;
                                      });
        if (used && size.seldom_sold_as.find(pipe.key) != std::string_view::npos) {
            words += (words.empty() ? "" : " and ") + std::string{pipe.words};
        }
    }
    return words.empty() ? words : words + " pipe";
}

} // namespace fluewright::sizing
