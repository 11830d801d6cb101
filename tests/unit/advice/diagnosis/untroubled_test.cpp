#include "diagnosed.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <fstream>
#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

/// Of the plain iron stove of the complaints, which needs 12 Pa and gives about 30.
Diagnosis where_seen(const std::vector<nlohmann::json>& observed) {
    std::ifstream in(PROJECT_SOURCE_DIR "/tests/unit/advice/complaints.json");
    nlohmann::json file = nlohmann::json::parse(in)["base"];
    file["observed"] = observed;
    const ReadResult read = read_installation(file.dump());
    REQUIRE(read);
    return diagnosis_of(*read);
}

nlohmann::json measured(const char* draft, const char* state = "high fire") {
    return {{"draft", draft}, {"at", "outlet"}, {"state", state}};
}

const nlohmann::json cap_good{{"look", "cap"}, {"found", "good"}};
const nlohmann::json cap_bad{{"look", "cap"}, {"found", "bad"}};
const nlohmann::json flue_good{{"look", "flue"}, {"found", "good"}};
const nlohmann::json good_fire{{"sluggish", false}};
const nlohmann::json sluggish{{"sluggish", true}};
const nlohmann::json worse{{"worse", "over weeks"}};
const nlohmann::json blown_out{{"smoke_stick", "out"}, {"at", 1}};
const nlohmann::json thick_deposit{{"deposit_thickness", "12 mm"}};
const nlohmann::json thin_deposit{{"deposit_thickness", "2 mm"}};
const nlohmann::json alarm_out{{"co_alarm", true}, {"state", "idle"}};
const nlohmann::json alarm_lit{{"co_alarm", true}, {"state", "high fire"}};

} // namespace

// A sweep who measures more than the heater needs, and hears no complaint, leaves it as it is, even
// where the run should give more; common practice, no source.
TEST_CASE("draft that was measured to be enough asks for no cure where nobody complains") {
    struct Case {
        std::vector<nlohmann::json> observed;
        bool enough;
    };

    const std::vector<Case> cases{
        {{measured("18 Pa")}, true},
        {{measured("18 Pa"), cap_good, flue_good}, true},
        {{measured("18 Pa"), measured("15 Pa")}, true},
        {{measured("18 Pa"), good_fire}, true},
        {{measured("12.5 Pa")}, false}, // as much as a gauge may err
        {{measured("9 Pa")}, false},
        {{measured("18 Pa"), measured("9 Pa")}, false},
        {{measured("70 Pa")}, false},
        {{measured("18 Pa"), sluggish}, false},
        {{measured("18 Pa"), worse}, false},
        {{measured("18 Pa"), cap_bad}, false},
        {{measured("18 Pa"), blown_out}, false},
        {{measured("18 Pa", "low fire")}, false},
        {{cap_good, flue_good}, false},
    };
    for (const Case& each : cases) {
        CAPTURE(nlohmann::json(each.observed).dump());
        const Diagnosis diagnosis = where_seen(each.observed);
        CHECK(diagnosis.measured_enough == each.enough);
        if (each.enough) {
            CHECK(asks_for_no_cure(diagnosis));
        }
    }
    const Diagnosis short_by_half = where_seen({measured("18 Pa")});
    CHECK(short_by_half.sentence.find("Nothing that was seen asks for a cure: 18 Pa") == 0);
    CHECK(short_by_half.sentence.find("12 Pa are required") != std::string::npos);
}

TEST_CASE("a deposit that is to be swept outweighs a flue called good") {
    const Diagnosis thick = where_seen({thick_deposit, flue_good});
    CHECK(share_of(thick, "deposits") > 0.4);
    CHECK_FALSE(thick.nothing_explains);
    CHECK(thick.seen[1].words.find("not weighed") != std::string::npos);
    CHECK_FALSE(thick.dangers.empty());

    const Diagnosis thin = where_seen({thin_deposit, flue_good});
    CHECK(thin.seen[1].words == "flue found good");
}

TEST_CASE("an alarm while the appliance is out names other sources and accuses no flue") {
    const Diagnosis out = where_seen({alarm_out});
    REQUIRE(out.urgent.size() >= 2);
    CHECK(out.urgent[0].find("get everybody out") != std::string::npos);
    CHECK(out.urgent[1].find("every other source") != std::string::npos);
    CHECK(out.no_fire);
    CHECK(out.sentence.find("tells nothing of its flue") != std::string::npos);
    CHECK_FALSE(asks_for_no_cure(out));

    const Diagnosis lit = where_seen({alarm_lit});
    CHECK(share_of(lit, "blockage") > share_of(out, "blockage"));
    CHECK(lit.no_fire);
}
