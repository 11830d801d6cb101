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

std::string whole_file(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
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

TEST_CASE("numbers of the files stand beside the answers under the names of vary") {
    const auto varied =
        session::run({"vary", "-", "--over", "outdoor=-10,5degC", "--over", "height=6,7m"},
                     session::sound_file());
    REQUIRE(varied.status == 0);
    const auto rows = session::run(
        {"batch", "-", "--format", "csv", "--fields", "id", "--values", "outdoor,height,moisture"},
        varied.out);
    std::istringstream lines(rows.out);
    std::string line;
    std::getline(lines, line);
    CHECK(line == "id,outdoor_k,height_m,moisture_wet_basis\r");
    std::vector<std::string> values;
    while (std::getline(lines, line)) {
        values.push_back(line.substr(line.find(',') + 1));
    }
    REQUIRE(values.size() == 4);
    CHECK(values[0].starts_with("263.15,6,"));
    CHECK(values[3].starts_with("278.15,7,"));
    const auto json = session::run({"batch", "-", "--format", "ndjson", "--values", "outdoor"},
                                   stream(1) + "{\"run\": 3}\n");
    CHECK(lines_of(json.out)[0]["outdoor_k"].is_number());
    CHECK(lines_of(json.out)[1]["outdoor_k"].is_null());
    CHECK(session::run({"batch", "-", "--values", "outdoor"}, stream(1)).status == 2);
    const auto slip =
        session::run({"batch", "-", "--format", "csv", "--values", "outdor"}, stream(1));
    CHECK(slip.status == 2);
    CHECK(slip.err.find("`outdor` names no number") != std::string::npos);
    const auto twice = session::run(
        {"batch", "-", "--format", "csv", "--fields", "height_m", "--values", "height"}, stream(1));
    CHECK(twice.status == 2);
}

TEST_CASE("rules, sizes and methods are required of every record") {
    const std::string input = stream(2);
    const auto fields = [&](const std::vector<std::string>& more, const std::string& names) {
        std::vector<std::string> words{"batch", "-", "--format", "ndjson"};
        words.insert(words.end(), more.begin(), more.end());
        if (!names.empty()) {
            words.insert(words.end(), {"--fields", names});
        }
        return lines_of(session::run(words, input).out)[0];
    };
    // The sound file is a stove in Britain that tells nothing of alarms or hearth.
    const auto uk = fields({"--rules", "uk"}, "");
    CHECK(uk["rules_open"].get<int>() > 0);
    CHECK(fields({"--rules", "none"}, "rules_open,rules_not_met")["rules_open"] == 0);
    const auto sized = fields({"--size"}, "");
    CHECK(sized["size_suggested_m"].get<double>() > 0.05);
    CHECK_FALSE(sized["size_name"].get<std::string>().empty());
    CHECK(fields({}, "size_suggested_m")["size_suggested_m"].is_null());
    for (const std::string method : {"en13384", "handbook"}) {
        const auto by_method = fields({"--method", method}, "");
        REQUIRE(by_method["method_met"].is_boolean());
        const int status =
            session::run({"check", "-", "--method", method}, session::sound_file()).status;
        CHECK(by_method["method_met"].get<bool>() == (status == 0));
    }
    CHECK(fields({}, "method_met")["method_met"].is_null());
    const auto walls = fields({}, "coldest_wall_k,over_dew_point_k,over_creosote_k");
    CHECK(walls["over_creosote_k"].get<double>() < walls["over_dew_point_k"].get<double>());
}

TEST_CASE("the name of the output tells the format, and a summary the reasons") {
    const std::filesystem::path folder =
        std::filesystem::temp_directory_path() / "fluewright_batch_named";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const std::string csv = (folder / "out.csv").string();
    const auto told = session::run({"batch", "-", "-o", csv, "--summary"}, stream(3));
    CHECK(whole_file(csv).starts_with("record,id,"));
    CHECK(told.err.find("3 installations") != std::string::npos);
    CHECK(told.err.find("100.0 %") != std::string::npos);
    const std::string ndjson = (folder / "out.ndjson").string();
    CHECK(session::run({"batch", "-", "-o", ndjson}, stream(1)).status == 0);
    CHECK(whole_file(ndjson).starts_with("{\"record\":1"));
    CHECK(session::run({"batch", "-", "-o", ndjson, "--resume", "--summary"}, stream(1)).status
          == 2);
    std::filesystem::remove_all(folder);
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

TEST_CASE("the table of a batch says what falls short or is open, and in which condition") {
    const std::filesystem::path examples{PROJECT_SOURCE_DIR "/examples"};
    const auto asked = [&](const std::string& name, const std::vector<std::string>& more = {}) {
        std::vector<std::string> words{"batch", (examples / (name + ".json")).string()};
        words.insert(words.end(), more.begin(), more.end());
        return session::run(words);
    };
    // The word and the condition are those of `check`.
    const auto danger = asked("toll-house");
    CHECK(danger.out.find("DANGER") != std::string::npos);
    std::istringstream lines(asked("sugar-house").out); // inches of water are the widest figures
    for (std::string line; std::getline(lines, line);) {
        CHECK(line.size() < 80);
    }
    CHECK(session::in_one_line(danger.out)
              .find("fire: Chimney without a liner, straight 5 (and 1 more); "
                    "draft: low fire, mild day, 2.83 Pa where 6 Pa is required (and 1 more)")
          != std::string::npos);
    // Nothing short, fire not decided: it does not pass.
    const auto open = asked("print-shop");
    CHECK(open.status == 1);
    CHECK(open.out.find(" open ") != std::string::npos);
    CHECK(open.out.find("fire: open, the file does not say `listed_clearance`")
          != std::string::npos);
    CHECK(open.err.find("1 installations: 0 pass, 1 open, 0 fall short") != std::string::npos);
    CHECK(lines_of(asked("print-shop", {"--format", "ndjson"}).out)[0]["outcome"] == "open");
    CHECK(asked("print-shop", {"--only", "passing"}).out.find("print-shop") == std::string::npos);
    CHECK(asked("print-shop", {"--only", "failing"}).out.find("print-shop") == std::string::npos);
    CHECK(asked("print-shop", {"--only", "open"}).out.find("print-shop") != std::string::npos);
    // Where fire does not count, nothing that counts is open.
    CHECK(asked("print-shop", {"--require", "draft"}).status == 0);
    const auto sound = asked("bindery");
    CHECK(sound.status == 0);
    CHECK(sound.out.find("fire:") == std::string::npos);
}

TEST_CASE("the table of a batch cuts no id") {
    const std::string id = "north-wall/two-elbows/height-six-meters/diameter-150";
    const std::string line =
        session::run({"vary", "-", "--over", "outdoor=0,5degC"}, session::sound_file()).out;
    const std::size_t from = line.find("\"id\":\"") + 6;
    const std::string named =
        line.substr(0, from) + id
        + line.substr(line.find('"', from), line.find('\n') - line.find('"', from) + 1);
    const auto made = session::run({"batch", "-"}, named);
    CAPTURE(made.out);
    CHECK(made.out.find('\n' + id + '\n') != std::string::npos);
}

TEST_CASE("a page of a batch is about all of its records") {
    const std::string files =
        session::run({"vary", "-", "--over", "height=6..9m:8"}, session::sound_file()).out;
    const auto one =
        session::run({"batch", "-", "--format", "html", "--jobs", "1"}, files + "{}\n");
    const auto many =
        session::run({"batch", "-", "--format", "html", "--jobs", "4"}, files + "{}\n");
    CHECK(one.status == 2);
    CHECK(one.out == many.out);
    CHECK(one.out.find("9 installations: ") != std::string::npos);
    CHECK(one.out.find("1 at fault") != std::string::npos);
    CHECK(one.out.find("<td class=\"bad\">at fault</td>") != std::string::npos);
    CHECK(session::run({"batch", "-", "--format", "html", "--only", "passing"}, files).status == 2);
    CHECK(session::run({"batch", "-", "--format", "html"}, "").status == 2); // nothing came in
}
