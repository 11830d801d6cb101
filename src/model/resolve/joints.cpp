#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/physics/openings.hpp"
#include "resolving.hpp"

#include <algorithm>
#include <string>

namespace fluewright::resolving {
namespace {

/// Fit of the joints from here on: carried from part to part.
struct Fit {
    double gap_m{};       ///< of the slit
    double per_wall_m2{}; ///< leakage area per inner area of wall, of a tightness class
};

/// The slit all round a joint of that fit, or rate and test pressure of a tightness class.
struct FitRows {
    DefaultId slit_or_rate;
    DefaultId test_of_class;
};

FitRows rows_of(JointFit fit) {
    switch (fit) {
    case JointFit::sealed:
        return {DefaultId::joint_gap_sealed_m, {}};
    case JointFit::tight:
        return {DefaultId::joint_gap_tight_m, {}};
    case JointFit::ordinary:
        return {DefaultId::joint_gap_ordinary_m, {}};
    case JointFit::loose:
        return {DefaultId::joint_gap_loose_m, {}};
    case JointFit::n1:
        return {DefaultId::tightness_n1_rate_m_s, DefaultId::tightness_n1_test_pa};
    case JointFit::n2:
        return {DefaultId::tightness_n2_rate_m_s, DefaultId::tightness_n2_test_pa};
    case JointFit::p1:
        return {DefaultId::tightness_p1_rate_m_s, DefaultId::tightness_p1_test_pa};
    case JointFit::p2:
        return {DefaultId::tightness_p2_rate_m_s, DefaultId::tightness_p2_test_pa};
    case JointFit::h1:
        return {DefaultId::tightness_h1_rate_m_s, DefaultId::tightness_h1_test_pa};
    }
    return {};
}

double class_area(const CaseWork& work, JointFit fit, const std::string& pointer) {
    const FitRows rows = rows_of(fit);
    const catalog::Default& rate = catalog::default_of(rows.slit_or_rate);
    const catalog::Default& test = catalog::default_of(rows.test_of_class);
    work.assume(pointer,
                "test pressure of tightness class " + std::string{name(fit)},
                Kind::pressure,
                test.value,
                test.source,
                test.mark);
    return openings::area_per_wall(rate.value, test.value);
}

void take_over(const CaseWork& work, const Part& part, const std::string& pointer, Fit& fit) {
    if (part.joint_gap_m) {
        fit = {.gap_m = *part.joint_gap_m, .per_wall_m2 = 0.0};
    } else if (part.joint && is_tightness_class(*part.joint)) {
        fit = {.gap_m = 0.0, .per_wall_m2 = class_area(work, *part.joint, pointer + "/joint")};
    } else if (part.joint) {
        const catalog::Default& row = catalog::default_of(rows_of(*part.joint).slit_or_rate);
        work.assume(pointer + "/joint",
                    "slit all round a joint that is " + std::string{name(*part.joint)},
                    Kind::length,
                    row.value,
                    row.source,
                    row.mark);
        fit = {.gap_m = row.value, .per_wall_m2 = 0.0};
    }
}

void regulator(const CaseWork& work, const Part& part, const std::string& pointer, Section& s) {
    s.opens_above_pa = work.value_or_default(part.setting_pa,
                                             pointer + "/setting",
                                             "draft at which the regulator begins to open",
                                             Kind::pressure,
                                             DefaultId::regulator_setting_pa);
    const catalog::Default& span = catalog::default_of(DefaultId::regulator_span_pa);
    work.assume(pointer,
                "further draft until the regulator is wide open",
                Kind::pressure,
                span.value,
                span.source,
                span.mark);
    s.opens_over_pa = span.value;
    s.opening_m2 = s.area_m2;
    if (part.opening_diameter_m) {
        s.opening_m2 = circle_area_m2(*part.opening_diameter_m);
    }
}

void hood(const CaseWork& work, const Part& part, const std::string& pointer, Section& s) {
    s.opening_m2 = part.open_area_m2.value_or(s.area_m2);
    if (!part.open_area_m2) {
        work.assume(pointer + "/open_area",
                    "opening of the draft hood: the area of the flue",
                    Kind::area,
                    s.area_m2,
                    "judgement",
                    "judgement");
    }
}

} // namespace

void joints(const CaseWork& work) {
    const auto& parts = work.written.run;
    Fit fit;
    std::size_t section = 0;
    auto& sections = work.made.sections;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string pointer = "/run/" + std::to_string(i);
        take_over(work, parts[i], pointer, fit);
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
        if (!work.made.run.parts[i].bare_end()) {
            first.joint_leak_m2 = fit.gap_m * first.perimeter_m + fit.per_wall_m2 * wall_m2;
        }
        if (parts[i].leakage_area_m2) {
            first.joint_leak_m2 = *parts[i].leakage_area_m2;
        }
        if (parts[i].part == PartKind::draft_regulator) {
            regulator(work, parts[i], pointer, first);
        } else if (parts[i].part == PartKind::draft_hood) {
            hood(work, parts[i], pointer, first);
        }
    }
    const bool said = std::any_of(parts.begin(), parts.end(), [](const Part& p) {
        return p.joint || p.joint_gap_m || p.leakage_area_m2;
    });
    if (!said) {
        work.assume("/run/0/joint_gap",
                    "slit all round every joint: sealed, no leak",
                    Kind::length,
                    0.0,
                    "judgement",
                    "judgement");
    }
}

} // namespace fluewright::resolving
