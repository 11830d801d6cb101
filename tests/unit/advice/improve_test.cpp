// Each defect planted in a sound installation is cured by undoing it; sound ones are left alone and
// hopeless ones are called so.
#include "catch.hpp"
#include "examples.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace fluewright;
using Outcome = Improvement::Outcome;

namespace {

Improvement improved(const Installation& in, const ImproveOptions& options = {}) {
    auto result = improve(in, options);
    REQUIRE(result.has_value());
    return std::move(result).value();
}

std::string best(const Improvement& made) {
    REQUIRE_FALSE(made.plans.empty());
    std::string ids;
    for (const Remedy& remedy : made.plans.front().steps) {
        ids += (ids.empty() ? "" : " + ") + std::string{effort_of(remedy.kind).id};
    }
    return ids;
}

Part part(PartKind kind) {
    Part made;
    made.part = kind;
    return made;
}

Part up(double rise_m) {
    Part made = part(PartKind::straight);
    made.up_m = rise_m;
    return made;
}

/// An inside chimney that is neither short of draft nor too strong.
Installation sound() {
    Installation in = example("bindery");
    in.appliance.draft_greatest_pa = 40.0;
    return in;
}

void check_cured_by(const Installation& in, const std::string& id) {
    const Improvement made = improved(in);
    CAPTURE(made.present.sentence, made.sentence);
    CHECK_FALSE(made.present.works);
    CHECK(made.outcome == Outcome::one_cures);
    CHECK(best(made) == id);
    CHECK(made.plans.front().score.passes);
    CHECK(made.plans.front().rank == 1);
    // What is written out works as promised.
    const std::string text = write_installation(in_short(made.plans.front().changed));
    const auto again = read_installation(text);
    INFO(text);
    REQUIRE(again.has_value());
    const auto assessed = assess(*again, {});
    REQUIRE(assessed.has_value());
    CHECK(assessed->works);
}

} // namespace

TEST_CASE("a sound installation is left alone", "[improve]") {
    for (const Installation& in : {sound(), example("sugar-house"), example("greenhouse")}) {
        const Improvement made = improved(in, {.pairs = true});
        CHECK(made.outcome == Outcome::leave_alone);
        CHECK(made.plans.empty());
        CHECK(made.sentence.find("Leave it alone") == 0);
    }
}

TEST_CASE("a nest in the flue is swept out", "[improve]") {
    Installation in = sound();
    Part nest = part(PartKind::obstruction);
    nest.blocked = 0.8;
    in.run.insert(in.run.begin() + 2, nest);
    check_cured_by(in, "sweep");
}

TEST_CASE("deposits on the wall are swept off", "[improve]") {
    Installation in = sound();
    for (Part& p : in.run) {
        if (p.up_m) {
            p.deposit_m = 0.038;
            p.deposit = DepositKind::flaky_creosote;
        }
    }
    check_cured_by(in, "sweep");
}

TEST_CASE("a clogged screen is cleaned", "[improve]") {
    Installation in = sound();
    in.run.back().mesh_m = 0.012;
    in.run.back().blocked = 0.85;
    check_cured_by(in, "clean-screen");
}

TEST_CASE("a damper left shut is opened", "[improve]") {
    Installation in = sound();
    Part damper = part(PartKind::damper);
    damper.blade_angle_rad = 1.4;
    in.run.insert(in.run.begin() + 1, damper);
    check_cured_by(in, "open-damper");
}

TEST_CASE("a run on reduced pipe gets its reducer taken out", "[improve]") {
    Installation in = sound();
    Part reducer = part(PartKind::reducer);
    reducer.diameter_m = 0.08;
    in.run.insert(in.run.begin() + 1, reducer);
    check_cured_by(in, "remove-reducer");
}

TEST_CASE("a cold outside stack is insulated", "[improve]") {
    Installation in = example("sugar-house");
    in.site.weather.front().outdoor_temperature_k = 243.15;
    in.appliance.burn_rate_kg_s = {0.82 / 3600.0, 2.5 / 3600.0};
    in.appliance.efficiency.high = 0.76;
    in.appliance.door = {0.2, 0.15, std::nullopt};
    in.appliance.draft_needed_pa = {7.5, 12.5};
    check_cured_by(in, "insulate-outside");
}

TEST_CASE("an oversized masonry flue is lined", "[improve]") {
    check_cured_by(example("toll-house"), "line-flue");
}

TEST_CASE("a long level run with turns is straightened or done without", "[improve]") {
    Installation in = example("village-hall");
    in.appliance.door = {0.25, 0.2, std::nullopt};
    const Improvement made = improved(in);
    CAPTURE(made.sentence);
    CHECK(made.outcome == Outcome::one_cures);
    const std::set<std::string> shape{
        "remove-level", "shorten-level", "straighten-level", "two-45"};
    CHECK(shape.count(best(made)) == 1);
}

TEST_CASE("wet wood is dried", "[improve]") {
    Installation in = sound();
    in.appliance.fuel.moisture = 0.55;
    in.appliance.draft_needed_pa = {9.0, 25.0};
    in.appliance.draft_greatest_pa = 34.0;
    check_cured_by(in, "dry-fuel");
}

TEST_CASE("a low top is raised", "[improve]") {
    Installation in = sound();
    in.run[0].up_m = 1.0;
    in.run[1].up_m = 0.4;
    in.run[2].up_m = 0.4;
    in.run[3].up_m = 0.4;
    check_cured_by(in, "raise-top");
}

TEST_CASE("a starved room gets air", "[improve]") {
    Installation in = sound();
    in.site.room.pressure_pa = -18.0;
    check_cured_by(in, "air-inlet");
}

TEST_CASE("joints that leak are closed", "[improve]") {
    Installation in = sound();
    in.run.front().joint_gap_m = 0.0011;
    in.appliance.draft_needed_pa = {10.0, 23.0};
    check_cured_by(in, "seal-joints");
}

TEST_CASE("a fan that takes the fire's air is left off", "[improve]") {
    Installation in = example("weaving-mill");
    in.site.house.fans.front().flow_m3_s = 0.16;
    in.site.house.openings.clear();
    in.appliance.draft_greatest_pa = 60.0;
    check_cured_by(in, "stop-fans");
}

TEST_CASE("a tight house gets an inlet of the size it needs", "[improve]") {
    Installation in = example("weaving-mill");
    in.site.house.fans.clear();
    in.site.house.openings.clear();
    in.site.house.air_changes_50_pa_1_s = 0.25 / 3600.0;
    in.appliance.draft_greatest_pa = 60.0;
    check_cured_by(in, "air-inlet");
}

TEST_CASE("a fit of joints carries on as one of its two ways", "[improve]") {
    Installation in = sound();
    in.run[0].joint = JointFit::loose;
    in.run[1].joint_gap_m = 0.0001;
    in.run[2].joint = JointFit::loose;
    const auto before = resolve(in);
    const auto after = resolve(in_short(in));
    REQUIRE(before.has_value());
    REQUIRE(after.has_value());
    for (std::size_t i = 0; i < before->sections.size(); ++i) {
        CHECK(before->sections[i].joint_leak_m2 == after->sections[i].joint_leak_m2);
    }
}

TEST_CASE("a rain cap that chokes is changed", "[improve]") {
    Installation in = sound();
    in.run.back().build = Build::rain;
    in.run.back().mesh_m = 0.006;
    in.run.back().free_area = 0.12;
    const Improvement made = improved(in);
    CHECK(made.outcome == Outcome::one_cures);
    CHECK(best(made) == "clean-screen");
}

TEST_CASE("an open front too high is lowered", "[improve]") {
    check_cured_by(example("gatehouse"), "lower-door-opening");
}

TEST_CASE("too much draft gets a damper and nothing that costs a state", "[improve]") {
    Installation in = sound();
    in.appliance.draft_greatest_pa = 27.0;
    const Improvement made = improved(in);
    CAPTURE(made.sentence);
    CHECK(made.goal == Goal::less_draft);
    CHECK(made.outcome == Outcome::one_cures);
    CHECK(best(made) == "fit-damper");
    CHECK(made.plans.front().score.greatest_over <= 0.0);
}

TEST_CASE("a stub of two metres below the roof is hopeless and the reason is told", "[improve]") {
    Installation in = sound();
    in.run = {up(1.2), up(0.8), part(PartKind::cap)};
    in.run[0].diameter_m = 0.15;
    in.run[0].wall = "single-wall steel";
    in.run[1].zone = Zone::outdoors;
    in.appliance.draft_needed_pa = {12.0, 25.0};
    const Improvement made = improved(in);
    CAPTURE(made.sentence, made.reason);
    CHECK(made.outcome == Outcome::hopeless);
    CHECK(made.sentence.find("Nothing that was tried") == 0);
    CHECK(made.reason.find("2 m over the outlet") != std::string::npos);
    CHECK(made.reason.find("past the roof") != std::string::npos);
}

TEST_CASE("where two changes do not do, a third is tried beside them", "[improve]") {
    const Improvement made = improved(example("ferry-office"));
    CAPTURE(made.sentence);
    CHECK(made.outcome == Outcome::three_cure);
    REQUIRE(made.plans.front().steps.size() == 3);
    CHECK(made.plans.front().cures);
    const auto assessed = assess(in_short(made.plans.front().changed), {.size_search = false});
    REQUIRE(assessed.has_value());
    CHECK(assessed->works);
}

TEST_CASE("the ranking and the front are those of brute force", "[improve]") {
    for (const std::string name : {"boat-shed", "toll-house", "village-hall"}) {
        CAPTURE(name);
        const Improvement made = improved(example(name), {.pairs = true, .most = 100000});
        REQUIRE(made.plans.size() > 5);
        const bool dangers_move =
            std::any_of(made.plans.begin(), made.plans.end(), [](const Plan& plan) {
                return std::any_of(plan.raised.begin(), plan.raised.end(), [](const auto* matter) {
                    return matter->severity == Severity::danger;
                });
            });
        for (std::size_t i = 0; i < made.plans.size(); ++i) {
            const Plan& plan = made.plans[i];
            bool beaten = false;
            for (std::size_t j = 0; j < made.plans.size(); ++j) {
                const Plan& other = made.plans[j];
                const bool no_worse =
                    other.cost <= plan.cost && other.score.least_spare >= plan.score.least_spare;
                const bool better =
                    other.cost < plan.cost || other.score.least_spare > plan.score.least_spare;
                beaten = beaten || (no_worse && better);
                if (j > i && !dangers_move) {
                    CHECK_FALSE(ranks_before(other, plan));
                }
            }
            if (plan.on_front) {
                CHECK_FALSE(beaten);
            }
            // What was promised is what a full check of the changed installation says.
            const auto assessed = assess(in_short(plan.changed), {.size_search = false});
            REQUIRE(assessed.has_value());
            CHECK(assessed->works == plan.score.passes);
        }
    }
}

namespace {

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
                                               Part nest = part(PartKind::obstruction);
                                               nest.blocked = 0.93;
                                               insert_behind_first(in, nest);
                                           }},
                                          {"damper left shut",
                                           "open-damper",
                                           [](Installation& in) {
                                               Part damper = part(PartKind::damper);
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
        REQUIRE(improved(in).outcome == Outcome::leave_alone);
        for (const Defect& defect : defects()) {
            if ((defect.name == "clogged screen" && !has_cap)
                || (defect.name == "damper left shut" && has_damper)) {
                continue;
            }
            CAPTURE(name, defect.name);
            Installation broken = in;
            defect.plant(broken);
            if (improved(broken).outcome == Outcome::leave_alone) {
                continue; // the example has draft enough to bear it
            }
            ++planted;
            check_cured_by(broken, defect.cure);
        }
    }
    CHECK(planted >= 25);
}

TEST_CASE("the best plan and the front are those of trying everything", "[improve]") {
    for (const std::string name : {"boat-shed", "village-hall"}) {
        CAPTURE(name);
        const Installation in = example(name);
        const auto present = resolve(in);
        REQUIRE(present.has_value());
        const double before = score(*present).least_spare;
        const double enough = catalog::default_of(DefaultId::spare_wanted_share).value;

        struct Tried {
            double cost;
            double spare;
            bool cures;
            bool too_strong;
        };

        std::vector<Tried> all;
        const auto try_it = [&](const Installation& changed, double cost) {
            const auto resolved = resolve(changed);
            if (resolved) {
                const Score scored = score(*resolved);
                all.push_back(
                    {cost,
                     scored.least_spare,
                     scored.passes,
                     scored.greatest_over > std::max(0.0, score(*present).greatest_over + 0.02)});
            }
        };
        const std::vector<Remedy> remedies = possible_remedies(in, *present);
        for (const Remedy& first : remedies) {
            if (first.kind == RemedyKind::fit_damper || first.kind == RemedyKind::fit_regulator) {
                continue;
            }
            const auto once = apply(first, in);
            if (!once) {
                continue;
            }
            try_it(*once, first.effort);
            for (const Remedy& second : remedies) {
                if (second.kind <= first.kind || second.kind >= RemedyKind::fit_damper
                    || !go_together(first, second)) {
                    continue;
                }
                if (const auto twice = apply(second, *once)) {
                    try_it(*twice, first.effort + second.effort);
                }
            }
        }
        const Improvement made = improved(in, {.pairs = true, .most = 100000});
        // No plan that was left out beats one that is on the front.
        for (const Plan& plan : made.plans) {
            if (!plan.on_front) {
                continue;
            }
            const bool beaten = std::any_of(all.begin(), all.end(), [&](const Tried& other) {
                // Pairs that add next to nothing to one of their halves are left out on purpose.
                return other.cost < plan.cost - 1e-9
                       && other.spare > plan.score.least_spare + 0.011;
            });
            CHECK_FALSE(beaten);
        }
        const auto merit = [&](const Tried& t) {
            return (std::min(t.spare, enough) - before) / t.cost;
        };
        double best = 0.0;
        const bool any_gentle = std::any_of(
            all.begin(), all.end(), [](const Tried& t) { return t.cures && !t.too_strong; });
        for (const Tried& t : all) {
            if (t.cures && (!t.too_strong || !any_gentle)) {
                best = std::max(best, merit(t));
            }
        }
        const bool danger = std::any_of(made.plans.begin(), made.plans.end(), [](const Plan& p) {
            return std::any_of(p.raised.begin(), p.raised.end(), [](const Matter* matter) {
                return matter->severity == Severity::danger;
            });
        });
        REQUIRE_FALSE(made.plans.empty());
        REQUIRE(made.plans.front().cures);
        if (!danger) {
            CHECK(made.plans.front().merit() == Approx(best).epsilon(0.02));
        }
    }
}

TEST_CASE("a change that breaks a rule of installation says so", "[improve]") {
    const auto only_bodies_speak_of = [](const Matter* matter) {
        return std::none_of(checks().begin(), checks().end(), [matter](const Check& check) {
            return check.matter == matter && check.basis != Basis::body;
        });
    };
    Installation in = example("toll-house");
    const Improvement asked = improved(in, {.most = 100, .rules = "us"});
    const bool any = std::any_of(asked.plans.begin(), asked.plans.end(), [&](const Plan& plan) {
        return std::any_of(plan.raised.begin(), plan.raised.end(), only_bodies_speak_of);
    });
    CHECK(any);
    const Improvement without = improved(in, {.most = 100, .rules = "none"});
    for (const Plan& plan : without.plans) {
        CHECK(std::none_of(plan.raised.begin(), plan.raised.end(), only_bodies_speak_of));
    }
}

TEST_CASE("a front is marked as pairwise comparison finds it", "[improve]") {
    std::vector<Plan> plans(60);
    unsigned state = 12345;
    for (Plan& plan : plans) {
        state = state * 1664525U + 1013904223U;
        plan.cost = 1.0 + (state >> 28U);
        state = state * 1664525U + 1013904223U;
        plan.score.least_spare = 0.1 * (state >> 28U);
    }
    mark_front(plans, Goal::more_to_spare);
    for (std::size_t i = 0; i < plans.size(); ++i) {
        bool beaten = false;
        for (std::size_t j = 0; j < plans.size(); ++j) {
            const bool same = plans[j].cost == plans[i].cost
                              && plans[j].score.least_spare == plans[i].score.least_spare;
            beaten = beaten
                     || (plans[j].cost <= plans[i].cost
                         && plans[j].score.least_spare >= plans[i].score.least_spare
                         && (!same || j < i));
        }
        CHECK(plans[i].on_front == !beaten);
    }
}

TEST_CASE("the answer does not depend on the number of threads", "[improve]") {
    const Installation in = example("boat-shed");
    const Improvement one = improved(in, {.pairs = true, .most = 30, .threads = 1});
    const Improvement three = improved(in, {.pairs = true, .most = 30, .threads = 3});
    CHECK(one.tried == three.tried);
    CHECK(one.sentence == three.sentence);
    REQUIRE(one.plans.size() == three.plans.size());
    for (std::size_t i = 0; i < one.plans.size(); ++i) {
        CHECK(one.plans[i].score.least_spare == three.plans[i].score.least_spare);
        CHECK(one.plans[i].changed == three.plans[i].changed);
        CHECK(one.plans[i].rank == three.plans[i].rank);
    }
}

TEST_CASE("no run is solved twice", "[improve]") {
    for (const std::string name : {"boat-shed", "village-hall"}) {
        const Improvement made = improved(example(name), {.pairs = true, .most = 100000});
        std::set<std::string> texts;
        for (const Plan& plan : made.plans) {
            CHECK(texts.insert(write_installation(in_short(plan.changed))).second);
        }
    }
}

TEST_CASE("prices of the user's own rank in place of effort", "[improve]") {
    PriceList list{.currency = "EUR", .prices = {}};
    list.prices["raise-top"] = {.fixed = 100.0, .per_metre = 50.0};
    list.prices["line-flue"] = {.fixed = 10000.0, .per_metre = 0.0};
    const Improvement made = improved(example("toll-house"), {.prices = list});
    CHECK(made.currency == "EUR");
    for (const Plan& plan : made.plans) {
        for (const Remedy& remedy : plan.steps) {
            CHECK(list.prices.count(effort_of(remedy.kind).id) == 1);
        }
    }
    CHECK_FALSE(made.unpriced.empty());
}

TEST_CASE("every kind of remedy has its row and every row its kind", "[improve]") {
    CHECK(catalog::remedy_efforts().size()
          == static_cast<std::size_t>(RemedyKind::fit_regulator) + 1);
    CHECK(effort_of(RemedyKind::open_damper).id == "open-damper");
    CHECK(effort_of(RemedyKind::give_slope).id == "give-slope");
    CHECK(effort_of(RemedyKind::raise_top).id == "raise-top");
    CHECK(effort_of(RemedyKind::seal_joints).id == "seal-joints");
    CHECK(effort_of(RemedyKind::stop_fans).id == "stop-fans");
    CHECK(effort_of(RemedyKind::fit_damper).id == "fit-damper");
    CHECK(effort_of(RemedyKind::fit_regulator).id == "fit-regulator");
}

TEST_CASE("a change keeps the mouth where it is unless it raises it", "[improve]") {
    const Installation in = example("village-hall");
    const auto present = resolve(in);
    REQUIRE(present.has_value());
    for (const Remedy& remedy : possible_remedies(in, *present)) {
        const auto changed = apply(remedy, in);
        REQUIRE(changed.has_value());
        const auto resolved = resolve(*changed);
        CAPTURE(remedy.what);
        REQUIRE(resolved.has_value());
        const double raised = remedy.kind == RemedyKind::raise_top ? remedy.amount : 0.0;
        CHECK(std::abs(resolved->total_rise_m() - present->total_rise_m() - raised) < 1e-9);
        CHECK(apply(remedy, *changed).has_value()
              == (remedy.kind == RemedyKind::raise_top || remedy.kind == RemedyKind::shorten_level
                  || remedy.kind == RemedyKind::enclose_outside));
    }
}
