#include "fluewright/advice/sizing/size_table.hpp"

#include "advice/remedies/run_edit.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "pipe_sizes.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace fluewright {
namespace {

using namespace pipe_sizes;

constexpr double same_height_m = 1e-6;
constexpr double least_upright_m = 0.1;

/// The run with its last upright longer or shorter; nothing where too little of it would be left.
std::optional<Installation> at_height(const Installation& spelled, double more_m) {
    Installation changed = spelled;
    const auto last = std::find_if(changed.run.rbegin(), changed.run.rend(), run_edit::is_upright);
    if (last == changed.run.rend()) {
        return std::abs(more_m) < same_height_m ? std::optional{changed} : std::nullopt;
    }
    if (*last->up_m + more_m < least_upright_m) {
        return std::nullopt;
    }
    last->up_m = *last->up_m + more_m;
    return changed;
}

class Tabulation {
public:
    Tabulation(const Installation& written, const SizeTableOptions& options, SizeTable& table)
        : spelled_(run_edit::spelled_out(written)), table_(table),
          sizes_(options.sizes.value_or(
              table.present.units == UnitSystem::us ? TradeSizes::inch : TradeSizes::metric)),
          greatest_(greatest_area_ratio(table.present)) {
        run_edit::settle_size_changes(spelled_);
        const std::size_t end = spelled_.run.size();
        const std::size_t chimney = run_edit::chimney_start(spelled_);
        connector_ = present_size(spelled_, 0, chimney);
        chimney_ = present_size(spelled_, chimney, end);
        // One of the two may have nothing to choose: then there is one size only.
        table_.separate =
            options.separate && connector_.diameter_m > 0.0 && chimney_.diameter_m > 0.0;
    }

    [[nodiscard]] bool has_pipe() const {
        return connector_.diameter_m > 0.0 || chimney_.diameter_m > 0.0;
    }

    /// "150 mm", or the two that differ.
    [[nodiscard]] std::string present_pipe() const {
        const auto words = [&](const Present& present) {
            const std::string name = trade_name(present.diameter_m, sizes_, table_.present.units);
            return present.uniform ? name : "several sizes, mostly " + name;
        };
        if (connector_.diameter_m <= 0.0 || chimney_.diameter_m <= 0.0) {
            return words(connector_.diameter_m <= 0.0 ? chimney_ : connector_);
        }
        const std::string connector = words(connector_);
        const std::string chimney = words(chimney_);
        return connector == chimney ? connector : "connector " + connector + ", chimney " + chimney;
    }

    void fill(double height_m) {
        for (const catalog::TradeSize& connector : catalog::trade_sizes()) {
            if (connector.system != system_name(sizes_)) {
                continue;
            }
            if (!table_.separate) {
                add(connector, connector, height_m);
                continue;
            }
            for (const catalog::TradeSize& chimney : catalog::trade_sizes()) {
                // A chimney narrower than its connector is no choice.
                const bool choice = chimney.inside_diameter_m >= connector.inside_diameter_m
                                    && rule_of(connector).empty() && rule_of(chimney).empty();
                if (chimney.system == connector.system
                    && (choice || is_present(connector, chimney, height_m))) {
                    add(connector, chimney, height_m);
                }
            }
        }
    }

private:
    [[nodiscard]] double area_ratio(const catalog::TradeSize& size) const {
        return std::pow(size.inside_diameter_m / table_.present.appliance.outlet_diameter_m, 2);
    }

    [[nodiscard]] std::string rule_of(const catalog::TradeSize& size) const {
        return rule_against(area_ratio(size), greatest_);
    }

    [[nodiscard]] bool is_present(const catalog::TradeSize& connector,
                                  const catalog::TradeSize& chimney,
                                  double height_m) const {
        return is_now(connector_, connector.inside_diameter_m)
               && is_now(chimney_, chimney.inside_diameter_m)
               && std::abs(height_m - table_.present_height_m) < same_height_m;
    }

    [[nodiscard]] static bool is_now(const Present& present, double diameter_m) {
        return present.diameter_m <= 0.0
               || (present.uniform
                   && std::abs(diameter_m / present.diameter_m - 1.0) < same_size / 2.0);
    }

    void
    add(const catalog::TradeSize& connector, const catalog::TradeSize& chimney, double height_m) {
        SizeRow row;
        row.connector = connector.id;
        row.chimney = chimney.id;
        row.connector_m = connector.inside_diameter_m;
        row.chimney_m = chimney.inside_diameter_m;
        row.height_m = height_m;
        row.area_over_outlet = std::min(area_ratio(connector), area_ratio(chimney));
        row.present = is_present(connector, chimney, height_m);
        row.ruled_out_by = rule_of(connector);
        if (row.ruled_out_by.empty()) {
            row.ruled_out_by = rule_of(chimney);
        }
        row.against_rule = !row.ruled_out_by.empty();
        solve(row);
        table_.rows.push_back(std::move(row));
    }

    void solve(SizeRow& row) const {
        const auto higher = at_height(spelled_, row.height_m - table_.present_height_m);
        if (!higher) {
            row.ruled_out_by = "too little would be left of the topmost straight";
            return;
        }
        const auto resolved = resolve(with_sizes(*higher, row.connector_m, row.chimney_m));
        if (!resolved) {
            row.ruled_out_by = "cannot be built this way";
            return;
        }
        row.score = score(*resolved);
        if (!row.score->passes && !row.against_rule) {
            row.ruled_out_by = state_name(table_.present, row.score->states[row.score->limiting]);
        }
    }

    Installation spelled_;
    SizeTable& table_;
    TradeSizes sizes_;
    double greatest_;
    Present connector_;
    Present chimney_;
};

std::string pipe_words(const SizeTable& table, const SizeRow& row) {
    std::string words = row.connector;
    if (table.separate && row.connector != row.chimney) {
        words += " for the connector and " + row.chimney + " for the chimney";
    }
    if (table.several_heights) {
        words += ", the mouth " + format_quantity(row.height_m, Kind::length, table.present.units)
                 + " over the outlet";
    }
    return words;
}

/// "low fire, frost, where 3.4 Pa are to spare"
std::string tightest_words(const SizeTable& table, const SizeRow& row) {
    const StateVerdict& verdict = row.score->verdicts[row.score->limiting];
    const StateResult& state = row.score->states[row.score->limiting];
    const UnitSystem units = table.present.units;
    const std::string where = state_name(table.present, state) + ", where ";
    if (verdict.kind == Kind::pressure) {
        return where + format_quantity(std::abs(verdict.spare), Kind::pressure, units)
               + (verdict.spare < 0.0 ? " is lacking" : " is to spare");
    }
    return where + "the door may be opened "
           + format_quantity(
               std::clamp(state.door.opening_share, 0.0, 1.0), Kind::fraction, units, 2)
           + " of the way";
}

const SizeRow* find_row(const SizeTable& table, bool SizeRow::*mark) {
    const auto row = std::find_if(
        table.rows.begin(), table.rows.end(), [mark](const SizeRow& r) { return r.*mark; });
    return row == table.rows.end() ? nullptr : &*row;
}

/// What rules the present pipe out, as a sentence after another.
std::string against_present(const SizeTable& table) {
    const SizeRow* present = find_row(table, &SizeRow::present);
    if (present == nullptr || present->ruled_out_by.empty()) {
        return {};
    }
    const bool by_rule = present->against_rule;
    return " The present " + pipe_words(table, *present)
           + (by_rule ? ", is " + present->ruled_out_by + "."
                      : " falls short: " + tightest_words(table, *present) + ".");
}

std::string none_fits(const SizeTable& table, const SizeRow* nearest) {
    const std::string masonry =
        table.keeps_masonry ? " The masonry flue kept its size; a liner would change it." : "";
    if (nearest == nullptr) {
        return "No size keeps to the rules of the trade for this outlet." + masonry;
    }
    return "No pipe size that was tried carries every state. The nearest is "
           + pipe_words(table, *nearest) + ": " + tightest_words(table, *nearest) + "." + masonry
           + " `fluewright improve` looks for other changes.";
}

void suggest(SizeTable& table) {
    const SizeRow* best = nullptr;
    const SizeRow* nearest = nullptr;
    const auto order = [&](const SizeRow& row) {
        return std::tuple{!row.present,
                          std::abs(row.height_m - table.present_height_m),
                          row.connector != row.chimney,
                          row.chimney_m,
                          row.connector_m};
    };
    for (const SizeRow& row : table.rows) {
        if (!row.score || row.against_rule) {
            continue;
        }
        if (row.score->passes && (best == nullptr || order(row) < order(*best))) {
            best = &row;
        }
        if (nearest == nullptr || row.score->least_spare > nearest->score->least_spare) {
            nearest = &row;
        }
    }
    if (best == nullptr) {
        table.sentence = none_fits(table, nearest);
        return;
    }
    const auto index = static_cast<std::size_t>(best - table.rows.data());
    table.suggested = index;
    table.rows[index].suggested = true;
    const std::string tightest = " The tightest state is " + tightest_words(table, *best) + ".";
    table.sentence =
        best->present
            ? "Keep the present pipe, " + pipe_words(table, *best)
                  + ": it carries every state and no rule stands against it." + tightest
            : "Take " + pipe_words(table, *best)
                  + ": the smallest that carries every state and is not smaller than the outlet."
                  + tightest + against_present(table);
}

} // namespace

Result<SizeTable, Faults> tabulate_sizes(const Installation& written,
                                         const SizeTableOptions& options) {
    Result<Case, Faults> resolved = resolve(written);
    if (!resolved) {
        return Failure{std::move(resolved).error()};
    }
    SizeTable table;
    table.present = std::move(resolved).value();
    if (options.units) {
        table.present.units = *options.units;
    }
    table.present_height_m = table.present.total_rise_m();
    table.several_heights = !options.heights_m.empty();
    table.keeps_masonry =
        std::any_of(table.present.walls.begin(),
                    table.present.walls.end(),
                    [](const WallBuild& wall) { return wall.kind == WallKind::masonry; });
    Tabulation tabulation(written, options, table);
    if (!tabulation.has_pipe()) {
        table.sentence =
            "The run is all masonry or rectangular; only a liner would change its size. "
            "`fluewright improve` tries one, `fluewright sweep --over height=3..8m` other heights.";
        return table;
    }
    table.present_pipe = tabulation.present_pipe();
    if (options.heights_m.empty()) {
        tabulation.fill(table.present_height_m);
    }
    for (const double height_m : options.heights_m) {
        tabulation.fill(height_m);
    }
    suggest(table);
    return table;
}

} // namespace fluewright
