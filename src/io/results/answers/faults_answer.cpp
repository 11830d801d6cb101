#include "fluewright/io/input/diagnostic.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"

namespace fluewright::results {
namespace {

struct FaultsRow {
    const Diagnostics& errors;
};

} // namespace

template <>
const Record<Diagnostic>& record_of<Diagnostic>() {
    static const Record<Diagnostic> record{
        "fault",
        "what is wrong with a file, and where",
        {{"file", "as it was named", &Diagnostic::file},
         {"line", "from 1", &Diagnostic::line},
         {"column", "in characters, from 1", &Diagnostic::column},
         {"pointer",
          "into the file",
          [](const Diagnostic& d) -> decltype(auto) { return (d.fault.pointer); }},
         {"message",
          "in words",
          [](const Diagnostic& d) -> decltype(auto) { return (d.fault.message); }},
         {"found",
          "what stands there",
          [](const Diagnostic& d) { return unless_empty(d.fault.found); }},
         {"allowed",
          "what may stand there",
          [](const Diagnostic& d) { return unless_empty(d.fault.allowed); }},
         {"help", "what to write instead", [](const Diagnostic& d) {
              return unless_empty(d.fault.help);
          }}}};
    return record;
}

template <>
const Record<FaultsRow>& record_of<FaultsRow>() {
    static const Record<FaultsRow> record{
        "faults",
        "what any command answers where a file is at fault: nothing was computed",
        {{"errors", "by their places", [](const FaultsRow& f) -> decltype(auto) {
              return (f.errors);
          }}}};
    return record;
}

const RecordInfo& faults_record() {
    return record_of<FaultsRow>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string diagnostics_json(const Diagnostics& diagnostics,
                             std::string_view command,
                             const AnswerInput& input) {
    return results::answer_text(command,
                                input,
                                results::record_of<results::FaultsRow>().json({diagnostics}),
                                std::span<const Assumption>{});
}

} // namespace fluewright
