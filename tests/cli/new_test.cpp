#include "../catch.hpp"
#include "fluewright/io/reference/first_plan.hpp"
#include "session.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>
#include <unistd.h>

namespace {

namespace fs = std::filesystem;

/// A folder of its own, gone at the end.
class PlanFolder {
public:
    PlanFolder() : path_(fs::temp_directory_path() / ("new-test-" + std::to_string(::getpid()))) {
        fs::remove_all(path_);
        fs::create_directories(path_);
    }

    ~PlanFolder() { fs::remove_all(path_); }

    PlanFolder(const PlanFolder&) = delete;
    PlanFolder& operator=(const PlanFolder&) = delete;

    [[nodiscard]] std::string file(const std::string& name) const { return path_ / name; }

    [[nodiscard]] std::size_t files() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(path_), fs::directory_iterator{}));
    }

private:
    fs::path path_;
};

std::string text_of_plan(const std::string& file) {
    std::ifstream in(file);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// Answers to the questions of each way, in order.
const std::string answers_up =
    "stove\nup\n150 mm\n8 kW\n0.8 m\n2.5 m\n4.2 m\n5.5 m\n35 deg\n2 m\n460 mm\n";
const std::string answers_wall =
    "pellet-stove\nwall\n3 in\n1.5 kg/h\n12 in\n20 in\n4 ft\n9 ft\n12 ft\ndon't know\n\n";
const std::string answers_masonry = "wood boiler\n3\n150 mm\n20 kW\n1.2 m\n0.6 m\n1.8 m\n200 mm x "
                                    "200 mm\n2.4 m\n6 m\n7 m\n?\n?\n?\n";
const std::string answers_fireplace =
    "fireplace\nmasonry\n28 x 24 in\n4 ft 4 in\n10 x 10 in\n8 ft\n22 ft\n26 ft\n\n\n";

/// Whether check takes a file: it may fall short, but it is no fault.
void check_takes(const std::string& file) {
    const auto checked = session::run({"check", file});
    CAPTURE(text_of_plan(file), checked.err);
    CHECK((checked.status == 0 || checked.status == 1));
    CHECK(checked.err.empty());
}

} // namespace

TEST_CASE("new asks its way to a file that check takes, with comments and a sketch") {
    const PlanFolder folder;
    int number = 0;
    for (const std::string& answers :
         {answers_up, answers_wall, answers_masonry, answers_fireplace}) {
        const std::string file = folder.file("run" + std::to_string(++number) + ".json");
        const auto made = session::run({"new", file}, answers);
        CAPTURE(made.out, made.err);
        REQUIRE(made.status == 0);
        CHECK(made.out.find("does not fit") == std::string::npos);
        CHECK(made.out.find("not understood") == std::string::npos);
        CHECK(made.out.find("chimney top at ") != std::string::npos);
        const std::string text = text_of_plan(file);
        CHECK(text.find("// ") == 0);
        CHECK(text.find("chimney top at ") != std::string::npos);
        check_takes(file);
        std::istringstream lines(made.out + text);
        for (std::string line; std::getline(lines, line);) {
            CAPTURE(line);
            const bool one_part = line.find("\"part\"") != std::string::npos;
            CHECK((line.size() <= 80 || one_part));
        }
    }
}

TEST_CASE("new keeps the words of whoever answered, and the heights add up") {
    const PlanFolder folder;
    const std::string file = folder.file("run.json");
    REQUIRE(session::run({"new", file}, answers_wall).status == 0);
    const std::string text = text_of_plan(file);
    CHECK(text.find(R"("diameter": "3 in")") != std::string::npos);
    CHECK(text.find(R"("across": "20 in")") != std::string::npos);
    CHECK(text.find("1/4 in/ft") != std::string::npos);
    // From the wall at 4 ft to the top at 12 ft.
    CHECK(text.find(R"("up": "8 ft")") != std::string::npos);
    CHECK(text.find("pitch") == std::string::npos);
}

TEST_CASE("new asks again where an answer does not fit those before it") {
    const PlanFolder folder;
    const std::string file = folder.file("run.json");
    // The ceiling under the flue collar, the roof under the ceiling, the top under the roof.
    const auto made = session::run(
        {"new", file},
        "stove\nup\n150 mm\n8 kW\n0.8 m\n0.5 m\n2.5 m\n2 m\n4.2 m\n4 m\n5.5 m\n35 deg\n2 m\n\n");
    CAPTURE(made.out);
    REQUIRE(made.status == 0);
    const std::string out = session::in_one_line(made.out);
    CHECK(out.find("0.5 m does not fit: the ceiling is above the flue collar. It can be 900 mm to "
                   "30 m.")
          != std::string::npos);
    CHECK(out.find("2 m does not fit: the roof is not under the ceiling.") != std::string::npos);
    CHECK(out.find("4 m does not fit: the chimney top is above the roof.") != std::string::npos);
    check_takes(file);
    // A pipe cannot enter the wall below the collar, nor an open fireplace go through it.
    const auto wall =
        session::run({"new", folder.file("wall.json")}, "fireplace\nwall\nmasonry\nstop\n");
    CHECK(wall.status == 2);
    CHECK(wall.out.find("That does not fit: the flue of an open fireplace") != std::string::npos);
}

TEST_CASE("new asks again where the answers do not fit each other on the wall and at the roof") {
    const PlanFolder folder;

    struct Misfit {
        std::string answers; ///< up to the one that does not fit
        std::string said;
    };

    const std::string to_wall = "stove\nwall\n6 in\n8 kW\n32 in\n";
    for (const Misfit& misfit :
         {Misfit{"stove\nup\n60 in\n", "60 in does not fit: no pipe of the trade is like that."},
          Misfit{"stove\nup\n1 in\n", "1 in does not fit: no pipe of the trade is like that."},
          // Pipe and chimney cannot stand in each other.
          Misfit{to_wall + "5 in\n", "5 in does not fit: it goes from the flue collar"},
          // The upper side of the pipe would be over the roof, or in the ceiling.
          Misfit{to_wall + "2 ft\n8 ft\n8 ft 1 in\n",
                 "8 ft 1 in does not fit: the roof is above the place where the pipe goes"},
          Misfit{"wood boiler\nmasonry\n6 in\n20 kW\n4 ft\n2 ft\n7 ft 10 in\n8 x 8 in\n8 ft\n",
                 "8 ft does not fit: the ceiling is above the place where the pipe enters"},
          // The chimney top an inch under the roof.
          Misfit{"stove\nup\n6 in\n8 kW\n32 in\n8 ft\n14 ft\n13 ft 11 in\n",
                 "13 ft 11 in does not fit: the chimney top is above the roof."},
          // Between pipe and chimney stands the wall, and no farther away.
          Misfit{to_wall + "2 ft\n6 ft\n9 ft\n16 ft\n\n\nbrick\n36 in\n",
                 "36 in does not fit: the wall it goes through is nearer"},
          Misfit{"fireplace\nmasonry\n28 x 36 in\n30 in\n",
                 "30 in does not fit: the throat is above the opening."}}) {
        CAPTURE(misfit.answers);
        const auto made = session::run({"new", folder.file("run.json")}, misfit.answers + "stop\n");
        const std::string out = session::in_one_line(made.out);
        CAPTURE(out);
        CHECK(made.status == 2);
        CHECK(out.find(misfit.said) != std::string::npos);
        // Nothing before it is refused.
        CHECK(out.find("does not fit") == out.rfind("does not fit"));
    }
    // A wall that cannot burn may be as near as it is.
    const auto stone = session::run({"new", folder.file("stone.json")},
                                    to_wall
                                        + "2 ft\n6 ft\n9 ft\n16 ft\n\n\nnoncombustible wall\n"
                                          "36 in\n");
    CAPTURE(stone.out);
    CHECK(stone.status == 0);
}

TEST_CASE("new ends politely with status 2, and nothing half-written") {
    const PlanFolder folder;
    const std::string file = folder.file("run.json");
    std::string nonsense;
    for (int i = 0; i < 30; ++i) {
        nonsense += "what?\n";
    }
    for (const std::string& answers :
         {std::string{}, std::string{"stove\nup\n"}, std::string{"stove\nstop\n"}, nonsense}) {
        const auto made = session::run({"new", file}, answers);
        CAPTURE(made.out, made.err);
        CHECK(made.status == 2);
        CHECK(made.err.find("nothing was written") != std::string::npos);
        CHECK(folder.files() == 0);
    }
}

TEST_CASE("new never writes over a file") {
    const PlanFolder folder;
    const std::string file = folder.file("run.json");
    std::ofstream(file) << "mine";
    const auto made = session::run({"new", file}, answers_up);
    CHECK(made.status == 2);
    CHECK(made.err.find("is there already") != std::string::npos);
    CHECK(text_of_plan(file) == "mine");
    // Nor through a link that leads nowhere yet.
    const std::string link = folder.file("link.json");
    fs::create_symlink(folder.file("elsewhere.json"), link);
    CHECK(session::run({"new", link}, answers_up).status == 2);
    CHECK(session::run({"new", folder.file("no/such/folder.json")}, answers_up).status == 3);
    CHECK(folder.files() == 2);
}

TEST_CASE("options answer the questions of new beforehand") {
    const PlanFolder folder;
    const std::string file = folder.file("run.json");
    std::vector<std::string> words{"new",
                                   file,
                                   "--heater",
                                   "stove",
                                   "--way",
                                   "up",
                                   "--collar",
                                   "6 in",
                                   "--fire",
                                   "5.5 lb/h",
                                   "--collar-height",
                                   "32 in",
                                   "--ceiling",
                                   "8 ft",
                                   "--roof",
                                   "14 ft",
                                   "--top",
                                   "18 ft"};
    const auto made = session::run(words);
    CAPTURE(made.out, made.err);
    REQUIRE(made.status == 0);
    CHECK(made.out.find("> ") == std::string::npos); // nothing was asked
    check_takes(file);
    // One that does not fit is said to, and asked for.
    words[1] = folder.file("low.json");
    words.back() = "10 ft";
    const auto low = session::run(words);
    CHECK(low.status == 2);
    CHECK(session::in_one_line(low.out).find("--top 10 ft: 10 ft does not fit")
          != std::string::npos);
    // One that concerns another kind of run is not passed over in silence.
    words[1] = folder.file("other.json");
    words.back() = "18 ft";
    words.insert(words.end(), {"--flue", "8 in"});
    const auto other = session::run(words);
    CHECK(other.status == 2);
    CHECK(other.err.find("--flue does not go with") != std::string::npos);
    CHECK(folder.files() == 1);
}

TEST_CASE("new asks what decides fire, and the file says it") {
    const PlanFolder folder;
    const std::string through_wall =
        "stove\nwall\n150 mm\n8 kW\n0.8 m\n0.8 m\n1.8 m\n2.8 m\n5 m\n\n\n";
    const auto fire_of = [](const std::string& file) {
        const std::string out = session::run({"check", file, "--json", "--rules", "none"}).out;
        const std::size_t at = out.find("\"harm\": \"fire\"");
        return out.substr(at, out.find('}', at) - at);
    };
    // Nobody who does not know is held up, and then fire stays open.
    const std::string open = folder.file("open.json");
    const auto unknown = session::run({"new", open}, through_wall + "don't know\ndon't know\n");
    REQUIRE(unknown.status == 0);
    CHECK(unknown.out.find("single-wall pipe") != std::string::npos);
    CHECK(unknown.out.find("go through the wall?") != std::string::npos);
    CHECK(fire_of(open).find("cannot tell") != std::string::npos);
    const std::string told = folder.file("told.json");
    REQUIRE(session::run({"new", told}, through_wall + "ventilated thimble\n460 mm\n").status == 0);
    CHECK(text_of_plan(told).find(R"("clearance": "460 mm")") != std::string::npos);
    CHECK(text_of_plan(told).find(R"("pass_through": "ventilated thimble")") != std::string::npos);
    CAPTURE(fire_of(told));
    CHECK(fire_of(told).find("passes") != std::string::npos);
    // Pipe that a listing speaks for is not asked about, nor what passes no wall.
    const auto pellets = session::run({"new", folder.file("pellets.json")}, answers_wall);
    CHECK(pellets.out.find("single-wall") == std::string::npos);
    const auto up = session::run({"new", folder.file("up.json")}, answers_up + "18 in\n");
    CHECK(up.status == 0);
    CHECK(up.out.find("go through the wall?") == std::string::npos);
    const std::string options = folder.file("options.json");
    const auto by_options = session::run(
        {"new", options, "--clearance", "18 in", "--pass-through", "brick"}, through_wall);
    CHECK(by_options.status == 0);
    CHECK(text_of_plan(options).find(R"("pass_through": "brick")") != std::string::npos);
}

TEST_CASE("a quote within a length does not break the file") {
    const PlanFolder folder;
    const std::string file = folder.file("run.json");
    const auto made =
        session::run({"new", file}, "stove\nup\n6\"\n8 kW\n2' 8\"\n8'\n14'\n18'\n\n\n18\"\n");
    CAPTURE(made.out, made.err);
    REQUIRE(made.status == 0);
    check_takes(file);
}

TEST_CASE("template makes a usual run of every kind of heater, which check takes") {
    const PlanFolder folder;
    for (const std::string_view kind : fluewright::plan_heater_words) {
        for (const std::string units : {"metric", "us"}) {
            const std::string file = folder.file(std::string{kind} + units + ".json");
            REQUIRE(
                session::run({"template", std::string{kind}, "--units", units, "-o", file}).status
                == 0);
            check_takes(file);
        }
    }
    const auto unknown = session::run({"template", "stofe"});
    CHECK(unknown.status == 2);
    CHECK(unknown.err.find("did you mean `stove`?") != std::string::npos);
}
