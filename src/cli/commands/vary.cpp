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
    for (const OptionInfo* of_samples : {&option::seed, &option::sequence}) {
        if (*samples == 0 && context.arguments.has(*of_samples)) {
            return Failure{fmt::format("{} goes with --samples; without it every combination is "
                                       "written",
                                       of_samples->name)};
        }
    }
    if (*samples > 0 && context.arguments.value(option::sequence) == "sobol") {
        if (ranges->size() > SobolSequence::most_dimensions) {
            return Failure{fmt::format("--sequence sobol spreads up to {} ranges; take "
                                       "latin-hypercube",
                                       SobolSequence::most_dimensions)};
        }
        return Variations::sobol_sequence(written, std::move(ranges).value(), *samples, *seed);
    }
    if (*samples > 0) {
        return Variations::latin_hypercube(written, std::move(ranges).value(), *samples, *seed);
    }
    const auto drawn = std::find_if(ranges->begin(), ranges->end(), [](const VariedRange& range) {
        return range.spread == Spread::triangular || range.spread == Spread::normal;
    });
    if (drawn != ranges->end()) {
        return Failure{fmt::format("--over {}: a likelihood is drawn from; use --samples N",
                                   drawn->together.front().key.name)};
    }
    if (const std::size_t count = combinations(*ranges); count > most_variations) {
        return Failure{fmt::format("every combination would be more than {}; use --samples N",
                                   most_variations)};
    }
    return Variations::every_combination(written, std::move(ranges).value());
}

/// What of a normal range is not drawn, since it cannot be computed: nobody's mean and deviation
/// any more.
void tell_what_is_left_out(const Context& context, const Variations& variations) {
    constexpr double worth_telling = 1e-4;
    for (const VariedRange& range : variations.ranges()) {
        for (std::size_t i = 0; i < range.together.size(); ++i) {
            const double share = share_left_out(range, i);
            if (share >= worth_telling) {
                const VariedKey& key = range.together[i].key;
                context.streams.err << fmt::format(
                    "fluewright: {}: {} of the spread asked for lies beyond {} to {} and is left "
                    "out, so that mean and deviation are not those asked for\n",
                    key.name,
                    format_quantity(share, Kind::fraction, UnitSystem::metric, 2),
                    format_quantity(key.lowest, key.kind, UnitSystem::metric),
                    format_quantity(key.highest, key.kind, UnitSystem::metric));
            }
        }
    }
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
    tell_what_is_left_out(context, *variations);
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

constexpr std::array<const OptionInfo*, 5> vary_options{
    &option::over, &option::spread_samples, &option::sequence, &option::seed, &option::output};

} // namespace

extern const Command vary_command;
const Command vary_command{
    .name = "vary",
    .summary = "write many installations out of one, for batch",
    .about =
        "Writes one installation a line, each the file with other numbers or words: every "
        "combination "
        "of the values given with --over, or with --samples N an even spread over the ranges. "
        "Words "
        "are listed (wall=insulated 25 mm, insulated 50 mm; fuel, cap, any key of words). A range "
        "may also be the sizes of the trade (diameter=trade 5..8 in) and, with "
        "samples, least, most likely and greatest (height=5..6..8 m) or mean and standard "
        "deviation "
        "(moisture=18 % sd 3 %); an & between two lets them go together (up=2,3 m & across=1,2 m). "
        "The count of parts stays: a run with another elbow is another file, for compare. "
        "Every line has an id, which names the values, so that the answers of "
        "batch can be joined to it.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = vary_options,
    .example = "fluewright vary run.json --over height=4..8m --samples 99 | "
               "fluewright batch -",
    .run = run_vary};

} // namespace fluewright::cli
