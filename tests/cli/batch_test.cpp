#include "../catch.hpp"
#include "fluewright/core/ordered_pipeline.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "session.hpp"

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

using namespace fluewright;

namespace {

/// A file without its comments, on one line, with an id.
std::string record(std::string text, const std::string& id) {
    std::string line;
    std::istringstream lines(text);
    for (std::string part; std::getline(lines, part);) {
        const auto comment = part.find("//");
        line += part.substr(0, comment) + ' ';
    }
    line.replace(line.find('{'), 1, "{\"id\": \"" + id + "\",");
    return line + '\n';
}

std::string stream(int records) {
    std::string text;
    for (int i = 0; i < records; ++i) {
        text += record(session::sound_file(), "r" + std::to_string(i));
    }
    return text;
}

std::vector<nlohmann::json> lines_of(const std::string& text) {
    std::vector<nlohmann::json> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) {
        lines.push_back(nlohmann::json::parse(line));
    }
    return lines;
}

} // namespace

TEST_CASE("the pipeline keeps the order and does each item once, whatever the workers") {
    for (const unsigned workers : {1U, 2U, 5U}) {
        int next = 0;
        std::vector<int> out;
        run_ordered<int>(
            {.workers = workers, .most_in_flight = 7},
            [&]() -> std::optional<int> {
                return next < 1000 ? std::optional<int>{next++} : std::nullopt;
            },
            [](int item) { return item * item; },
            [&](int outcome) {
                out.push_back(outcome);
                return true;
            });
        REQUIRE(out.size() == 1000);
        for (int i = 0; i < 1000; ++i) {
            REQUIRE(out[static_cast<std::size_t>(i)] == i * i);
        }
    }
}

TEST_CASE("the pipeline stops when nothing more is wanted") {
    for (const unsigned workers : {1U, 3U}) {
        int next = 0;
        int written = 0;
        run_ordered<int>(
            {.workers = workers, .most_in_flight = 4},
            [&]() -> std::optional<int> { return next++; },
            [](int item) { return item; },
            [&](int) { return ++written < 10; });
        CHECK(written == 10);
        CHECK(next < 30);
    }
}

TEST_CASE("a batch answers in the order of its input, the same with any number of jobs") {
    const std::string input = stream(150);
    const auto one = session::run({"batch", "-", "--format", "ndjson", "--jobs", "1"}, input);
    const auto four = session::run({"batch", "-", "--format", "ndjson", "--jobs", "4"}, input);
    CHECK(one.status == 0);
    CHECK(one.out == four.out);
    const auto lines = lines_of(one.out);
    REQUIRE(lines.size() == 150);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        REQUIRE(lines[i]["id"] == "r" + std::to_string(i));
        REQUIRE(lines[i]["record"] == i + 1);
        REQUIRE(lines[i]["outcome"] == "pass");
    }
    CHECK(one.err.find("150 installations: 150 pass") != std::string::npos);
}

TEST_CASE("a record at fault becomes a line and the rest goes on") {
    const std::string input = record(session::sound_file(), "good")
                              + "\n{\"id\": \"bad\", \"sight\": {}}\n" + "nonsense\n"
                              + record(session::sound_file(), "last");
    const auto outcome = session::run({"batch", "-", "--format", "ndjson"}, input);
    CHECK(outcome.status == 2);
    const auto lines = lines_of(outcome.out);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0]["outcome"] == "pass");
    CHECK(lines[1]["outcome"] == "fault");
    CHECK(lines[1]["id"] == "bad");
    CHECK(lines[2]["id"] == "<stdin>:4");
    CHECK(lines[2]["error"].get<std::string>().find("column 1") != std::string::npos);
    CHECK(lines[3]["id"] == "last");
    const auto failing =
        session::run({"batch", "-", "--format", "ndjson", "--only", "failing"}, input);
    CHECK(lines_of(failing.out).size() == 2);
}

TEST_CASE("columns are chosen by name") {
    const std::string input = stream(1);
    const auto csv =
        session::run({"batch", "-", "--format", "csv", "--fields", "id,margin_pa"}, input);
    CHECK(csv.out.rfind("id,margin_pa\r\nr0,", 0) == 0);
    const auto all = session::run({"batch", "-", "--format", "ndjson", "--fields", "all"}, input);
    CHECK(lines_of(all.out)[0].contains("coldest_wall_k"));
    for (const auto& column : batch_columns()) {
        const auto help = session::run({"batch", "-", "--fields", "help"}).out;
        CHECK(("\n" + help).find("\n" + column.key + (column.by_default ? " *\n" : "\n"))
              != std::string::npos);
    }
    const auto slip = session::run({"batch", "-", "--fields", "margin_p"}, input);
    CHECK(slip.status == 2);
    CHECK(slip.err.find("did you mean `margin_pa`?") != std::string::npos);
    CHECK(session::run({"batch", "-", "--jobs", "many"}, input).status == 2);
}

TEST_CASE("files, folders and patterns are read in order of name") {
    const std::filesystem::path folder =
        std::filesystem::temp_directory_path() / "fluewright_batch_test";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    for (const std::string name : {"b.json", "a.json", "c.txt"}) {
        std::ofstream(folder / name) << session::sound_file();
    }
    std::ofstream(folder / "many.ndjson") << stream(3);
    const auto whole = session::run({"batch", folder.string(), "--format", "ndjson"});
    CHECK(lines_of(whole.out).size() == 5);
    CHECK(lines_of(whole.out)[0]["id"] == (folder / "a.json").string());
    const auto pattern =
        session::run({"batch", (folder / "*.json").string(), "--format", "ndjson"});
    CHECK(lines_of(pattern.out).size() == 2);
    const auto missing = session::run({"batch", (folder / "none.json").string()});
    CHECK(missing.status == 3);
    CHECK(session::run({"batch", "-", "--resume"}, "").status == 2);
    std::filesystem::remove_all(folder);
}

TEST_CASE("a record from which nothing can be read is a row like any other fault") {
    const std::string deep(100, '[');
    for (const std::string& text : {std::string{},
                                    std::string{"   "},
                                    std::string{"// nothing"},
                                    std::string{"/* nothing */"},
                                    std::string{"\xEF\xBB\xBF"},
                                    std::string{"\xff\xfe{\x00}\x00", 5},
                                    std::string{"/"},
                                    std::string{"{\"id\": /"},
                                    std::string{"{\"id\": "},
                                    std::string{"[/"},
                                    deep,
                                    "{\"id\": " + deep}) {
        INFO(text);
        for (const std::size_t line : {0U, 3U}) {
            const BatchRow row = assess_record({1, "hall.json", line, text});
            CHECK(row.outcome == Outcome::fault);
            CHECK(row.id == (line == 0 ? "hall.json" : "hall.json:3"));
            CHECK_FALSE(row.error.empty());
        }
    }
}
