// Whole commands: one file, a stream of them, a dialogue.
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "io/input/json_document.hpp"
#include "takers.hpp"

#include <algorithm>
#include <array>

using namespace fluewright;

namespace fuzz {
void take_check(std::string_view text) {
    const ReadResult read = read_installation(text, "fuzz.json");
    if (!read) {
        insist(!read.error().empty(), "refused without a reason", text);
        insist_visible(diagnostics_text(read.error()), text);
        insist_visible(diagnostics_json(read.error(), "check", {}), text);
        return;
    }
    AssessOptions options;
    options.size_search = false;
    const Result<Assessment, Faults> assessed = assess(*read, options);
    if (assessed) {
        insist_solved(*assessed, text);
    } else {
        insist(!assessed.error().empty(), "not resolved, without a reason", text);
        static_cast<void>(locate(assessed.error(), text, "fuzz.json"));
    }
    static const std::array<std::vector<std::string>, 4> asked{
        {{"check", "-", "--details"}, {"check", "-", "--json"}, {"report", "-"}, {"draw", "-"}}};
    // As the whole command it takes longer, for the sizes that are tried; one in eight will do.
    if (pick(text, 8) == 0) {
        run_program(asked[pick(text, 32) / 8], text);
    }
}

void take_batch(std::string_view text) {
    // The same bytes as a file of a folder: a faulty one is asked for its id.
    static_cast<void>(
        assess_record({.number = 1, .source = "fuzz.json", .line = 0, .text = std::string{text}}));
    const std::string lines =
        run_program({"batch", "-", "--format", "ndjson", "--jobs", "1"}, text);
    std::size_t records = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        records += text.substr(at, end - at).find_first_not_of(" \t\r") < end - at ? 1U : 0U;
        at = end + 1;
    }
    std::size_t told = 0;
    for (std::size_t at = 0; at < lines.size(); ++told) {
        const std::size_t end = std::min(lines.find('\n', at), lines.size());
        insist(json::parse(std::string_view{lines}.substr(at, end - at)).complete,
               "a line that is no JSON",
               text);
        at = end + 1;
    }
    insist(records == told, "not a line for every record", text);
}

void take_dialogue(std::string_view text) {
    static const std::array<std::string, 3> files{PROJECT_SOURCE_DIR "/examples/tannery.json",
                                                  PROJECT_SOURCE_DIR "/examples/ferry-office.json",
                                                  PROJECT_SOURCE_DIR "/examples/net-loft.json"};
    const std::string said =
        run_program({"diagnose", files[text.size() % files.size()], "--ask"}, text);
    // What is to be put into the file can be read back.
    const std::size_t kept = said.rfind("\"observed\": ");
    if (said.find("To keep the answers") != std::string::npos && kept != std::string::npos) {
        const json::Parsed list = json::parse('{' + said.substr(kept) + '}');
        insist(list.complete && list.troubles.empty(), "answers that do not read back", text);
    }
}

} // namespace fuzz
