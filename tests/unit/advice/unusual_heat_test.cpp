// Heat and outlet of a stove that do not go together.
#include "../outdoor_top.hpp"
#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "sound.hpp"

#include <algorithm>

using namespace fluewright;

TEST_CASE("heat that no stove of that outlet gives is doubted") {
    struct Stove {
        double heat_w;
        double outlet_m;
        bool odd;
    };

    for (const Stove& stove : {Stove{40e3, 0.1524, true},
                               Stove{2e3, 0.254, true},
                               Stove{1.2e3, 0.1524, true},
                               Stove{8e3, 0.1524, false},
                               Stove{30e3, 0.150, false}, // the most of that flue by a rule
                               Stove{49e3, 0.175, false}, // and of this
                               Stove{3e3, 0.125, false},
                               Stove{5e3, 0.2032, false}}) {
        CAPTURE(stove.heat_w, stove.outlet_m);
        Installation in = sound();
        in.appliance.burn_rate_kg_s = {};
        in.appliance.gas_flow_kg_s = {};
        in.appliance.gas_temperature_k = {};
        in.appliance.heat_output_w.high = stove.heat_w;
        in.appliance.outlet.diameter_m = stove.outlet_m;
        in.run[0].diameter_m = stove.outlet_m;
        const Result<Case, Faults> made = resolve(with_outdoor_top(in));
        REQUIRE(made.has_value());
        const Checked checked = check_all(in, *made, solve(*made, Detail::stations), {});
        const bool doubted = std::any_of(
            checked.findings.begin(), checked.findings.end(), [](const Finding& finding) {
                return finding.message.find("the stove gives") != std::string::npos;
            });
        CHECK(doubted == stove.odd);
    }
}
