#include "size_rows.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace fluewright::sizing {

const SizeRow* best_row(const SizeTable& table) {
    const auto order = [&](const SizeRow& row) {
        return std::tuple{!row.works && !(row.present && table.sweeping_cures),
                          !row.present,
                          std::abs(row.height_m - table.present_height_m),
                          row.connector != row.chimney,
                          row.lines_masonry && !table.varies_masonry,
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

} // namespace fluewright::sizing
