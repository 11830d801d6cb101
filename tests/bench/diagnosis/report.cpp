#include "report.hpp"

#include "fluewright/model/fields/observed_words.hpp"
#include "preface.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace bench {
namespace {

constexpr std::size_t bins = 10;

struct Bin {
    std::size_t count{};
    double promised{};
    std::size_t kept{};
};

using Bins = std::array<Bin, bins>;

Bins bins_of(const Results& results, bool first_only) {
    Bins table{};
    for (const Scored& scored : results.scored) {
        for (std::size_t i = 0; i < scored.answers.size(); ++i) {
            if (first_only && i > 0) {
                break;
            }
            const GivenAnswer& answer = scored.answers[i];
            const auto bin =
                std::min(bins - 1, static_cast<std::size_t>(answer.probability * 10.0));
            table[bin].count += 1;
            table[bin].promised += answer.probability;
            table[bin].kept += answer.id == scored.truth ? 1U : 0U;
        }
    }
    return table;
}

double calibration_error(const Bins& table) {
    double off = 0.0;
    std::size_t count = 0;
    for (const Bin& bin : table) {
        off += std::abs(bin.promised - static_cast<double>(bin.kept));
        count += bin.count;
    }
    return off / static_cast<double>(std::max<std::size_t>(count, 1));
}

std::string bin_table(const Bins& table) {
    std::string text = "| probability given | answers | mean given | share true |\n"
                       "| --- | --- | --- | --- |\n";
    for (std::size_t i = 0; i < bins; ++i) {
        const Bin& bin = table[i];
        if (bin.count == 0) {
            continue;
        }
        const auto n = static_cast<double>(bin.count);
        text += fmt::format("| {} to {} % | {} | {:.0f} % | {:.0f} % |\n",
                            10 * i,
                            10 * (i + 1),
                            bin.count,
                            100.0 * bin.promised / n,
                            100.0 * static_cast<double>(bin.kept) / n);
    }
    return text;
}

double median(std::vector<double> values) {
    if (values.empty()) {
        return 0.0;
    }
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

bool hit(const Scored& scored, std::size_t count) {
    const auto end = scored.answers.begin()
                     + static_cast<std::ptrdiff_t>(std::min(count, scored.answers.size()));
    return std::any_of(scored.answers.begin(), end, [&](const GivenAnswer& answer) {
        return answer.id == scored.truth;
    });
}

std::string cause_table(const Results& results) {
    struct Tally {
        std::size_t cases{};
        std::size_t first{};
        std::size_t among_three{};
        std::vector<double> errors;
        std::size_t covered{};
        std::map<std::string, std::size_t> taken_for;
    };

    std::map<std::string, Tally> tallies;
    for (const Scored& scored : results.scored) {
        Tally& tally = tallies[scored.truth];
        ++tally.cases;
        tally.first += hit(scored, 1) ? 1U : 0U;
        tally.among_three += hit(scored, 3) ? 1U : 0U;
        if (scored.size_error >= 0.0) {
            tally.errors.push_back(scored.size_error);
            tally.covered += scored.size_covered ? 1U : 0U;
        }
        if (!hit(scored, 1)) {
            ++tally.taken_for[scored.answers.front().id];
        }
    }
    std::string text = "| cause planted | cases | first | among three | median error of the size | "
                       "size inside the 90 % range | else taken for |\n"
                       "| --- | --- | --- | --- | --- | --- | --- |\n";
    for (const auto& [cause, tally] : tallies) {
        std::string others;
        for (const auto& [other, count] : tally.taken_for) {
            others += fmt::format("{}{} {}", others.empty() ? "" : ", ", other, count);
        }
        text += fmt::format(
            "| {} | {} | {} | {} | {} | {} | {} |\n",
            cause,
            tally.cases,
            tally.first,
            tally.among_three,
            tally.errors.empty() ? std::string{"-"}
                                 : fmt::format("{:.0f} %", 100.0 * median(tally.errors)),
            tally.errors.empty() ? std::string{"-"}
                                 : fmt::format("{} of {}", tally.covered, tally.errors.size()),
            others);
    }
    return text;
}

struct WalkFigures {
    double checks{};
    double effort{};
    double found{};
};

WalkFigures figures_of(const std::vector<Walk>& walks) {
    WalkFigures figures;
    for (const Walk& walk : walks) {
        figures.checks += static_cast<double>(walk.checks);
        figures.effort += walk.effort;
        figures.found += walk.found ? 1.0 : 0.0;
    }
    const auto n = static_cast<double>(std::max<std::size_t>(walks.size(), 1));
    return {figures.checks / n, figures.effort / n, figures.found / n};
}

std::vector<double> checks_of(const std::vector<Walk>& walks) {
    std::vector<double> list;
    list.reserve(walks.size());
    for (const Walk& walk : walks) {
        list.push_back(static_cast<double>(walk.checks));
    }
    return list;
}

std::string walk_table(const Results& results) {
    std::string text = "| order | mean checks | median checks | mean effort | cause found |\n"
                       "| --- | --- | --- | --- | --- |\n";
    const auto row = [&](std::string_view order, const std::vector<Walk>& walks) {
        const WalkFigures f = figures_of(walks);
        text += fmt::format("| {} | {:.1f} | {:.0f} | {:.1f} | {:.0f} % |\n",
                            order,
                            f.checks,
                            median(checks_of(walks)),
                            f.effort,
                            100.0 * f.found);
    };
    row("as suggested", results.suggested);
    row("random", results.random);
    return text;
}

} // namespace

double top_share(const Results& results, std::size_t count) {
    const auto hits = std::count_if(results.scored.begin(),
                                    results.scored.end(),
                                    [&](const Scored& scored) { return hit(scored, count); });
    return static_cast<double>(hits)
           / static_cast<double>(std::max<std::size_t>(results.scored.size(), 1));
}

std::string report(const Results& results) {
    std::vector<double> errors;
    std::size_t covered = 0;
    for (const Scored& scored : results.scored) {
        if (scored.size_error >= 0.0) {
            errors.push_back(scored.size_error);
            covered += scored.size_covered ? 1U : 0U;
        }
    }
    const Bins first = bins_of(results, true);
    const Bins every = bins_of(results, false);
    std::string text{preface};
    text += "| figure | reached | aim |\n| --- | --- | --- |\n";
    text += fmt::format("| cases | {} | at least 300 |\n", results.scored.size());
    text += fmt::format("| true cause first | {:.1f} % | 75 % |\n", 100.0 * top_share(results, 1));
    text += fmt::format("| true cause among the first three | {:.1f} % | 93 % |\n",
                        100.0 * top_share(results, 3));
    text += fmt::format("| calibration error of the first answer | {:.3f} | 0.08 |\n",
                        calibration_error(first));
    text += fmt::format("| calibration error of all answers | {:.3f} | 0.08 |\n",
                        calibration_error(every));
    text += fmt::format("| median error of the fitted size | {:.0f} % of the size | none set |\n",
                        100.0 * median(errors));
    text += fmt::format("| true size inside the 90 % range | {:.0f} % | 90 % |\n",
                        100.0 * static_cast<double>(covered)
                            / static_cast<double>(std::max<std::size_t>(errors.size(), 1)));
    text += "\n### How far the probabilities can be trusted\n\nThe first answer of each case:\n\n";
    text += bin_table(first);
    text += "\nEvery answer given:\n\n" + bin_table(every);
    text += "\n### Cause by cause\n\n" + cause_table(results);
    if (!results.suggested.empty()) {
        text += fmt::format("\n### Following the suggested checks\n\n{} cases that begin with the "
                            "complaint alone, until the true cause has 80 %:\n\n",
                            results.suggested.size());
        text += walk_table(results);
    }
    return text;
}

fluewright::Reply reply_of(const fluewright::Observation& seen) {
    fluewright::Reply reply;
    for (const auto& value :
         {seen.draft_pa, seen.gas_temperature_k, seen.room_pressure_pa, seen.moisture}) {
        if (value) {
            reply.value = value;
        }
    }
    const auto flag = [&](const fluewright::Flag& given) {
        if (given) {
            reply.word = *given ? "yes" : "no";
        }
    };
    flag(seen.sluggish);
    flag(seen.roaring);
    flag(seen.drips);
    flag(seen.smell_when_idle);
    flag(seen.better_with_window_open);
    if (seen.smoke) {
        reply.word = *seen.smoke == fluewright::SmokePlace::none ? "no" : "yes";
    }
    if (seen.found) {
        reply.word = *seen.found == fluewright::FoundState::bad ? "yes" : "no";
    }
    if (seen.worse) {
        reply.word = name(*seen.worse);
    }
    if (seen.smoke_stick) {
        reply.word = name(*seen.smoke_stick);
    }
    return reply;
}

} // namespace bench
