#include "size_rows.hpp"

#include "advice/greatest_flue_area.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/catalog/trade_equivalents.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "masonry_rows.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::sizing {
namespace {

std::string rule_words(double area_over_outlet, const Case& c) {
    if (is_smaller_size(area_over_outlet, 1.0)) {
        return "smaller than the outlet";
    }
    const double greatest = greatest_flue_area(c).over_outlet;
    if (is_smaller_size(greatest, area_over_outlet)) {
        return "more than " + format_number(greatest, 2) + " times the outlet's area";
    }
    return {};
}

double area_over_outlet(const Case& c, double diameter_m) {
    return std::pow(diameter_m / c.appliance.outlet_diameter_m, 2);
}

/// The diameter of the parts of a stretch that can be chosen.
struct ChosenPipe {
    double diameter_m{}; ///< that most of the length has; 0 where no part can be chosen
    bool uniform{true};

    [[nodiscard]] bool is(double other_m) const {
        return diameter_m <= 0.0 || (uniform && is_same_diameter(diameter_m, other_m));
    }
};

ChosenPipe chosen_of(const Run& run, std::size_t begin, std::size_t end) {
    ChosenPipe chosen;
    double longest_m = -1.0;
    for (std::size_t i = begin; i < end; ++i) {
        const RunPart& part = run.parts[i];
        if (!part.has_choice_of_size()) {
            continue;
        }
        const double diameter_m = part.bore.diameter_m;
        if (chosen.diameter_m > 0.0 && !is_same_diameter(diameter_m, chosen.diameter_m)) {
            chosen.uniform = false;
        }
        if (part.length_m > longest_m) {
            longest_m = part.length_m;
            chosen.diameter_m = diameter_m;
        }
    }
    return chosen;
}

class Tabulation {
public:
    Tabulation(const Installation& written,
               const Assessment& present,
               const SizeTableOptions& options,
               Depth depth,
               SizeTable& table)
        : written_(written), table_(table), depth_(depth), required_(present.required),
          rules_(present.body->id), present_works_(present.works()),
          sizes_(options.sizes.value_or(usual_sizes(table.present))) {
        const Run& run = table.present.run;
        const std::size_t chimney = run.chimney_start();
        connector_ = chosen_of(run, 0, chimney);
        chimney_ = chosen_of(run, chimney, run.parts.size());
        // One of the two may have nothing to choose: then there is one size only.
        table_.separate =
            options.separate && connector_.diameter_m > 0.0 && chimney_.diameter_m > 0.0;
    }

    [[nodiscard]] bool has_pipe() const {
        return connector_.diameter_m > 0.0 || chimney_.diameter_m > 0.0;
    }

    /// "150 mm", or the two that differ.
    [[nodiscard]] std::string present_pipe() const {
        const auto words = [&](const ChosenPipe& present) {
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
        for (const catalog::TradeSize* connector : trade_sizes(sizes_)) {
            if (!table_.separate) {
                add(*connector, *connector, height_m);
                continue;
            }
            for (const catalog::TradeSize* chimney : trade_sizes(sizes_)) {
                // A chimney narrower than its connector is no choice.
                const bool choice = chimney->inside_diameter_m >= connector->inside_diameter_m
                                    && rule_of(*connector).empty() && rule_of(*chimney).empty();
                if (choice || is_present(*connector, *chimney, height_m)) {
                    add(*connector, *chimney, height_m);
                }
            }
        }
    }

    /// A run without pipe to choose: what masonry could be instead.
    void fill_masonry(double height_m) {
        const bool open_front = has_open_front(table_.present.appliance);
        for (SizeRow& row : masonry_rows(table_.present, sizes_, height_m)) {
            if (!open_front) { // an open front is as wide as its flue serves it
                row.ruled_out_by = rule_words(row.area_over_outlet, table_.present);
            }
            row.against_rule = !row.ruled_out_by.empty();
            solve(row);
            table_.rows.push_back(std::move(row));
        }
    }

    /// Whether the present pipe falls short for what grew in it alone.
    [[nodiscard]] bool sweeping_cures() const {
        const SizeRow* present = present_row(table_);
        if (present == nullptr || present->works) {
            return false;
        }
        const auto swept = try_out(Change{Remedy{.kind = RemedyKind::sweep}}, written_, required_);
        return swept && passing(*swept, required_, rules_).works;
    }

    /// Beside pipe that can be chosen: round liners for the masonry it leads into.
    void fill_liners(double height_m) {
        for (SizeRow& row : masonry_rows(table_.present, sizes_, height_m)) {
            if (row.lines_masonry()) {
                row.ruled_out_by = rule_words(row.area_over_outlet, table_.present);
                row.against_rule = !row.ruled_out_by.empty();
                if (!row.against_rule || depth_ == Depth::every_size) {
                    solve(row);
                }
                table_.rows.push_back(std::move(row));
            }
        }
    }

private:
    [[nodiscard]] std::string rule_of(const catalog::TradeSize& size) const {
        return rule_against(table_.present, size.inside_diameter_m);
    }

    [[nodiscard]] bool is_present(const catalog::TradeSize& connector,
                                  const catalog::TradeSize& chimney,
                                  double height_m) const {
        return is_now(connector_, connector) && is_now(chimney_, chimney)
               && is_same_height(height_m, table_.present_height_m);
    }

    /// By its own size, or by the one of inches that the same pipe is sold as where it is made so.
    [[nodiscard]] bool is_now(const ChosenPipe& pipe, const catalog::TradeSize& size) const {
        return pipe.is(size.inside_diameter_m)
               || (pipe.uniform && sizes_ == TradeSizes::inch
                   && catalog::are_trade_equivalents(pipe.diameter_m, size.inside_diameter_m));
    }

    void
    add(const catalog::TradeSize& connector, const catalog::TradeSize& chimney, double height_m) {
        SizeRow row;
        row.connector = connector.id;
        row.chimney = chimney.id;
        row.connector_m = connector.inside_diameter_m;
        row.chimney_m = chimney.inside_diameter_m;
        row.height_m = height_m;
        row.area_over_outlet =
            area_over_outlet(table_.present, std::min(row.connector_m, row.chimney_m));
        if (chimney_.diameter_m <= 0.0) {
            lead_into_masonry(table_.present, row);
        }
        row.present = is_present(connector, chimney, height_m);
        row.seldom_sold = seldom_words(connector, chimney);
        row.ruled_out_by = rule_of(connector);
        if (row.ruled_out_by.empty()) {
            row.ruled_out_by = rule_of(chimney);
        }
        row.against_rule = !row.ruled_out_by.empty();
        if (!row.against_rule || row.present || depth_ == Depth::every_size) {
            solve(row);
        }
        table_.rows.push_back(std::move(row));
    }

    /// Of the pipe of the two stretches, what shops seldom stock in these sizes.
    [[nodiscard]] std::string seldom_words(const catalog::TradeSize& connector,
                                           const catalog::TradeSize& chimney) const {
        const Run& run = table_.present.run;
        if (connector.id == chimney.id) {
            return seldom_sold(connector, run, 0, run.parts.size());
        }
        const std::string below = seldom_sold(connector, run, 0, run.chimney_start());
        const std::string above = seldom_sold(chimney, run, run.chimney_start(), run.parts.size());
        return below + (below.empty() || above.empty() ? "" : ", ") + above;
    }

    /// The present row is the run as it stands, which may differ from the size by a hair.
    [[nodiscard]] std::vector<Change> changes_of(const SizeRow& row) const {
        if (table_.varies_masonry || row.lines_masonry()) {
            return masonry_changes(row, table_.present_height_m);
        }
        if (stands_as_it_is(row)) {
            return {AsItStands{}};
        }
        return {OtherPipe{row.connector_m, row.chimney_m, row.height_m}};
    }

    void solve(SizeRow& row) const {
        const Result<Installation, std::string> made = changed(changes_of(row), written_);
        if (!made) {
            row.ruled_out_by = made.error();
            return;
        }
        const Result<Trial, Faults> trial = try_out(*made, required_);
        if (!trial) {
            row.ruled_out_by = "cannot be built this way";
            return;
        }
        const bool open_masonry = table_.varies_masonry && has_open_front(table_.present.appliance);
        if (!row.against_rule && !open_masonry) {
            row.ruled_out_by = rule_against(trial->resolved);
            row.against_rule = !row.ruled_out_by.empty();
        }
        row.score = trial->score;
        judge(*trial, row);
    }

    [[nodiscard]] bool stands_as_it_is(const SizeRow& row) const {
        return row.present && !table_.varies_masonry && !row.lines_masonry();
    }

    /// What `check` says of the present run, which is known already.
    [[nodiscard]] Passing as_it_stands(const Trial& trial) const {
        return trial.score.passes
                   ? Passing{.works = present_works_, .against = table_.against, .found = {}}
                   : Passing{};
    }

    /// Nobody builds a chimney anew to a height that a rule of the roof forbids.
    void rule_out_a_low_top(const Passing& found, SizeRow& row) const {
        const auto low =
            std::find_if(found.found.begin(), found.found.end(), [](const Matter* matter) {
                return matter->id == "top-too-low-over-roof";
            });
        if (low != found.found.end() && table_.several_heights
            && !is_same_height(row.height_m, table_.present_height_m)) {
            row.ruled_out_by = (*low)->title;
            row.against_rule = true;
        }
    }

    /// A danger that the present run has as well is no matter of the size.
    void judge(const Trial& trial, SizeRow& row) const {
        const Passing found =
            stands_as_it_is(row) ? as_it_stands(trial) : passing(trial, required_, rules_);
        row.works = found.works;
        if (row.against_rule) {
            return;
        }
        if (!row.score->passes) {
            row.ruled_out_by = state_name(table_.present, row.score->states[row.score->limiting]);
            return;
        }
        const auto raised =
            std::find_if(found.against.begin(), found.against.end(), [&](const Matter* matter) {
                return std::find(table_.against.begin(), table_.against.end(), matter)
                       == table_.against.end();
            });
        if (raised != found.against.end()) {
            row.ruled_out_by =
                std::string{name((*raised)->harm)} + ": " + std::string{(*raised)->title};
            return;
        }
        rule_out_a_low_top(found, row);
    }

    const Installation& written_;
    SizeTable& table_;
    Depth depth_;
    Required required_;
    std::string rules_;
    bool present_works_;
    TradeSizes sizes_;
    ChosenPipe connector_;
    ChosenPipe chimney_;
};

/// Those asked for, and the one that stands: whoever asks for others wants to know whether it does.
std::vector<double> heights_of(const SizeTableOptions& options, double present_m) {
    std::vector<double> heights = options.heights_m;
    const bool has_present =
        std::any_of(heights.begin(), heights.end(), [present_m](double height_m) {
            return is_same_height(height_m, present_m);
        });
    if (!has_present) {
        heights.insert(std::find_if(heights.begin(),
                                    heights.end(),
                                    [present_m](double height_m) { return height_m > present_m; }),
                       present_m);
    }
    return heights;
}

} // namespace

std::string rule_against(const Case& resolved, double diameter_m) {
    return catalog::are_trade_equivalents(diameter_m, resolved.appliance.outlet_diameter_m)
               ? std::string{}
               : rule_words(area_over_outlet(resolved, diameter_m), resolved);
}

std::string rule_against(const Case& resolved) {
    for (const Section& section : resolved.sections) {
        const RunPart* part = resolved.run.part(section.part);
        if (part != nullptr && part->has_choice_of_size()
            && !catalog::are_trade_equivalents(circle_diameter_m(section.built_area_m2),
                                               resolved.appliance.outlet_diameter_m)) {
            std::string words =
                rule_words(section.built_area_m2 / resolved.appliance.outlet_area_m2, resolved);
            if (!words.empty()) {
                return words;
            }
        }
    }
    return {};
}

SizeTable rows_of(const Installation& written,
                  const Assessment& present,
                  const SizeTableOptions& options,
                  Depth depth) {
    SizeTable table;
    table.present = present.installation;
    table.against = matters_against(present);
    table.size_not_met = size_not_met(present.checks);
    table.present_height_m = table.present.total_rise_m();
    table.several_heights = !options.heights_m.empty();
    table.keeps_masonry =
        std::any_of(table.present.walls.begin(),
                    table.present.walls.end(),
                    [](const WallBuild& wall) { return wall.kind == WallKind::masonry; });
    Tabulation tabulation(written, present, options, depth, table);
    const std::vector<double> heights = heights_of(options, table.present_height_m);
    if (!tabulation.has_pipe()) {
        if (depth == Depth::every_size && has_masonry_flue(table.present)) {
            table.varies_masonry = true;
            table.keeps_masonry = false;
            table.separate = false;
            table.present_pipe = masonry_words(table.present);
            for (const double height_m : heights) {
                tabulation.fill_masonry(height_m);
            }
        }
        return table;
    }
    table.present_pipe = tabulation.present_pipe();
    for (const double height_m : heights) {
        tabulation.fill(height_m);
    }
    table.sweeping_cures = tabulation.sweeping_cures();
    if (!table.separate && has_masonry_flue(table.present)
        && !has_open_front(table.present.appliance)) {
        table.masonry_over_outlet = masonry_over_outlet(table.present);
        table.masonry_too_wide = is_smaller_size(greatest_flue_area(table.present).over_outlet,
                                                 table.masonry_over_outlet);
        // Who names no size that a rule stands against is told of a liner where one is wanted.
        if (depth == Depth::every_size || table.masonry_too_wide) {
            for (const double height_m : heights) {
                tabulation.fill_liners(height_m);
            }
        }
    }
    return table;
}

} // namespace fluewright::sizing
