#include "batch_output.hpp"

#include <charconv>
#include <filesystem>
#include <fmt/core.h>
#include <istream>
#include <optional>
#include <ostream>

namespace fluewright::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view ndjson_mark = "{\"partial\":true,\"records\":";
constexpr std::string_view ndjson_record = "{\"record\":";
constexpr std::string_view csv_mark = "# partial, records: ";

std::string aside(const std::string& path) {
    return path + ".partial";
}

std::optional<std::size_t> leading_number(std::string_view text) {
    std::size_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end == text.data()) {
        return std::nullopt;
    }
    return value;
}

struct Found {
    std::size_t records{};       ///< dealt with
    std::uintmax_t keep_bytes{}; ///< up to the end of the last whole record
};

/// What a partial file holds. A record names its number; the closing mark, where there is one,
/// tells how many records were read in all, also those --only left out.
Found look_into(std::istream& in, BatchFormat format) {
    Found found;
    std::string line;
    std::uintmax_t at = 0;
    while (std::getline(in, line)) {
        if (in.eof()) {
            break; // the last line has no end: it was cut off
        }
        const std::uintmax_t end = at + line.size() + 1;
        const std::string_view text = line;
        const bool csv = format == BatchFormat::csv;
        const std::string_view mark = csv ? csv_mark : ndjson_mark;
        const std::string_view before = csv ? std::string_view{} : ndjson_record;
        if (text.starts_with(mark)) {
            found.records = leading_number(text.substr(mark.size())).value_or(found.records);
        } else if (text.starts_with(before)) {
            found.records = leading_number(text.substr(before.size())).value_or(found.records);
            found.keep_bytes = end;
        }
        at = end;
    }
    return found;
}

} // namespace

BatchOutput::BatchOutput(std::ostream& out, BatchFormat format) : out_(&out), format_(format) {}

Result<BatchOutput, std::string>
BatchOutput::to_file(const std::string& path, BatchFormat format, bool resume) {
    std::error_code no_such_file;
    if (fs::is_directory(path, no_such_file)) {
        return Failure{fmt::format("cannot write `{}`: it is a folder", path)};
    }
    std::error_code error;
    Found found;
    const std::string partial = aside(path);
    if (resume) {
        if (format == BatchFormat::table) {
            return Failure{
                std::string{"a table cannot be taken up again; use --format ndjson or csv"}};
        }
        std::ifstream before(partial, std::ios::binary);
        if (!before) {
            return Failure{fmt::format("there is nothing to resume: no file `{}`", partial)};
        }
        found = look_into(before, format);
        before.close();
        fs::resize_file(partial, found.keep_bytes, error);
    }
    auto file = std::make_unique<std::ofstream>(
        partial, resume ? std::ios::binary | std::ios::app : std::ios::binary | std::ios::trunc);
    if (!*file || error) {
        return Failure{fmt::format("cannot write `{}`", partial)};
    }
    BatchOutput output(*file, format);
    output.file_ = std::move(file);
    output.path_ = path;
    output.records_before_ = found.records;
    return output;
}

bool BatchOutput::write(std::string_view text) {
    out_->write(text.data(), static_cast<std::streamsize>(text.size()));
    return out_->good();
}

bool BatchOutput::finish() {
    out_->flush();
    if (!file_) {
        return out_->good();
    }
    file_->close();
    std::error_code error;
    if (!file_->good()) {
        return false;
    }
    fs::rename(aside(path_), path_, error);
    return !error;
}

void BatchOutput::mark_partial(std::size_t records_done) {
    switch (format_) {
    case BatchFormat::ndjson:
        write(fmt::format("{}{}}}\n", ndjson_mark, records_done));
        break;
    case BatchFormat::csv:
        write(fmt::format("{}{}\r\n", csv_mark, records_done));
        break;
    case BatchFormat::table:
        write(fmt::format("interrupted after {} records\n", records_done));
        break;
    }
    out_->flush();
    if (file_) {
        file_->close();
    }
}

} // namespace fluewright::cli
