#include "fluewright/io/report/report_compare.hpp"
#include "fluewright/io/report/report_size.hpp"
#include "io/report/check_parts.hpp"
#include "margins.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

std::string picture_of(const std::vector<chart::Panel>& panels,
                       std::string_view title,
                       std::string_view sentence) {
    chart::Picture picture(
        chart::panel_page_width, chart::height_of_panels(panels.size()), sentence);
    picture.head(chart::panel_left, title, sentence);
    for (std::size_t i = 0; i < panels.size(); ++i) {
        chart::paint(picture, panels[i], i);
    }
    return picture.finished();
}

std::string size_words(const SizeTable& table, const SizeRow& row) {
    return table.separate && row.connector != row.chimney
               ? fmt::format("{}, {}", row.connector, row.chimney)
               : row.connector;
}

} // namespace

std::string size_table_svg(const SizeTable& table) {
    const UnitSystem units = table.present.units;
    std::vector<chart::Panel> panels;
    for (std::size_t first = 0; first < table.rows.size();) {
        const double height_m = table.rows[first].height_m;
        std::vector<chart::MarginColumn> columns;
        std::size_t i = first;
        for (; i < table.rows.size()
               && !(table.rows[i].height_m < height_m || table.rows[i].height_m > height_m);
             ++i) {
            const SizeRow& row = table.rows[i];
            columns.push_back({.name = size_words(table, row),
                               .installation = &table.present,
                               .score = row.score ? &*row.score : nullptr,
                               .works = row.works,
                               .chosen = table.suggested && *table.suggested == i,
                               .ruled_out = !row.ruled_out_by.empty()});
        }
        first = i;
        const std::string at = table.several_heights
                                   ? fmt::format(", chimney top {} over the outlet",
                                                 format_quantity(height_m, Kind::length, units))
                                   : std::string{};
        for (chart::Panel& panel :
             chart::margin_panels(columns,
                                  (table.separate ? "size, connector and chimney" : "size") + at,
                                  "suggested",
                                  units)) {
            panels.push_back(std::move(panel));
        }
    }
    return picture_of(panels, table.present.title, table.sentence);
}

std::string comparison_svg(const Comparison& comparison) {
    std::vector<chart::MarginColumn> columns;
    for (std::size_t i = 0; i < comparison.layouts.size(); ++i) {
        const Layout& layout = comparison.layouts[i];
        columns.push_back({.name = layout.name,
                           .installation = &layout.assessment.installation,
                           .score = &layout.score,
                           .works = layout.assessment.works(),
                           .chosen = !comparison.alike && comparison.best == i,
                           .ruled_out = false});
    }
    return picture_of(
        chart::margin_panels(columns,
                             "layout",
                             comparison.layouts[comparison.best].assessment.works() ? "take this"
                                                                                    : "nearest",
                             comparison.layouts.front().assessment.installation.units),
        "Layouts side by side",
        comparison.sentence);
}

} // namespace fluewright
