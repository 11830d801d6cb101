#include "fluewright/io/drawing/draw.hpp"
#include "io/report/check_parts.hpp"
#include "labels.hpp"

#include <algorithm>

namespace fluewright::drawing {
namespace {

class RunDrawing {
public:
    RunDrawing(const Installation& written,
               const Assessment& assessment,
               const DrawOptions& options)
        : a_(assessment), options_(options), e_(elevation_of(written, assessment.installation)),
          shown_(shown_of(written, assessment, e_, options)) {
        style_.units = a_.installation.units;
        lay_out();
    }

    std::string drawn() {
        const Drawn drawn{a_, e_, shown_, frame_, area_, style_};
        const Labels labels{drawn, area_.top};
        const Sizes sizes{drawn};
        const double legend_top = std::max(sizes.bottom(), labels.bottom()) + page::over_legend;
        chart::Picture picture(page::width, legend_top, title() + ": " + shown_.caption);
        head(picture);
        Sheet sheet(area_);
        Painting painting{picture, sheet, frame_, {}};
        const Lines lines = center_lines(e_, frame_);
        paint_house(e_, painting);
        sizes.paint(picture);
        paint_heater(e_, painting);
        paint_combustibles(e_, painting);
        paint_run(a_.installation, e_, shown_, lines, painting);
        if (options_.show == Show::cut_list && options_.parts != nullptr) {
            paint_pieces(*options_.parts, e_, lines, painting);
        }
        paint_joints(a_, e_, shown_, lines, painting);
        labels.paint(picture, sheet);
        paint_findings(drawn, painting);
        paint_names(drawn, painting);
        const page::Legend legend{a_, shown_, options_.legend};
        picture.end_at(legend.paint(painting, legend_top) + page::margin);
        return picture.finished();
    }

private:
    [[nodiscard]] std::string title() const {
        return a_.installation.title.empty() ? std::string{"Side elevation"}
                                             : a_.installation.title;
    }

    [[nodiscard]] std::string quantity(double m) const {
        return report::quantity(m, Kind::length, style_);
    }

    [[nodiscard]] std::string sub_title() const {
        std::string words = shown_.caption
                            + ". Side elevation to scale, level stretches in one "
                              "plane; chimney top "
                            + quantity(e_.top.y_m - e_.outlet.y_m) + " over the outlet, "
                            + quantity(e_.top.y_m) + " over the floor.";
        if (!e_.heater.depth_known) {
            words += " The depth of the heater is not in the file: its body is drawn as a symbol.";
        }
        if (!shown_.asides.empty()) {
            words += " " + shown_.asides;
        }
        return words;
    }

    /// Sizes of all that does not depend on what is painted.
    void lay_out() {
        sub_lines_ = chart::wrap_to(sub_title(), page::room, page::small);
        const double top =
            page::head_bottom + static_cast<double>(sub_lines_.size()) * line_height(page::small);
        const double wide_m = e_.right_m - e_.left_m;
        const double high_m = e_.high_m - e_.bottom_m;
        frame_.px_per_m =
            std::min({page::area_width / wide_m, page::area_height / high_m, page::most_px_per_m});
        // The house goes on to both sides as far as there is room.
        const double more_m = std::max(0.0, page::area_width / frame_.px_per_m - wide_m);
        e_.left_m -= 0.5 * more_m;
        e_.right_m += 0.5 * more_m;
        area_ = {page::area_left, top, page::area_width, frame_.px(high_m) + 2.0 * page::around};
        frame_.zero_at = {e_.left_m, e_.high_m};
        frame_.origin = {page::area_left, top + page::around};
    }

    void head(chart::Picture& picture) const {
        picture.set({page::margin, 26.0},
                    chart::fitted(title(), page::room, page::title, chart::Weight::bold),
                    {.size = page::title, .weight = chart::Weight::bold});
        double y = page::head_bottom;
        for (const std::string& line : sub_lines_) {
            picture.set({page::margin, y - 6.0}, line, {.size = page::small});
            y += line_height(page::small);
        }
    }

    const Assessment& a_;
    const DrawOptions& options_;
    Elevation e_;
    Shown shown_;
    Style style_;
    Frame frame_;
    Box area_;
    std::vector<std::string> sub_lines_;
};

} // namespace
} // namespace fluewright::drawing

namespace fluewright {

std::string
draw_run(const Installation& written, const Assessment& assessment, const DrawOptions& options) {
    return drawing::RunDrawing{written, assessment, options}.drawn();
}

} // namespace fluewright
