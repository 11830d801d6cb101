#include "fluewright/advice/study/compare.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/advice/study/common_ground.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/input/piece_price_reader.hpp"
#include "fluewright/io/page/study_pages.hpp"
#include "fluewright/io/report/report_compare.hpp"
#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <iostream>

namespace fluewright::cli {
namespace {

constexpr std::size_t most_layouts = 100;

/// The names of the files without folder and ending, where that tells them apart; made so that they
/// can be shown, since a system takes any bytes as a name.
std::vector<std::string> short_names(const std::vector<std::string>& files) {
    std::vector<std::string> names;
    names.reserve(files.size());
    for (const std::string& file : files) {
        names.push_back(file == "-" ? "stdin"
                                    : json::visible(std::filesystem::path(file).stem().string()));
    }
    std::vector<std::string> sorted = names;
    std::sort(sorted.begin(), sorted.end());
    if (std::adjacent_find(sorted.begin(), sorted.end()) != sorted.end()) {
        std::transform(files.begin(), files.end(), names.begin(), [](const std::string& file) {
            return json::visible(file);
        });
    }
    return names;
}

std::string answer(const Context& context, const Comparison& made, const AnswerInput& input) {
    if (context.wants_json()) {
        return comparison_json(made, input);
    }
    const std::string_view format = context.arguments.value(option::study_format);
    if (format == "csv") {
        return comparison_csv(made);
    }
    if (format == "svg") {
        return comparison_svg(made);
    }
    if (format == "html") {
        return comparison_page(made, input);
    }
    Style style = context.style;
    style.units = made.layouts.front().assessment.installation.units;
    return comparison_text(made, style);
}

/// All in the units of the first, and held to the same: smoke that was seen at the door of one
/// makes reloading count for each.
Result<std::vector<Assessment>, int> assess_alike(const Context& context,
                                                  const CommonGround& ground,
                                                  const Required& required,
                                                  const std::vector<Written>& written) {
    AssessOptions options{.size_search = false,
                          .spread = false,
                          .units = context.units(),
                          .required = required,
                          .rules = ground.rules};
    std::vector<Assessment> all;
    for (std::size_t i = 0; i < written.size();) {
        auto assessed = assess(ground.installations[i], options);
        if (!assessed) {
            return Failure{tell_faults(context, assessed.error(), written[i])};
        }
        options.units = assessed->installation.units;
        if (assessed->required != options.required) {
            options.required = assessed->required;
            all.clear();
            i = 0;
            continue;
        }
        all.push_back(std::move(assessed).value());
        ++i;
    }
    return all;
}

int run_compare(const Context& context) {
    const std::vector<std::string>& files = context.arguments.words;
    if (files.size() < 2 || files.size() > most_layouts) {
        context.streams.err << "fluewright: compare takes from 2 to " << most_layouts
                            << " files, not " << files.size() << '\n';
        return wrong_input;
    }
    const std::vector<std::string> names = short_names(files);
    const auto required = required_of(context);
    if (!required) {
        return refuse(context, wrong_input, required.error());
    }
    std::vector<Written> written;
    std::vector<NamedInstallation> named;
    std::vector<AnswerFile> inputs;
    for (std::size_t i = 0; i < files.size(); ++i) {
        auto read = read_written(context, files[i]);
        if (!read) {
            return read.error();
        }
        inputs.push_back(answer_file(read->name, read->installation));
        named.push_back({names[i], read->installation});
        written.push_back(std::move(read).value());
    }
    auto ground =
        common_ground(named, std::string{context.arguments.value(option::rules)}, context.units());
    if (!ground) {
        return tell_faults(context, ground.error().faults, written[ground.error().index]);
    }
    PiecePrices prices;
    if (context.arguments.has(option::piece_prices)) {
        auto read =
            read_beside(context, context.arguments.value(option::piece_prices), read_piece_prices);
        if (!read) {
            return read.error();
        }
        prices = std::move(read).value();
    }
    auto assessed = assess_alike(context, *ground, *required, written);
    if (!assessed) {
        return assessed.error();
    }
    std::vector<Layout> layouts;
    for (std::size_t i = 0; i < files.size(); ++i) {
        layouts.push_back(layout_of(names[i], named[i].written, std::move((*assessed)[i]), prices));
    }
    Comparison made = compare(std::move(layouts));
    made.added = std::move(ground->added);
    const Required& held = made.layouts.front().assessment.required;
    if (held.door_smoked) {
        made.added.push_back("What counts for all of them: " + in_words(held) + '.');
    }
    const bool no_answer =
        std::any_of(made.layouts.begin(), made.layouts.end(), [](const Layout& layout) {
            return gave_up(layout.assessment.solution.states);
        });
    const int status = unless_given_up(
        context,
        no_answer,
        made.layouts[made.best].assessment.passes_decided() ? all_pass : falls_short);
    return write_answer(context, answer(context, made, answer_input(inputs)), status);
}

constexpr std::array compare_options{&option::study_format,
                                     &option::rules,
                                     &option::require,
                                     &option::piece_prices,
                                     &option::json,
                                     &option::units,
                                     &option::output};

} // namespace

extern const Command compare_command;
const Command compare_command{
    .name = "compare",
    .summary = "which of these layouts? side by side, differences marked",
    .about =
        "Checks several layouts in the weathers of all their files and by one set of rules, and "
        "sets them side by side, one column each: margins, door, gas at the chimney top, height, "
        "pipe, and what is bought for each. With --prices it tells what that costs. Then findings "
        "they do not share, and what the files say differently. Says which to take and why. Ends "
        "with status 1 when the one to take falls short of what counts, or leaves it undecided.",
    .word = {.name = "FILE",
             .text = "two installations or more; - reads standard input",
             .required = true,
             .many = true},
    .options = compare_options,
    .example = "fluewright compare straight-up.json through-the-wall.json",
    .run = run_compare};

} // namespace fluewright::cli
