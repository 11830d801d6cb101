#include "batch_output.hpp"

#include "cli/shell/exit_status.hpp"

#include <fmt/core.h>
#include <ostream>

namespace fluewright::cli {

std::string_view name(BatchFormat format) {
    switch (format) {
    case BatchFormat::ndjson:
        return "ndjson";
    case BatchFormat::csv:
        return "csv";
    case BatchFormat::html:
        return "html";
    case BatchFormat::table:
        break;
    }
    return "table";
}

BatchOutput::BatchOutput(std::ostream& out, BatchFormat format) : out_(&out), format_(format) {}

BatchOutput::BatchOutput(OutputPlace place, PartialFile partial, BatchFormat format)
    : format_(format), place_(std::move(place)), partial_(std::move(partial)),
      before_(partial_->progress()) {}

bool BatchOutput::write(std::string_view lines, const BatchProgress& progress) {
    if (partial_) {
        return partial_->add(lines, progress);
    }
    out_->write(lines.data(), static_cast<std::streamsize>(lines.size()));
    return out_->good();
}

std::optional<Refusal> BatchOutput::finish() {
    if (partial_) {
        return partial_->finish(place_);
    }
    out_->flush();
    return out_->good()
               ? std::nullopt
               : std::optional{Refusal{no_access, "cannot write the answer to standard output"}};
}

void BatchOutput::stop_early(std::uint64_t records_done) {
    if (partial_) {
        return;
    }
    const std::string line =
        format_ == BatchFormat::ndjson
            ? fmt::format("{{\"partial\":true,\"records\":{}}}\n", records_done)
        : format_ == BatchFormat::csv ? fmt::format("# partial, records: {}\r\n", records_done)
                                      : fmt::format("interrupted after {} records\n", records_done);
    *out_ << line;
    out_->flush();
}

} // namespace fluewright::cli
