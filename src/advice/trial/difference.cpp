#include "fluewright/advice/trial/difference.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <optional>

namespace fluewright {
namespace {

constexpr std::string_view water = "wall-below-dew-point";
constexpr std::string_view acid = "wall-below-acid-dew-point";
constexpr std::string_view creosote = "wall-below-creosote-threshold";

/// Which finding after the change answers to each before it; none: cleared.
using Partners = std::vector<std::optional<std::size_t>>;

template <class Same>
void pair_up(const Findings& before,
             const Findings& after,
             const Same& same,
             Partners& partners,
             std::vector<bool>& taken) {
    for (std::size_t i = 0; i < before.size(); ++i) {
        for (std::size_t j = 0; j < after.size() && !partners[i]; ++j) {
            if (!taken[j] && before[i].matter == after[j].matter && same(before[i], after[j])) {
                partners[i] = j;
                taken[j] = true;
            }
        }
    }
}

void compare_findings(const Findings& before, const Findings& after, Difference& made) {
    Partners partners(before.size());
    std::vector<bool> taken(after.size());
    pair_up(
        before,
        after,
        [](const Finding& a, const Finding& b) { return a.place == b.place; },
        partners,
        taken);
    pair_up(
        before, after, [](const Finding&, const Finding&) { return true; }, partners, taken);
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (!partners[i]) {
            made.cleared.push_back(before[i]);
            continue;
        }
        const Finding& now = after[*partners[i]];
        constexpr double noise = 1e-9;
        if (now.weight > before[i].weight + noise) {
            made.worse.push_back({before[i], now});
        } else if (now.weight < before[i].weight - noise) {
            made.better.push_back({before[i], now});
        }
    }
    for (std::size_t j = 0; j < after.size(); ++j) {
        if (!taken[j]) {
            made.raised.push_back(after[j]);
        }
    }
}

void compare_states(const Assessment& before, const Assessment& after, Difference& made) {
    const auto& old_states = before.solution.states;
    for (std::size_t j = 0; j < after.solution.states.size(); ++j) {
        const StateResult& state = after.solution.states[j];
        const std::string& weather = after.installation.weathers[state.weather].name;
        for (std::size_t i = 0; i < old_states.size(); ++i) {
            if (old_states[i].kind == state.kind
                && before.installation.weathers[old_states[i].weather].name == weather) {
                made.states.push_back(
                    {.before = i,
                     .after = j,
                     .spare_before = relative_spare(before.verdicts[i], old_states[i]),
                     .spare_after = relative_spare(after.verdicts[j], state)});
                break;
            }
        }
    }
}

} // namespace

Difference difference(const Assessment& before, const Assessment& after) {
    Difference made;
    compare_findings(before.findings, after.findings, made);
    compare_states(before, after, made);
    return made;
}

bool is_hidden_by_water(const Matter& matter, const Findings& findings) {
    return (matter.id == acid || matter.id == creosote)
           && std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
                  return finding.matter->id == water;
              });
}

std::vector<const Matter*> gone(const Findings& before, const Findings& after) {
    std::vector<const Matter*> list;
    for (const Finding& finding : before) {
        const bool still = std::any_of(after.begin(), after.end(), [&](const Finding& other) {
            return other.matter == finding.matter;
        });
        const bool hidden = is_hidden_by_water(*finding.matter, after)
                            && !is_hidden_by_water(*finding.matter, before);
        if (!still && !hidden
            && std::find(list.begin(), list.end(), finding.matter) == list.end()) {
            list.push_back(finding.matter);
        }
    }
    return list;
}

std::vector<const Matter*> raised_by(const Assessment& before, const Assessment& after) {
    std::vector<const Matter*> raised = gone(after.findings, before.findings);
    std::erase_if(
        raised, [&](const Matter* matter) { return is_hidden_by_water(*matter, before.findings); });
    Difference made;
    compare_states(before, after, made);
    constexpr double noise = 1e-6;
    const bool any_worse =
        made.states.size() < before.solution.states.size()
        || std::any_of(made.states.begin(), made.states.end(), [](const StateChange& change) {
               return change.spare_after < change.spare_before - noise;
           });
    if (!any_worse) {
        std::erase_if(raised, [](const Matter* matter) { return is_in_the_states(*matter); });
    }
    return raised;
}

std::optional<double> weight_of(const Findings& findings, const Matter* matter) {
    std::optional<double> weight;
    for (const Finding& finding : findings) {
        const bool is_wet = finding.matter->id == water;
        if (finding.matter == matter || (is_wet && matter->id == acid)) {
            weight = std::max(weight.value_or(finding.weight), finding.weight);
        } else if (is_wet && matter->id == creosote && finding.figure) {
            const double below_k =
                catalog::default_of(DefaultId::creosote_threshold_k).value - *finding.figure;
            weight = std::max(weight.value_or(below_k / 100.0), below_k / 100.0);
        }
    }
    return weight;
}

} // namespace fluewright
