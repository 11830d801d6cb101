#include "cli/files/files.hpp"
#include "cli/first_plan/plan_answers.hpp"
#include "cli/shell/command.hpp"
#include "fluewright/io/reference/first_plan.hpp"
#include "fluewright/io/reference/starting_file.hpp"

#include <array>
#include <cstddef>
#include <fmt/core.h>
#include <string_view>

namespace fluewright::cli {
namespace {

int run_template(const Context& context) {
    const UnitSystem units = context.units().value_or(UnitSystem::metric);
    if (!context.arguments.words.empty()) {
        const std::string& kind = context.arguments.words.front();
        std::size_t place = 0;
        if (const auto why = take_word(kind, plan_heater_words, place)) {
            return refuse(
                context, wrong_input, fmt::format("`{}` is no kind of heater: {}", kind, *why));
        }
        return write_answer(
            context, plan_file(usual_plan(static_cast<PlanHeater>(place), units)), all_pass);
    }
    return write_answer(context, starting_file(units), all_pass);
}

/// "stove, fireplace, ... or gas-hood", of the words that `new` asks with.
struct KindsText {
    std::array<char, 128> letters{};
    std::size_t size{};

    constexpr void add(std::string_view words) {
        for (const char letter : words) {
            letters.at(size++) = letter;
        }
    }
};

constexpr KindsText kinds_text = [] {
    KindsText text;
    for (std::size_t i = 0; i < plan_heater_words.size(); ++i) {
        text.add(i == 0 ? "" : i + 1 < plan_heater_words.size() ? ", " : " or ");
        text.add(plan_heater_words.at(i));
    }
    return text;
}();

constexpr std::array<const OptionInfo*, 2> template_options{&option::units, &option::output};

} // namespace

extern const Command template_command;
const Command template_command{
    .name = "template",
    .summary = "a commented file to start from",
    .about =
        "Prints an installation with a comment on every key. With a kind of heater it is a usual "
        "run of that kind. Put your own figures in, leave out what you do not know, and give "
        "it to `fluewright check`.",
    .word = {.name = "KIND",
             .text = {kinds_text.letters.data(), kinds_text.size},
             .required = false},
    .options = template_options,
    .example = "fluewright template --units us --output run.json",
    .run = run_template};

} // namespace fluewright::cli
