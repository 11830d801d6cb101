// Each kind of heater is answered in the words of its own trade, whatever is asked.
#include "../catch.hpp"
#include "fluewright/advice/checks/check.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "session.hpp"

#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using namespace fluewright;
using session::run;
using Json = nlohmann::ordered_json;

namespace {

/// What a burner has not: a fire that somebody lays, lights and feeds, a door to it, tar.
const std::string of_fires_by_hand =
    R"(kindling|burning paper|loading door|the door|\bwood\b|\btar\b|creosote|furnace cement|15 ft)"
    R"(|\bembers\b|\breload|throttle|burn more briskly|match to every|small fire|before lighting)"
    R"(|light a|\blogs\b|\bhearth\b|\blintel\b)";

const std::string of_burners = R"(\bburner\b|draft hood|one-stage)";

const std::string of_open_fronts = R"(\blintel\b|open front|smoke guard|raise the hearth)";

/// Words that no line about a kind of heater may hold, in the order of HeaterKind.
const std::vector<std::string> words_of_others{
    of_burners + "|" + of_open_fronts,
    of_burners
        + R"(|loading door|the door\b|draft regulator|\btar\b|creosote|air control open|throttle)",
    of_burners + "|" + of_open_fronts + R"(|low fire|\btar\b|creosote|throttle)",
    of_fires_by_hand + R"(|air control open|the chimney\b(?! top))",
    of_fires_by_hand + "|air control open|low fire",
    of_fires_by_hand + R"(|air control open|low fire|the chimney\b(?! top)|\bsoot\b)",
    of_fires_by_hand + R"(|air control open|low fire|the chimney\b(?! top)|\bsoot\b)",
};

struct AskedOfKind {
    std::string name;
    std::string file; ///< its text
    HeaterKind kind;
};

HeaterKind kind_in(const std::string& text) {
    const auto read = read_installation(text, "a file");
    REQUIRE(read.has_value());
    const std::optional<HeaterKind> kind = kind_of(*read);
    REQUIRE(kind.has_value());
    return *kind;
}

/// Every installation of tests/published/kinds.json: sound ones and such with every fault there is.
std::vector<AskedOfKind> installations() {
    std::ifstream file(PROJECT_SOURCE_DIR "/tests/published/kinds.json");
    const Json all = Json::parse(file);
    std::vector<AskedOfKind> made;
    for (const auto& [name, installation] : all.items()) {
        const std::string text = installation.dump();
        made.push_back({name, text, kind_in(text)});
    }
    return made;
}

/// The first two of each kind: what is asked of them takes its time.
std::vector<AskedOfKind> few() {
    std::vector<AskedOfKind> made;
    std::map<HeaterKind, int> of_kind;
    for (AskedOfKind& asked : installations()) {
        if (++of_kind[asked.kind] <= 2) {
            made.push_back(std::move(asked));
        }
    }
    CHECK(of_kind.size() == heater_kind_words.size());
    return made;
}

/// Without the names of documents, which are about what they are about, and of checks that do not
/// apply, which `--details` tells to who reads them all.
std::string without_documents(const std::string& text) {
    std::string line = session::in_one_line(text);
    for (const catalog::Source& source : catalog::sources()) {
        for (auto at = line.find(source.document); at != std::string::npos;
             at = line.find(source.document, at)) {
            line.erase(at, source.document.size());
        }
    }
    line = std::regex_replace(line, std::regex("does not apply: [^.]*\\."), "");
    return std::regex_replace(line, std::regex("\\. "), ".\n");
}

/// The lines of an answer that hold words of another kind.
std::string lines_with(const std::string& text, const std::regex& words) {
    std::istringstream lines(text);
    std::string found;
    for (std::string line; std::getline(lines, line);) {
        if (std::regex_search(line, words)) {
            found += line + '\n';
        }
    }
    return found;
}

std::regex others_than(HeaterKind kind, const std::string& command = "check") {
    std::string words = words_of_others.at(static_cast<std::size_t>(kind));
    if (command == "parts") { // supports and braces are sold as those of chimneys
        words = std::regex_replace(words, std::regex(R"(\|the chimney\\b\(\?! top\))"), "");
    }
    if (command == "improve" && kind == HeaterKind::open_fire) {
        // an insert is offered, with its door and what its gas does
        words = of_burners + "|loading door|draft regulator|air control open|throttle";
    }
    return std::regex(words, std::regex::icase);
}

void hold_to_its_words(const AskedOfKind& asked, std::vector<std::string> command) {
    command.insert(command.begin() + 1, "-");
    const auto made = run(command, asked.file);
    CAPTURE(asked.name, name(asked.kind), command.front(), command.back());
    CHECK(made.status <= 1);
    CHECK(made.out.size() > 100);
    const bool details = command.back() == "--details";
    const std::string told = details ? without_documents(made.out) : made.out;
    CHECK(lines_with(told, others_than(asked.kind, command.front())) == "");
}

/// Sentences of a JSON answer that are told to a person. What a check asks in general, and of whom,
/// stands beside what it says of this heater; one that does not apply is there for who reads them
/// all.
void add_sentences(const Json& value, std::string& sentences) {
    static const std::set<std::string> general{
        "rule", "applies", "applies_to", "source", "document", "clause", "disagrees", "mark"};
    if (value.is_string() && value.get<std::string>().find(' ') != std::string::npos) {
        sentences += value.get<std::string>() + '\n';
    }
    if (!value.is_structured()
        || (value.is_object() && value.value("outcome", "") == "does not apply")) {
        return;
    }
    for (const auto& [key, inner] : value.items()) {
        if (!general.contains(key)) {
            add_sentences(inner, sentences);
        }
    }
}

} // namespace

TEST_CASE("no kind of heater is told of another's ways", "[kinds]") {
    for (const AskedOfKind& asked : installations()) {
        hold_to_its_words(asked, {"check"});
        hold_to_its_words(asked, {"check", "--details"});
        hold_to_its_words(asked, {"check", "--requirements"});
        hold_to_its_words(asked, {"size"});
        hold_to_its_words(asked, {"warmup"});
    }
}

TEST_CASE("nor by what takes its time", "[kinds]") {
    for (const AskedOfKind& asked : few()) {
        hold_to_its_words(asked, {"improve"});
        hold_to_its_words(asked, {"sweep", "--over", "height=4..6m:3"});
        hold_to_its_words(asked, {"parts"});
        hold_to_its_words(asked, {"diagnose"});
    }
}

TEST_CASE("nor in JSON", "[kinds]") {
    for (const AskedOfKind& asked : installations()) {
        for (const std::string command : {"check", "warmup", "size"}) {
            const auto made = run({command, "--json", "-"}, asked.file);
            CAPTURE(asked.name, name(asked.kind), command);
            REQUIRE(made.status <= 1);
            std::string sentences;
            add_sentences(Json::parse(made.out), sentences);
            CHECK(sentences.size() > 100);
            CHECK(lines_with(sentences, others_than(asked.kind)) == "");
        }
    }
}

TEST_CASE("what a finding says of a kind stands on its page, too", "[kinds]") {
    std::set<std::pair<std::string, HeaterKind>> asked_for;
    for (const AskedOfKind& asked : installations()) {
        const auto made = run({"check", "--json", "-"}, asked.file);
        const Json findings = Json::parse(made.out)["result"]["findings"];
        for (const Json& finding : findings) {
            const std::string id = finding["id"];
            if (!asked_for.emplace(id, asked.kind).second) {
                continue;
            }
            const Matter& matter = matter_for(*find_matter(id), asked.kind);
            const std::string page = session::in_one_line(run({"explain", id}).out);
            CAPTURE(id, name(asked.kind));
            CHECK(page.find(session::in_one_line(std::string{matter.meaning}))
                  != std::string::npos);
            CHECK(page.find(session::in_one_line(std::string{matter.remedy})) != std::string::npos);
        }
    }
    CHECK(asked_for.size() > 20);
}
