#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "cli/values/count_option.hpp"
#include "fluewright/advice/study/variations.hpp"
#include "fluewright/io/json/json_writer.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fmt/core.h>
#include <iostream>
#include <optional>

namespace fluewright::cli {
namespace {

constexpr std::uint64_t most_variations = 100'000'000;
constexpr std::size_t lines_per_write = 256;

Result<std::vector<VariedRange>, std::string> ranges_of(const Context& context,
                                                        const Installation& written) {
    std::vector<VariedRange> ranges;
    std::vector<std::string> labels;
    for (const std::string& typed : context.arguments.values(option::over)) {
        auto range = read_varied_range(typed, written);
        if (!range) {
            return Failure{"--over: " + range.error()};
        }
        for (const Varied& varied : range->together) {
            if (std::find(labels.begin(), labels.end(), varied.key.label) != labels.end()) {
                return Failure{fmt::format("--over names {} twice", varied.key.label)};
            }
            labels.push_back(varied.key.label);
        }
        ranges.push_back(std::move(range).value());
    }
    if (ranges.empty()) {
        return Failure{std::string{"vary needs --over name=range, such as --over height=3..8m:6"}};
    }
    return ranges;
}

Result<Variations, std::string> variations_of(const Context& context, const Installation& written) {
    auto ranges = ranges_of(context, written);
    if (!ranges) {
        return Failure{ranges.error()};
    }
    const auto samples = read_count(
        context,
        {.option = option::spread_samples, .least = 1, .most = most_variations, .usual = 0});
    const auto seed = read_seed(context);
    if (!samples || !seed) {
        return Failure{!samples ? samples.error() : seed.error()};
    }
    if (*samples == 0 && context.arguments.has(option::seed)) {
        return Failure{std::string{"--seed goes with --samples; without it every combination is "
                                   "written"}};
    }
    if (*samples > 0) {
        return Variations::latin_hypercube(written, std::move(ranges).value(), *samples, *seed);
    }
    const auto drawn = std::find_if(ranges->begin(), ranges->end(), [](const VariedRange& range) {
        return range.spread == Spread::triangular || range.spread == Spread::normal;
    });
    if (drawn != ranges->end()) {
        return Failure{fmt::format("--over {}: a likelihood is drawn from; ask for --samples N",
                                   drawn->together.front().key.name)};
    }
    if (const std::size_t count = combinations(*ranges); count > most_variations) {
        return Failure{fmt::format("every combination would be more than {}; ask for --samples N",
                                   most_variations)};
    }
    return Variations::every_combination(written, std::move(ranges).value());
}

/// What the records are called: by the id of the file, else by its name.
std::string base_of(const Written& written, const std::string& word) {
    return written.installation.id ? *written.installation.id
           : word == "-"           ? std::string{"layout"}
                                   : std::filesystem::path{word}.stem().string();
}

int run_vary(const Context& context) {
    const std::string& word = context.arguments.words.front();
    const auto written = read_written(context, word);
    if (!written) {
        return written.error();
    }
    const auto variations = variations_of(context, written->installation);
    if (!variations) {
        return refuse(context, wrong_input, variations.error());
    }
    std::optional<OutputFile> file;
    if (context.arguments.has(option::output)) {
        const std::string typed{context.arguments.value(option::output)};
        auto opened = open_output(context, typed);
        if (!opened) {
            return refuse(context, opened.error().status, opened.error().message);
        }
        file.emplace(std::move(opened).value());
    }
    const auto write = [&](const std::string& lines) {
        if (file) {
            return file->write(lines);
        }
        context.streams.out << lines;
        return context.streams.out.good();
    };
    const std::string base = base_of(*written, word);
    Progress progress(context.streams.terminal, context.environment.error_is_terminal);
    std::string lines;
    std::string refusal;
    std::size_t refused = 0;
    const std::size_t count = variations->size();
    bool going = true;
    for (std::size_t i = 0; i < count && going; ++i) {
        const auto made = variations->at(i, base);
        if (made) {
            lines += write_installation_line(*made);
        } else {
            ++refused;
            refusal = refusal.empty() ? made.error() : refusal;
        }
        if ((i + 1) % lines_per_write == 0 || i + 1 == count) {
            going = write(lines);
            lines.clear();
            progress.tell(i + 1, static_cast<double>(i + 1) / static_cast<double>(count));
        }
    }
    progress.clear();
    const std::string why = file ? file->finish() : going ? "" : system_reason();
    if (!why.empty()) {
        return refuse(context, no_access, "cannot write the variations: " + why);
    }
    if (refused > 0) {
        context.streams.err << fmt::format(
            "fluewright: {} of {} variations were left out: {}\n", refused, count, refusal);
        return falls_short;
    }
    return all_pass;
}

constexpr std::array<const OptionInfo*, 4> vary_options{
    &option::over, &option::spread_samples, &option::seed, &option::output};

} // namespace

extern const Command vary_command;
const Command vary_command{
    .name = "vary",
    .summary = "write many installations out of one, for batch",
    .about =
        "Writes one installation a line, each the file with other numbers: every combination of "
        "the values given with --over, or with --samples N an even spread over the ranges (Latin "
        "hypercube). A range may also be the sizes of the trade (diameter=trade 5..8 in) and, with "
        "samples, least, most likely and greatest (height=5..6..8 m) or mean and standard "
        "deviation "
        "(moisture=18 % sd 3 %); an & between two lets them go together (up=2,3 m & across=1,2 m). "
        "Every line has an id, which names the values of a combination, so that the answers of "
        "batch can be joined to it.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = vary_options,
    .example = "fluewright vary run.json --over height=4..8m --samples 99 | "
               "fluewright batch -",
    .run = run_vary};

} // namespace fluewright::cli
