#include "record_source.hpp"

#include "cli/files/files.hpp"

#include <algorithm>
#include <fcntl.h>
#include <filesystem>
#include <fmt/core.h>
#include <glob.h>
#include <iostream>
#include <unistd.h>

namespace fluewright::cli {
namespace {

namespace fs = std::filesystem;

bool is_stream_of_lines(const fs::path& path) {
    return path.extension() == ".ndjson" || path.extension() == ".jsonl";
}

bool belongs_to_batch(const fs::path& path) {
    return path.extension() == ".json" || is_stream_of_lines(path);
}

std::vector<std::string> files_of_folder(const fs::path& folder) {
    std::vector<std::string> files;
    std::error_code error;
    for (const auto& entry : fs::directory_iterator(folder, error)) {
        if (entry.is_regular_file(error) && belongs_to_batch(entry.path())) {
            files.push_back(entry.path().string());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

std::vector<std::string> files_of_pattern(const std::string& pattern) {
    std::vector<std::string> files;
    glob_t found{};
    if (::glob(pattern.c_str(), 0, nullptr, &found) == 0) {
        files.assign(found.gl_pathv, found.gl_pathv + found.gl_pathc);
    }
    ::globfree(&found);
    return files;
}

double size_of(const std::string& file) {
    std::error_code error;
    const auto size = fs::file_size(file, error);
    return error ? 0.0 : static_cast<double>(size);
}

} // namespace

Result<RecordSource, std::string> RecordSource::open(const std::vector<std::string>& paths,
                                                     std::istream& standard_input,
                                                     FilesRead& files_read,
                                                     bool (*stop)()) {
    RecordSource source(standard_input, files_read, stop);
    for (const std::string& path : paths) {
        std::error_code error;
        if (path == "-") {
            source.files_.push_back(path);
            source.endless_ = true;
            if (&standard_input == &std::cin) {
                files_read.add(STDIN_FILENO);
            }
            continue;
        }
        std::vector<std::string> files{path};
        if (fs::is_directory(path, error)) {
            files = files_of_folder(path);
            if (files.empty()) {
                return Failure{fmt::format("the folder `{}` holds no .json or .ndjson file", path)};
            }
        } else if (!fs::exists(path, error)) {
            files = files_of_pattern(path);
            if (files.empty()) {
                return Failure{fmt::format("cannot read `{}`: no such file", path)};
            }
        }
        for (std::string& file : files) {
            source.bytes_total_ += size_of(file);
            files_read.add(file);
            source.files_.push_back(std::move(file));
        }
    }
    return source;
}

void RecordSource::open_lines() {
    line_ = 0;
    if (name_ == "-") {
        name_ = "<stdin>";
        lines_ = standard_input_ == &std::cin ? std::make_unique<LineReader>(STDIN_FILENO, stop_)
                                              : std::make_unique<LineReader>(*standard_input_);
        return;
    }
    file_ = Descriptor{::open(name_.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
    if (file_.is_open()) {
        lines_ = std::make_unique<LineReader>(file_.number(), stop_);
    }
}

void RecordSource::note_unreadable(std::string_view why) {
    if (unreadable_.empty()) {
        unreadable_ = name_ == "<stdin>" ? fmt::format("cannot read standard input: {}", why)
                                         : fmt::format("cannot read `{}`: {}", name_, why);
    }
}

BatchRecord RecordSource::whole_file() {
    BatchRecord record{.number = ++number_, .source = name_, .line = 0, .text = {}};
    Result<Input, std::string> input = read_input(name_, *standard_input_, *files_read_, stop_);
    bytes_done_ += size_of(name_);
    if (input) {
        record.text = std::move(input->text);
    } else if (unreadable_.empty()) {
        unreadable_ = input.error(); // without words when asked to stop
    }
    return record;
}

std::optional<BatchRecord> RecordSource::next() {
    for (;;) {
        if (!lines_) {
            if (files_.empty()) {
                return std::nullopt;
            }
            name_ = std::move(files_.front());
            files_.pop_front();
            if (name_ != "-" && !is_stream_of_lines(name_)) {
                BatchRecord record = whole_file();
                return stop_() && record.text.empty() ? std::nullopt
                                                      : std::optional{std::move(record)};
            }
            open_lines();
            if (!lines_) {
                note_unreadable(system_reason());
                return BatchRecord{.number = ++number_, .source = name_, .line = 0, .text = {}};
            }
        }
        std::string text;
        const LineReader::Next got = lines_->next(text, most_bytes_read);
        if (got == LineReader::Next::stopped) {
            return std::nullopt;
        }
        if (got != LineReader::Next::line) {
            const std::string why = lines_->why();
            lines_.reset();
            if (got == LineReader::Next::failed) {
                note_unreadable(why);
                return BatchRecord{
                    .number = ++number_, .source = name_, .line = line_ + 1, .text = {}};
            }
            continue;
        }
        ++line_;
        bytes_done_ += static_cast<double>(text.size()) + 1.0;
        if (text.find_first_not_of(" \t\r") == std::string::npos) {
            continue;
        }
        return BatchRecord{
            .number = ++number_, .source = name_, .line = line_, .text = std::move(text)};
    }
}

std::optional<double> RecordSource::share_done() const {
    if (endless_ || bytes_total_ <= 0.0) {
        return std::nullopt;
    }
    return std::min(1.0, bytes_done_ / bytes_total_);
}

} // namespace fluewright::cli
