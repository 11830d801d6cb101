#include "catch.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <fstream>
#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

std::string first_cause(const nlohmann::json& file) {
    const ReadResult read = read_installation(file.dump());
    REQUIRE(read);
    const auto diagnosis = diagnose(*read);
    REQUIRE(diagnosis);
    const auto& causes = diagnosis->explanations.front().causes;
    return causes.empty() ? "nothing" : std::string{causes.front().cause->id};
}

} // namespace

// Complaints as an experienced sweep hears them, each with what he would look at first and why.
// Written before the program was asked.
TEST_CASE("a textbook complaint leads to the cause that the trade would name") {
    std::ifstream in(PROJECT_SOURCE_DIR "/tests/unit/advice/complaints.json");
    const nlohmann::json table = nlohmann::json::parse(in);
    for (const auto& complaint : table["complaints"]) {
        nlohmann::json file = table["base"];
        file.merge_patch(complaint.value("change", nlohmann::json::object()));
        file["observed"] = complaint["observed"];
        CAPTURE(complaint["reason"].get<std::string>());
        const std::string first = first_cause(file);
        const std::string either = complaint.value("or", "");
        CHECK((first == complaint["cause"] || first == either));
    }
    CHECK(table["complaints"].size() >= 26);
}
