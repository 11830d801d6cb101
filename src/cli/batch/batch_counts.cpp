#include "cli/batch/batch_counts.hpp"

#include <fmt/format.h>

namespace fluewright::cli {

std::string counted(const BatchProgress& all, const BatchProgress& before, double seconds) {
    std::string text = fmt::format("{} installations: {} pass, {} open, {} fall short, {} at fault",
                                   all.records,
                                   all.pass,
                                   all.undecided,
                                   all.short_of_draft,
                                   all.fault);
    if (all.failed > 0) {
        text += fmt::format(", {} without an answer of the solver", all.failed);
    }
    if (all.off_method > 0) {
        text += fmt::format("; {} not met by the method", all.off_method);
    }
    if (before.records > 0) {
        text += fmt::format("; {} of them were done before", before.records);
    }
    if (seconds > 1.0) {
        text += fmt::format("; {:.0f} a second",
                            static_cast<double>(all.records - before.records) / seconds);
    }
    return text + '\n';
}

} // namespace fluewright::cli
