#include "fluewright/io/page/report_page.hpp"

#include "fluewright/io/drawing/draw.hpp"
#include "fluewright/io/report/report_text.hpp"
#include "html_page.hpp"
#include "io/report/check_parts.hpp"
#include "io/report/trade_text.hpp"
#include "io/text/words.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

class ReportPage {
public:
    ReportPage(const Installation& written,
               const Assessment& assessment,
               const PageOptions& options)
        : written_(written), a_(assessment), options_(options), style_(page::style_of(2)),
          inner_(page::style_of(3)) {
        style_.units = a_.installation.units;
        inner_.units = a_.installation.units;
    }

    std::string text() {
        ReportOptions report{.style = style_,
                             .version = options_.version,
                             .file = options_.file,
                             .details = true,
                             .size_searched = options_.size_searched,
                             .trade = options_.trade,
                             .tolerances = options_.tolerances};
        page_.add("verdict", "Verdict", verdict());
        page_.add_figure("drawing", "Drawing", draw_run(written_, a_, {}), drawing_words());
        page_.add("conditions", "Conditions", report::states_text(a_, inner_));
        add_profile();
        page_.add_headed("size", "Size", report::size_text(a_, report));
        page_.add_headed("findings", "Findings", report::findings_text(a_, style_));
        page_.add("requirements", "Requirements", report::requirements_list(a_, inner_));
        if (options_.parts != nullptr) {
            page_.add("parts", "Parts and cut sheet", parts());
        }
        if (options_.trade != nullptr) {
            page_.add("upkeep", "Heat and upkeep", upkeep());
        }
        if (options_.tolerances != nullptr) {
            page_.add("tolerances",
                      "Tolerances",
                      report::tolerances_text(a_, *options_.tolerances, inner_));
        }
        page_.add_headed("checks", "Checks and rules", report::checks_text(a_, style_));
        page_.add("assumed",
                  "Assumed and understood",
                  report::spread_text(a_, inner_) + report::assumptions_text(a_, inner_)
                      + report::understood_text(a_, inner_));
        page_.add_headed("cautions",
                         "Cautions",
                         report::cautions_text(kind_of(a_.installation.appliance), style_));
        const std::string& title = a_.installation.title;
        return page_.finished(
            {.title = title.empty() ? std::string{options_.file} : title,
             .kicker = "Heater, pipe and chimney: will it draw?",
             .lead = a_.sentence,
             .passes = a_.works(),
             .foot = fmt::format("fluewright {}, from {}", options_.version, options_.file)});
    }

private:
    /// What the sentence above does not say.
    [[nodiscard]] std::string verdict() const {
        return report::verdict_lines(a_, inner_)
               + (options_.tolerances != nullptr
                      ? report::tolerances_in_short(a_, *options_.tolerances, inner_)
                      : std::string{});
    }

    [[nodiscard]] static std::string drawing_words() {
        return "Side elevation to scale. The numbers are those of the findings below.";
    }

    void add_profile() {
        const StateResult* state = drawn_state(a_, Show::temperature);
        page_.add_figure("profile",
                         "Along the run",
                         draw_profile(written_, a_, state),
                         "Pressure against the air round the run, gas and wall from the outlet to "
                         "the chimney top.");
        if (state != nullptr) {
            const auto index = static_cast<std::size_t>(state - a_.solution.states.data());
            page_.add_to_last(report::profile_text(a_, index, inner_));
        }
    }

    [[nodiscard]] std::string parts() const {
        return report::parts_sections(*options_.parts, inner_);
    }

    /// The joints stand with the parts.
    [[nodiscard]] std::string upkeep() const {
        const TradeAdvice& trade = *options_.trade;
        return (options_.parts == nullptr ? report::joints_text(trade.joints, inner_) : "")
               + report::surfaces_text(trade.surfaces, inner_)
               + (trade.demand ? report::demand_text(*trade.demand, inner_) : "")
               + report::upkeep_text(trade.upkeep, inner_);
    }

    const Installation& written_;
    const Assessment& a_;
    const PageOptions& options_;
    Style style_;
    Style inner_;
    page::HtmlPage page_;
};

} // namespace

std::string
report_page(const Installation& written, const Assessment& assessment, const PageOptions& options) {
    return ReportPage{written, assessment, options}.text();
}

} // namespace fluewright
