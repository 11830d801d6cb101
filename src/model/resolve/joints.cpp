#include "fluewright/physics/openings.hpp"
#include "resolving.hpp"

#include <algorithm>
#include <cctype>
#include <string>

namespace fluewright::resolving {
namespace {

/// Fit of the joints from here on: carried from part to part.
struct Fit {
    double gap_m{};       ///< of the slit
    double per_wall_m2{}; ///< leakage area per inner area of wall, of a tightness class
};

/// N1: rate and test pressure out of the catalog.
double class_area(const Draft& draft, JointFit fit, const std::string& pointer) {
    std::string id{name(fit)};
    id[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(id[0])));
    const catalog::Default& rate = catalog::default_of("tightness_" + id + "_rate_m_s");
    const catalog::Default& test = catalog::default_of("tightness_" + id + "_test_pa");
    draft.assume(pointer,
                 "test pressure of tightness class " + std::string{name(fit)},
                 Kind::pressure,
                 test.value,
                 test.source,
                 test.mark);
    return openings::area_per_wall(rate.value, test.value);
}

void take_over(const Draft& draft, const Part& part, const std::string& pointer, Fit& fit) {
    if (part.joint_gap_m) {
        fit = {.gap_m = *part.joint_gap_m, .per_wall_m2 = 0.0};
    } else if (part.joint && is_tightness_class(*part.joint)) {
        fit = {.gap_m = 0.0, .per_wall_m2 = class_area(draft, *part.joint, pointer + "/joint")};
    } else if (part.joint) {
        const catalog::Default& row =
            catalog::default_of("joint_gap_" + std::string{name(*part.joint)} + "_m");
        draft.assume(pointer + "/joint_gap",
                     "slit all round a joint that is " + std::string{name(*part.joint)},
                     Kind::length,
                     row.value,
                     row.source,
                     row.mark);
        fit = {.gap_m = row.value, .per_wall_m2 = 0.0};
    }
}

void regulator(const Draft& draft, const Part& part, const std::string& pointer, Section& s) {
    s.opens_above_pa = draft.value_or_default(part.setting_pa,
                                              pointer + "/setting",
                                              "draft at which the regulator begins to open",
                                              Kind::pressure,
                                              "regulator_setting_pa");
    const catalog::Default& span = catalog::default_of("regulator_span_pa");
    draft.assume(pointer,
                 "further draft until the regulator is wide open",
                 Kind::pressure,
                 span.value,
                 span.source,
                 span.mark);
    s.opens_over_pa = span.value;
    s.opening_m2 = s.area_m2;
    if (part.opening_diameter_m) {
        s.opening_m2 = constants::pi / 4.0 * *part.opening_diameter_m * *part.opening_diameter_m;
    }
}

void hood(const Draft& draft, const Part& part, const std::string& pointer, Section& s) {
    s.opening_m2 = part.open_area_m2.value_or(s.area_m2);
    if (!part.open_area_m2) {
        draft.assume(pointer + "/open_area",
                     "opening of the draft hood: the area of the flue",
                     Kind::area,
                     s.area_m2,
                     "judgement",
                     "judgement");
    }
}

} // namespace

void joints(const Draft& draft) {
    const auto& parts = draft.written.run;
    Fit fit;
    std::size_t section = 0;
    auto& sections = draft.made.sections;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string pointer = "/run/" + std::to_string(i);
        take_over(draft, parts[i], pointer, fit);
        const auto belongs = [&](const Section& s) { return s.part == static_cast<int>(i); };
        while (section < sections.size() && !belongs(sections[section])) {
            ++section;
        }
        if (section == sections.size()) {
            return;
        }
        // The joint is at the lower end of the part, so at its first section; a tightness class
        // speaks of walls, and its leak is taken to be there too.
        Section& first = sections[section];
        double wall_m2 = 0.0;
        for (std::size_t j = section; j < sections.size() && belongs(sections[j]); ++j) {
            wall_m2 += sections[j].perimeter_m * sections[j].length_m;
        }
        first.joint_leak_m2 = fit.gap_m * first.perimeter_m + fit.per_wall_m2 * wall_m2;
        if (parts[i].leakage_area_m2) {
            first.joint_leak_m2 = *parts[i].leakage_area_m2;
        }
        if (parts[i].part == PartKind::draft_regulator) {
            regulator(draft, parts[i], pointer, first);
        } else if (parts[i].part == PartKind::draft_hood) {
            hood(draft, parts[i], pointer, first);
        }
    }
    const bool said = std::any_of(parts.begin(), parts.end(), [](const Part& p) {
        return p.joint || p.joint_gap_m || p.leakage_area_m2;
    });
    if (!said) {
        draft.assume_word(
            "/run/0/joint", "fit of the joints", "sealed: no leak", "judgement", "judgement");
    }
}

} // namespace fluewright::resolving
