#include "outcome.hpp"
#include "report.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string_view>

// published                      compares every row; names those that are off
// published --report FILE        writes the report and its drawings as well
// published --check-report FILE  fails when the report on disk differs from a fresh one

namespace {

namespace files = std::filesystem;
using namespace published;

const files::path tree = FLUEWRIGHT_TREE;

int print_failures(const std::vector<Outcome>& outcomes, const std::vector<std::string>& faults) {
    int failures = 0;
    for (const auto& fault : faults) {
        fmt::print("{}\n", fault);
        ++failures;
    }
    for (const auto& outcome : outcomes) {
        if (outcome.passes()) {
            continue;
        }
        ++failures;
        const Row& row = outcome.row;
        fmt::print("{}: row {}: {}({}): ", row.place_in_file, row.id, row.check, row.inputs);
        if (!outcome.error.empty()) {
            fmt::print("{}\n", outcome.error);
        } else {
            fmt::print("computed {:.10g}, published {:.10g}; off by {:.3g}, allowed {:.3g} {}\n",
                       outcome.computed,
                       row.expected,
                       outcome.deviation(),
                       row.tolerance,
                       row.relative ? "of it" : outcome.unit);
        }
    }
    return failures;
}

std::string text_of(const files::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// Drawings on disk that no topic makes any more.
std::vector<files::path> stale_drawings(const files::path& folder, const Files& fresh) {
    std::vector<files::path> stale;
    if (files::exists(folder / "validation")) {
        for (const auto& entry : files::directory_iterator(folder / "validation")) {
            if (!fresh.contains("validation/" + entry.path().filename().string())) {
                stale.push_back(entry.path());
            }
        }
    }
    return stale;
}

void write_report(const files::path& folder, const Files& fresh) {
    files::create_directories(folder / "validation");
    for (const auto& file : stale_drawings(folder, fresh)) {
        files::remove(file);
    }
    for (const auto& [name, text] : fresh) {
        std::ofstream out(folder / name, std::ios::binary);
        out << text;
        if (!out.flush()) {
            throw std::runtime_error("cannot write " + (folder / name).string());
        }
    }
}

int check_report(const files::path& folder, const Files& fresh) {
    int failures = 0;
    for (const auto& [name, text] : fresh) {
        if (text_of(folder / name) != text) {
            fmt::print("{} differs from a fresh report\n", name);
            ++failures;
        }
    }
    for (const auto& file : stale_drawings(folder, fresh)) {
        fmt::print("{} belongs to no topic\n", file.filename().string());
        ++failures;
    }
    return failures;
}

/// Tables with a script of the same name under tests/published/reference.
std::set<std::string> scripted_tables() {
    std::set<std::string> names;
    for (const auto& entry :
         files::directory_iterator(tree / "tests" / "published" / "reference")) {
        names.insert(entry.path().stem().string());
    }
    return names;
}

int run(const std::string_view mode, const files::path& report) {
    const auto sources = read_sources(tree / "data" / "sources.csv");
    const Registry registry = every_check();
    const auto outcomes = compare(read_rows(tree / "tests" / "published"), registry);
    const auto notes = read_notes(tree / "tests" / "published" / "notes" / "topics.csv");
    auto faults = table_faults(outcomes, sources);
    for (const auto& [topic, note] : notes) {
        const bool known = std::any_of(outcomes.begin(), outcomes.end(), [&](const Outcome& o) {
            return o.row.topic == topic;
        });
        if (!known) {
            faults.push_back("notes/topics.csv: no such topic: " + topic);
        }
    }
    int failures = print_failures(outcomes, faults);
    if (!mode.empty()) {
        const Files fresh = make_report(
            outcomes, sources, notes, {registry, scripted_tables()}, report.filename().string());
        if (mode == "--report") {
            write_report(report.parent_path(), fresh);
        } else {
            failures += check_report(report.parent_path(), fresh);
        }
    }
    fmt::print("{} rows compared, {} failures\n", outcomes.size(), failures);
    return failures == 0 && !outcomes.empty() ? 0 : 1;
}

} // namespace

int main(int count, char** arguments) {
    const std::string_view mode = count > 1 ? arguments[1] : "";
    if ((count != 1 && count != 3)
        || (count == 3 && mode != "--report" && mode != "--check-report")) {
        fmt::print(stderr, "usage: published [--report FILE | --check-report FILE]\n");
        return 2;
    }
    try {
        return run(mode, count == 3 ? files::absolute(arguments[2]) : files::path());
    } catch (const std::exception& problem) {
        fmt::print(stderr, "{}\n", problem.what());
        return 1;
    }
}
