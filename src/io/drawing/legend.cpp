#include "colors.hpp"
#include "drawn_page.hpp"
#include "fluewright/advice/upkeep/maintenance.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "io/report/check_parts.hpp"

#include <array>
#include <fmt/core.h>

namespace fluewright::drawing::page {
namespace {

using chart::Anchor;

struct SignWords {
    Sign sign;
    std::string_view words;
};

constexpr std::array sign_words{
    SignWords{Sign::joint, "joint"},
    SignWords{Sign::leaks_out, "joint lets smoke out"},
    SignWords{Sign::leaks_out_elsewhere, "does so in another condition"},
    SignWords{Sign::finding, "finding of that number"},
    SignWords{Sign::combustible, "combustible, at the distance given"},
    SignWords{Sign::shield, "shield before it"},
    SignWords{Sign::sheet, "sheet metal"},
    SignWords{Sign::insulation, "insulation"},
    SignWords{Sign::air_gap, "air gap, or no figure"},
    SignWords{Sign::masonry, "masonry"},
    SignWords{Sign::piece_end, "end of a piece"},
};

constexpr std::size_t sign_columns = 3;
constexpr double sign_row = 18.0;
constexpr double number_width = 26.0;
constexpr double scale_height = 46.0;

} // namespace

Legend::Legend(const Assessment& assessment, const Shown& shown, bool findings) : shown_(shown) {
    if (findings) {
        add_findings(assessment);
    }
}

void Legend::add_findings(const Assessment& a) {
    const double wide = room - number_width;
    for (std::size_t i = 0; i < a.findings.size(); ++i) {
        const Finding& finding = a.findings[i];
        const std::string place = finding.place.empty() ? "" : ", " + finding.place;
        const std::string state = finding.state.empty() ? "" : " (" + finding.state + ")";
        rows_.push_back({i + 1,
                         chart::wrap_to(fmt::format("{}: {}{}{}",
                                                    report::severity_word(finding.severity),
                                                    finding.matter->title,
                                                    place,
                                                    state),
                                        wide,
                                        plain)});
    }
    const auto cautions = short_cautions(kind_of(a.installation.appliance));
    rows_.push_back({0, chart::wrap_to(cautions.front(), room, small)});
}

double Legend::paint(Painting& painting, double top) const {
    painting.picture.line(
        {margin, top - 6.0}, {width - margin, top - 6.0}, {.color = faint, .width = 0.6});
    double y = top + paint_scale(painting.picture, top);
    y += paint_signs(painting, y);
    return y + paint_rows(painting.picture, y);
}

double Legend::paint_scale(chart::Picture& picture, double top) const {
    constexpr double left = area_left;
    constexpr double wide = area_width;
    constexpr double high = 12.0;
    if (shown_.show == Show::creosote) {
        double x = margin;
        for (std::size_t grade = 0; grade < 3; ++grade) {
            const std::string words = fmt::format("{} risk", name(static_cast<DepositRisk>(grade)));
            picture.box({x, top + 4.0}, 22.0, high, grade_color(grade));
            picture.set({x + 28.0, top + 14.0}, words, {.size = small});
            x += 28.0 + chart::text_width(words, small) + 24.0;
        }
        return scale_height;
    }
    if (!shown_.has_scale()) {
        return 0.0;
    }
    constexpr int steps = 55;
    for (int i = 0; i < steps; ++i) {
        picture.box({left + wide * i / steps, top + 4.0},
                    wide / steps + 0.6,
                    high,
                    ramp((i + 0.5) / steps));
    }
    picture.frame({left, top + 4.0}, wide, high);
    chart::Axis axis{.title = {},
                     .low = shown_.low,
                     .high = shown_.high,
                     .start_px = left,
                     .end_px = left + wide};
    double free_from = margin;
    for (const double step : axis.steps()) {
        const double x = axis.px(step);
        picture.line({x, top + 4.0 + high}, {x, top + 8.0 + high}, {.width = 0.8});
        const std::string words = format_number(step, 4);
        const double half = 0.5 * chart::text_width(words, small);
        if (x - half >= free_from) {
            picture.set({x, top + 20.0 + high}, words, {.anchor = Anchor::middle, .size = small});
            free_from = x + half + 4.0;
        }
    }
    picture.set(
        {left + wide + 30.0, top + 14.0},
        chart::fitted(
            fmt::format("{}; darker is {}",
                        shown_.unit.unit,
                        shown_.show == Show::pressure ? "higher, over 0 a leak smokes" : "hotter"),
            width - margin - left - wide - 30.0,
            small),
        {.size = small});
    return scale_height;
}

double Legend::paint_signs(Painting& painting, double top) const {
    constexpr double column = room / static_cast<double>(sign_columns);
    std::size_t shown = 0;
    for (const SignWords& entry : sign_words) {
        if (!painting.signs.contains(entry.sign)) {
            continue;
        }
        const double x = margin + column * static_cast<double>(shown % sign_columns);
        const auto row = shown / sign_columns;
        const double y = top + 8.0 + sign_row * static_cast<double>(row);
        paint_sign(painting.picture, entry.sign, {x, y});
        painting.picture.set(
            {x + 30.0, y + 4.0}, chart::fitted(entry.words, column - 34.0, small), {.size = small});
        ++shown;
    }
    const auto rows = (shown + sign_columns - 1) / sign_columns;
    return sign_row * static_cast<double>(rows) + 6.0;
}

double Legend::paint_rows(chart::Picture& picture, double top) const {
    double y = top;
    for (const Row& row : rows_) {
        const bool numbered = row.number > 0;
        const double size = numbered ? plain : small;
        y += 3.0;
        if (numbered) {
            picture.set({margin + number_width - 8.0, y + line_height(plain) - drop},
                        std::to_string(row.number),
                        {.anchor = Anchor::end, .size = plain, .weight = chart::Weight::bold});
        }
        for (const std::string& line : row.lines) {
            y += line_height(plain);
            picture.set({margin + (numbered ? number_width : 0.0), y - drop},
                        line,
                        {.size = size, .color = numbered ? "" : "#4d4d4d"});
        }
    }
    return y - top;
}

} // namespace fluewright::drawing::page
