#include "fluewright/io/drawing/draw.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/unsolved.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

namespace fluewright::cli {
namespace {

Show show_of(const Context& context) {
    const std::string_view word = context.arguments.value(option::show);
    const auto* found = std::find(show_words.begin(), show_words.end(), word);
    return found == show_words.end() ? Show::temperature
                                     : static_cast<Show>(found - show_words.begin());
}

/// The complaint about a condition that is none.
std::string no_condition(std::string_view typed, const Assessment& assessment) {
    std::string names;
    for (const std::string& name : drawn_state_names(assessment)) {
        names += (names.empty() ? "" : "; ") + name;
    }
    return "`" + std::string{typed} + "` is no condition with figures along the run"
           + (names.empty() ? "" : "; there are: " + names);
}

int run_draw(const Context& context) {
    if (context.arguments.has(option::profile) && context.arguments.has(option::show)) {
        return refuse(context, wrong_input, "--show colors the run, which --profile leaves out");
    }
    const auto written = read_written(context, context.arguments.words.front());
    if (!written) {
        return written.error();
    }
    AssessOptions options;
    options.size_search = false;
    options.spread = false;
    options.units = context.units();
    options.rules = context.arguments.value(option::rules);
    const auto assessment = assess(written->installation, options);
    if (!assessment) {
        return tell_faults(context, assessment.error(), *written);
    }
    DrawOptions draw{.show = show_of(context)};
    if (context.arguments.has(option::condition)) {
        const std::string_view typed = context.arguments.value(option::condition);
        draw.state = state_named(*assessment, typed);
        if (draw.state == nullptr) {
            return refuse(context, wrong_input, no_condition(typed, *assessment));
        }
    }
    const int status = unless_given_up(context, gave_up(assessment->solution.states), all_pass);
    if (context.arguments.has(option::profile)) {
        return write_answer(
            context, draw_profile(written->installation, *assessment, draw.state), status);
    }
    std::optional<PartsList> parts;
    if (draw.show == Show::cut_list) {
        parts = parts_list(written->installation, *assessment);
        draw.parts = &*parts;
    }
    return write_answer(context, draw_run(written->installation, *assessment, draw), status);
}

constexpr std::array<const OptionInfo*, 6> draw_options{&option::show,
                                                        &option::profile,
                                                        &option::condition,
                                                        &option::rules,
                                                        &option::units,
                                                        &option::output};

} // namespace

extern const Command draw_command;
const Command draw_command{
    .name = "draw",
    .summary = "the run as a picture: to scale, colored by what happens in it",
    .about =
        "Draws the installation to scale, from the side, as SVG. It shows the heater, the run as "
        "it "
        "is built, and walls, ceilings and roof as far as the file tells. Marked are sizes, "
        "clearances to combustibles, joints that let smoke out, and the findings of check by "
        "number. "
        "--show chooses what the colors tell, --profile draws pressure and temperatures along the "
        "run instead. The picture is no verdict: check has it.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = draw_options,
    .example = "fluewright draw run.json --show pressure -o run.svg",
    .run = run_draw};

} // namespace fluewright::cli
