#include "fluewright/io/reference/explain.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <iostream>

namespace fluewright::cli {
namespace {

/// The pages of a key that was typed bare, one for each object that has it; empty for none.
std::string pages_of_key(std::string key, const Style& style) {
    std::replace(key.begin(), key.end(), ' ', '_');
    std::string pages;
    for (const std::string& home : homes_of_key(key)) {
        std::string pointer = '/' + home + '/' + key;
        std::replace(pointer.begin(), pointer.end(), '.', '/');
        if (const auto page = explain_key(pointer, style)) {
            pages += (pages.empty() ? "" : "\n") + *page;
        }
    }
    return pages;
}

int run_explain(const Context& context) {
    std::string id; // "flue pipe" needs no quotes
    for (const std::string& word : context.arguments.words) {
        id += (id.empty() ? "" : " ") + word;
    }
    const bool is_pointer = id.starts_with('/');
    const auto text = is_pointer ? explain_key(id, context.style) : explain_id(id, context.style);
    if (text) {
        return write_answer(context, *text, all_pass);
    }
    if (const std::string pages = pages_of_key(id, context.style); !pages.empty()) {
        return write_answer(context, pages, all_pass);
    }
    context.streams.err << "fluewright: ";
    if (is_pointer) {
        context.streams.err << "no key `" << id << "`: ";
    }
    context.streams.err << text.error().message << "; " << text.error().help << '\n';
    return wrong_input;
}

} // namespace

extern const Command explain_command;
const Command explain_command{
    .name = "explain",
    .summary = "what a word of an answer or a key of the file means, and its source",
    .about =
        "Explains a word: of an answer by its id (a finding, check, condition, cause, remedy, body "
        "of rules or source), or of the trade (draft, flue pipe, rain cap). It says what the word "
        "means, who requires it, the source, and what to do. Explains a key of the input file by "
        "its name or pointer: meaning, range, units, and what is assumed where it is left out.",
    .word = {.name = "ID",
             .text = "draft-short, high-fire, draft, or /appliance/outlet/diameter",
             .many = true},
    .options = {},
    .example = "fluewright explain draft-short",
    .run = run_explain};

} // namespace fluewright::cli
