#include "cli/reference/completions.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "fluewright/core/nearest_word.hpp"

#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

int run_completions(const Context& context) {
    const std::string& shell = context.arguments.words.front();
    const std::string text = completions_for(shell);
    if (!text.empty()) {
        return write_answer(context, text, all_pass);
    }
    const auto nearest = nearest_word(shell, completion_shells());
    context.streams.err << "fluewright: no completions for `" << shell << "`; "
                        << (nearest ? "did you mean `" + std::string{*nearest} + "`?"
                                    : "there are bash, zsh and fish")
                        << '\n';
    return wrong_input;
}

constexpr std::array<const OptionInfo*, 1> completions_options{&option::output};

} // namespace

extern const Command completions_command;
const Command completions_command{
    .name = "completions",
    .summary = "what makes a shell complete commands and options",
    .about = "Prints what bash, zsh or fish reads to complete commands, options and their values. "
             "An installed program has put them where these shells look.",
    .word = {.name = "SHELL", .text = "bash, zsh or fish"},
    .options = completions_options,
    .example = "fluewright completions bash",
    .run = run_completions};

} // namespace fluewright::cli
