// Each kind of heater is answered in the words of its own trade, whatever is asked.
#include "../catch.hpp"
#include "session.hpp"

#include <regex>
#include <sstream>
#include <string>
#include <vector>

using session::run;

namespace {

struct KindOfHeater {
    std::string example;
    std::string others; ///< words that no line about it may hold
};

/// What a burner has not: a fire that somebody lays, a door to it, tar.
const std::string of_fires_by_hand =
    R"(kindling|burning paper|loading door|the door|\bwood\b|\btar\b|creosote|furnace cement|15 ft)"
    R"(|\bembers\b|\breload|throttle|burn brighter)";

const std::vector<KindOfHeater> heaters{
    {"ticket-office", of_fires_by_hand + "|free burn"},
    {"press-room", of_fires_by_hand + "|free burn|low fire"},
    {"greenhouse", of_fires_by_hand + "|free burn|low fire"},
    {"gatehouse", R"(loading door|the door\b|draft regulator|\btar\b|creosote|free burn|throttle)"},
    {"bake-house", R"(low fire|\btar\b|creosote|throttle)"},
};

const std::vector<std::vector<std::string>> commands_of_kinds{
    {"check"},
    {"check", "--requirements"},
    {"improve"},
    {"size"},
    {"sweep", "--over", "height=4..6m:3"},
    {"warmup"},
    {"parts"},
    {"diagnose"},
};

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

} // namespace

TEST_CASE("no kind of heater is told of another's ways", "[kinds]") {
    for (const KindOfHeater& heater : heaters) {
        const std::string file = PROJECT_SOURCE_DIR "/examples/" + heater.example + ".json";
        const std::regex others(heater.others, std::regex::icase);
        for (std::vector<std::string> command : commands_of_kinds) {
            command.insert(command.begin() + 1, file);
            const auto made = run(command);
            CAPTURE(heater.example, command.front(), command.back());
            CHECK(made.status <= 1);
            CHECK(made.out.size() > 100);
            CHECK(lines_with(made.out, others) == "");
        }
    }
}
