#include "record_source.hpp"

#include "cli/shell/files.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/core.h>
#include <glob.h>
#include <istream>

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
                                                     bool (*wait_for_line)(std::istream&)) {
    RecordSource source(standard_input, wait_for_line);
    for (const std::string& path : paths) {
        std::error_code error;
        if (path == "-") {
            source.files_.push_back(path);
            source.endless_ = true;
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
            source.files_.push_back(std::move(file));
        }
    }
    return source;
}

bool RecordSource::open_next() {
    if (files_.empty()) {
        return false;
    }
    name_ = std::move(files_.front());
    files_.pop_front();
    line_ = 0;
    lines_ = nullptr;
    file_.reset();
    if (name_ == "-") {
        name_ = "<stdin>";
        lines_ = standard_input_;
    } else if (is_stream_of_lines(name_)) {
        file_ = std::make_unique<std::ifstream>(name_, std::ios::binary);
        unreadable_ = unreadable_ || !*file_;
        lines_ = file_.get();
    }
    return true;
}

std::optional<BatchRecord> RecordSource::next() {
    for (;;) {
        if (lines_ == nullptr) {
            if (!open_next()) {
                return std::nullopt;
            }
            if (lines_ == nullptr) {
                BatchRecord record{.number = ++number_, .source = name_, .line = 0, .text = {}};
                Result<Input, std::string> input = read_input(name_, *standard_input_);
                bytes_done_ += size_of(name_);
                if (input) {
                    record.text = std::move(input->text);
                } else {
                    unreadable_ = true;
                }
                return record;
            }
        }
        if (lines_ == standard_input_ && !wait_for_line_(*lines_)) {
            return std::nullopt;
        }
        std::string text;
        if (!std::getline(*lines_, text)) {
            lines_ = nullptr;
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
