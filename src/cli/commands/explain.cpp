#include "fluewright/io/reference/explain.hpp"

#include "cli/shell/command.hpp"
#include "cli/shell/files.hpp"
#include "fluewright/core/nearest_word.hpp"

#include <iostream>

namespace fluewright::cli {
namespace {

int explain_pointer(const Context& context, std::string_view pointer) {
    const auto text = explain_key(pointer, context.style);
    if (text) {
        return write_answer(context, *text, all_pass);
    }
    context.streams.err << "fluewright: no key `" << pointer << "`: " << text.error().message
                        << "; " << text.error().help << '\n';
    return wrong_input;
}

int run_explain(const Context& context) {
    const std::string_view id = context.arguments.words.front();
    if (id.starts_with('/')) {
        return explain_pointer(context, id);
    }
    if (const Matter* matter = find_matter(id)) {
        return write_answer(context, explain_matter(*matter, context.style), all_pass);
    }
    if (const Check* check = find_check(id)) {
        return write_answer(context, explain_check(*check, context.style), all_pass);
    }
    if (const diagnosis::Cause* cause = diagnosis::find_cause(id)) {
        return write_answer(context, explain_cause(*cause, context.style), all_pass);
    }
    std::vector<std::string_view> ids;
    for (const Matter& matter : matters()) {
        ids.push_back(matter.id);
    }
    for (const Check& check : checks()) {
        ids.push_back(check.id);
    }
    context.streams.err << "fluewright: `" << id << "` is not a finding; ";
    if (const auto nearest = nearest_word(id, ids)) {
        context.streams.err << "did you mean `" << *nearest << "`?\n";
    } else {
        context.streams.err << "`fluewright catalog findings` lists them, and a key of the file "
                               "begins with /\n";
    }
    return wrong_input;
}

} // namespace

extern const Command explain_command;
const Command explain_command{
    .name = "explain",
    .summary = "what a finding, a check or a key of the file means, and its source",
    .about = "Explains a finding or a check by its name: what it means, what is asked by whom, its "
             "source and what to do. Explains a key of the input file by its pointer: meaning, "
             "range, units "
             "and what is assumed when it is left out.",
    .word = {.name = "ID", .text = "draft-short, or /appliance/outlet/diameter"},
    .options = {},
    .example = "fluewright explain draft-short",
    .run = run_explain};

} // namespace fluewright::cli
