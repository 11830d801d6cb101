// Defects planted in runs that work are undone.
#include "catch.hpp"
#include "improved.hpp"

#include <algorithm>

using namespace fluewright;
using Outcome = Improvement::Outcome;

namespace {

Part of_kind(PartKind kind) {
    Part made;
    made.part = kind;
    return made;
}

struct Defect {
    std::string name;
    std::string cure; ///< the remedies that undo it
    void (*plant)(Installation&);
};

void insert_behind_first(Installation& in, Part made) {
    in.run.insert(in.run.begin() + 1, std::move(made));
}

const std::vector<Defect>& defects() {
    static const std::vector<Defect> rows{{"nest",
                                           "sweep",
                                           [](Installation& in) {
                                               Part nest = of_kind(PartKind::obstruction);
                                               nest.blocked = 0.93;
                                               insert_behind_first(in, nest);
                                           }},
                                          {"damper left shut",
                                           "open-damper",
                                           [](Installation& in) {
                                               Part damper = of_kind(PartKind::damper);
                                               damper.blade_angle_rad = 1.5;
                                               insert_behind_first(in, damper);
                                           }},
                                          {"clogged screen",
                                           "clean-screen",
                                           [](Installation& in) {
                                               Part& top = in.run.back();
                                               top.mesh_m = 0.012;
                                               top.free_area.reset();
                                               top.blocked = 0.94;
                                           }},
                                          {"starved room", "air-inlet", [](Installation& in) {
                                               in.site.house = {};
                                               in.site.room.pressure_pa = -40.0;
                                           }}};
    return rows;
}

} // namespace

TEST_CASE("each defect planted in each example that works is undone", "[improve]") {
    int planted = 0;
    for (const std::string name : {"bindery",
                                   "glass-studio",
                                   "greenhouse",
                                   "mountain-hut",
                                   "net-loft",
                                   "print-shop",
                                   "pump-house",
                                   "sugar-house",
                                   "cider-press",
                                   "weaving-mill"}) {
        Installation in = example(name);
        // What is too strong is another matter.
        in.appliance.draft_greatest_pa = 200.0;
        const bool has_cap = in.run.back().part == PartKind::cap;
        const bool has_damper = std::any_of(in.run.begin(), in.run.end(), [](const Part& p) {
            return p.part == PartKind::damper || p.part == PartKind::draft_regulator;
        });
        REQUIRE(improved(in, {.required = states_only}).outcome == Outcome::leave_alone);
        for (const Defect& defect : defects()) {
            if ((defect.name == "clogged screen" && !has_cap)
                || (defect.name == "damper left shut" && has_damper)) {
                continue;
            }
            CAPTURE(name, defect.name);
            Installation broken = in;
            defect.plant(broken);
            if (improved(broken, {.required = states_only}).outcome == Outcome::leave_alone) {
                continue; // the example has draft enough to bear it
            }
            ++planted;
            check_cured_by(broken, defect.cure);
        }
    }
    CHECK(planted >= 25);
}
