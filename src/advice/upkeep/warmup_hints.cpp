#include "fluewright/advice/upkeep/warmup_hints.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/tar.hpp"
#include "fluewright/model/states/states.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// Of the heat that the gas gives to the run; less than that is not worth the work.   [judgement]
constexpr double much_heat = 0.2;

/// A flue this much wider than the collar is wide.   [judgement]
constexpr double wide_area = 1.4;

bool is_late(const std::optional<double>& from_s) {
    return !from_s || *from_s > catalog::default_of(DefaultId::warmup_long_s).value;
}

/// What would lessen the heat that a part gives to the air around.
std::optional<Quicker> against_loss(const Case& c, const Section& section) {
    if (section.zone != Zone::room) {
        return Quicker::insulate;
    }
    return c.walls[section.wall].kind == WallKind::single ? std::optional{Quicker::double_wall}
                                                          : std::nullopt;
}

struct Hints {
    const Case& c;
    const Warmup& course;
    std::vector<WarmupHint> list{};

    WarmupHint& hint(Quicker what, std::size_t section) {
        const auto known = std::find_if(
            list.begin(), list.end(), [what](const WarmupHint& h) { return h.what == what; });
        if (known != list.end()) {
            return *known;
        }
        return list.emplace_back(WarmupHint{.what = what, .section = section});
    }

    void add_idle(std::size_t weather) {
        const FlueModel model(c, surroundings_of(c, weather, Fire::out));
        const double idle_pa = solve_state(model, StateKind::idle, Detail::totals).draft_pa;
        if (idle_pa < 0.0) {
            list.push_back(
                {.what = is_fed_by_hand(c.appliance) ? Quicker::preheat : Quicker::room_air,
                 .idle_draft_pa = idle_pa});
        }
    }

    void add_width() {
        for (const WarmupPart& part : course.parts) {
            const double ratio = c.sections[part.section].area_m2 / c.appliance.outlet_area_m2;
            if (ratio > wide_area) {
                WarmupHint& wide = hint(Quicker::liner_to_size, part.section);
                wide.area_over_outlet = std::max(wide.area_over_outlet.value_or(0.0), ratio);
            }
        }
    }

    void add_heats() {
        std::vector<WarmupHint> before;
        std::swap(before, list);
        for (const WarmupPart& part : course.parts) {
            const Section& section = c.sections[part.section];
            if (c.walls[section.wall].kind == WallKind::masonry && part.kept_j() > 0.0) {
                WarmupHint& heavy = hint(Quicker::lighter_wall, part.section);
                heavy.kept_j = heavy.kept_j.value_or(0.0) + part.kept_j();
            }
            if (const auto what = against_loss(c, section); what && part.lost_j > 0.0) {
                WarmupHint& losing = hint(*what, part.section);
                losing.lost_j = losing.lost_j.value_or(0.0) + part.lost_j;
            }
        }
        const auto heat_j = [](const WarmupHint& h) {
            return h.kept_j.value_or(0.0) + h.lost_j.value_or(0.0);
        };
        const double least_j = much_heat * taken_while_lit_j(course);
        std::erase_if(list, [&](const WarmupHint& h) { return heat_j(h) < least_j; });
        std::stable_sort(list.begin(), list.end(), [&](const WarmupHint& a, const WarmupHint& b) {
            return heat_j(a) > heat_j(b);
        });
        list.insert(list.begin(), before.begin(), before.end());
    }
};

} // namespace

double taken_while_lit_j(const Warmup& course) {
    double taken_j = 0.0;
    for (const WarmupPart& part : course.parts) {
        taken_j += part.taken_j;
    }
    return taken_j;
}

bool is_slow(const Case& resolved, const Warmup& course) {
    const bool unclean = makes_tar(resolved.appliance) && is_late(course.clean_s);
    return is_late(course.draft_met.from_s)
           || (!course.parts.empty() && (is_late(course.dry_s) || unclean));
}

std::vector<WarmupHint>
warmup_hints(const Case& resolved, std::size_t weather, const Warmup& course) {
    if (!is_slow(resolved, course)) {
        return {};
    }
    Hints hints{resolved, course};
    hints.add_idle(weather);
    hints.add_width();
    hints.add_heats();
    if (hints.list.empty() && is_fed_by_hand(resolved.appliance)) {
        hints.list.push_back({.what = Quicker::more_fire});
    }
    return std::move(hints.list);
}

} // namespace fluewright
