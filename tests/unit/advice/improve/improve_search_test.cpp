// The search of improve against trying everything, and what it says of its plans.
#include "catch.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "improved.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace fluewright;

TEST_CASE("the ranking and the front are those of brute force", "[improve][many]") {
    for (const std::string name : {"boat-shed", "toll-house", "village-hall"}) {
        CAPTURE(name);
        const Improvement made =
            improved(example(name), {.pairs = true, .most = 100000, .required = states_only});
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
            const auto assessed =
                assess(in_short(plan.changed), {.size_search = false, .required = states_only});
            REQUIRE(assessed.has_value());
            CHECK(assessed->works() == (plan.score.passes && plan.against.empty()));
        }
    }
}

TEST_CASE("the best plan and the front are those of trying everything", "[improve][many]") {
    for (const std::string name : {"boat-shed", "village-hall"}) {
        CAPTURE(name);
        const Installation in = example(name);
        const auto present = resolve(in);
        REQUIRE(present.has_value());

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
                const Score scored = score(*resolved, states_only);
                all.push_back({cost,
                               scored.least_spare,
                               scored.passes,
                               scored.greatest_over > std::max(
                                   0.0, score(*present, states_only).greatest_over + 0.02)});
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
        const Improvement made =
            improved(in, {.pairs = true, .most = 100000, .required = states_only});
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
        double least_cost = 1e9;
        const bool any_gentle = std::any_of(
            all.begin(), all.end(), [](const Tried& t) { return t.cures && !t.too_strong; });
        for (const Tried& t : all) {
            if (t.cures && (!t.too_strong || !any_gentle)) {
                least_cost = std::min(least_cost, t.cost);
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
            CHECK(made.plans.front().cost <= least_cost + 1e-9);
        }
    }
}

TEST_CASE("a change that breaks a rule of installation says so", "[improve]") {
    const auto only_bodies_speak_of = [](const Matter* matter) {
        return std::none_of(checks().begin(), checks().end(), [matter](const Check& check) {
            return check.matter == matter && check.basis != Basis::body;
        });
    };
    // A cap just high enough for its flue is too close over a wider one.
    Installation in = example("boat-shed");
    if (in.run.back().part != PartKind::cap) {
        in.run.emplace_back().part = PartKind::cap;
    }
    in.run.back().build = Build::plain;
    in.run.back().cap_gap_m = 0.15;
    const Improvement asked = improved(in, {.pairs = true, .most = 1000, .rules = "us"});
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

TEST_CASE("no run is solved twice", "[improve][many]") {
    for (const std::string name : {"boat-shed", "village-hall"}) {
        const Improvement made =
            improved(example(name), {.pairs = true, .most = 100000, .required = states_only});
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
    CHECK(catalog::remedy_efforts().size() == static_cast<std::size_t>(RemedyKind::fit_insert) + 1);
    CHECK(effort_of(RemedyKind::open_damper).id == "open-damper");
    CHECK(effort_of(RemedyKind::give_slope).id == "give-slope");
    CHECK(effort_of(RemedyKind::raise_top).id == "raise-top");
    CHECK(effort_of(RemedyKind::seal_joints).id == "seal-joints");
    CHECK(effort_of(RemedyKind::stop_fans).id == "stop-fans");
    CHECK(effort_of(RemedyKind::fit_damper).id == "fit-damper");
    CHECK(effort_of(RemedyKind::fit_regulator).id == "fit-regulator");
}

TEST_CASE("a change keeps the chimney top where it is unless it raises it", "[improve]") {
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

TEST_CASE("a run that passes with a clogged cap is not left alone", "[improve]") {
    Installation in = example("bindery");
    in.appliance.draft_greatest_pa = 40.0;
    Part& cap = in.run.back();
    REQUIRE(cap.part == PartKind::cap);
    cap.mesh_m = 0.012;
    std::size_t short_doors = 0;
    cap.blocked = 0.8;
    in.appliance.door.width_m = 0.5;
    for (const double height_m : {0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5}) {
        in.appliance.door.height_m = height_m;
        const Improvement made = improved(in, {});
        CAPTURE(height_m, made.sentence);
        const HarmVerdict& door = made.present.verdict.of(Harm::reloading);
        if (door.outcome == HarmOutcome::falls_short && !door.counts) {
            CHECK(made.sentence.find("Leave it alone") == std::string::npos);
            REQUIRE(!made.plans.empty());
            ++short_doors;
        }
    }
    CHECK(short_doors > 0);
}
