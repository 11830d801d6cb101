#include "next_check.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace fluewright::diagnosis {
namespace {

constexpr std::size_t most_hypotheses = 120;
constexpr double enough_weight = 0.995;
constexpr std::size_t reading_steps = 11;

struct Weighted {
    std::size_t hypothesis;
    double weight;
};

/// The hypotheses that matter, with weights that sum to 1.
std::vector<Weighted> heavy(const Engine& engine) {
    std::vector<Weighted> list;
    for (std::size_t h = 0; h < engine.hypotheses().size(); ++h) {
        list.push_back({h, engine.posterior().of(h)});
    }
    std::stable_sort(list.begin(), list.end(), [](const Weighted& a, const Weighted& b) {
        return a.weight > b.weight;
    });
    double sum = 0.0;
    std::size_t count = 0;
    while (count < std::min(list.size(), most_hypotheses) && sum < enough_weight) {
        sum += list[count++].weight;
    }
    list.resize(count);
    for (Weighted& entry : list) {
        entry.weight /= sum;
    }
    return list;
}

double entropy_bits(const std::vector<double>& shares) {
    double bits = 0.0;
    for (const double share : shares) {
        bits -= share > 0.0 ? share * std::log2(share) : 0.0;
    }
    return bits;
}

/// What one check would say under each hypothesis that matters.
class Forecast {
public:
    Forecast(Engine& engine,
             const Installation& written,
             const Candidate& candidate,
             const std::vector<Weighted>& heavy)
        : engine_(engine), written_(written), candidate_(candidate), heavy_(heavy) {
        for (const Answer answer : answers_of(candidate)) {
            add_outcome(answered(candidate, answer));
        }
        if (candidate.answers == AnswerKind::quantity) {
            add_reading_outcomes();
        } else {
            find_figures();
        }
        find_shares();
    }

    /// Entropy over the rows before less that expected after.
    [[nodiscard]] double bits() const {
        const std::size_t rows = engine_.rows().size();
        std::vector<double> before(rows);
        for (const Weighted& entry : heavy_) {
            before[row_of(entry)] += entry.weight;
        }
        double after = 0.0;
        for (std::size_t o = 0; o < outcomes_.size(); ++o) {
            std::vector<double> joint(rows);
            double total = 0.0;
            for (std::size_t i = 0; i < heavy_.size(); ++i) {
                const double share = heavy_[i].weight * shares_[i][o];
                joint[row_of(heavy_[i])] += share;
                total += share;
            }
            for (double& share : joint) {
                share /= std::max(total, 1e-300);
            }
            after += total * entropy_bits(joint);
        }
        return std::max(0.0, entropy_bits(before) - after);
    }

    [[nodiscard]] Expected expected(std::size_t row) const {
        std::vector<double> sums(outcomes_.size());
        std::map<double, double> figures;
        double weight = 0.0;
        for (std::size_t i = 0; i < heavy_.size(); ++i) {
            if (row_of(heavy_[i]) != row) {
                continue;
            }
            weight += heavy_[i].weight;
            figures[mean_figure(i)] += heavy_[i].weight;
            for (std::size_t o = 0; o < outcomes_.size(); ++o) {
                sums[o] += heavy_[i].weight * shares_[i][o];
            }
        }
        const auto best =
            static_cast<std::size_t>(std::max_element(sums.begin(), sums.end()) - sums.begin());
        const auto below = [&](double share) {
            double sum = 0.0;
            for (const auto& [figure, of_it] : figures) {
                sum += of_it;
                if (sum >= share * weight) {
                    return figure;
                }
            }
            return figures.empty() ? 0.0 : figures.rbegin()->first;
        };
        return {.row = row,
                .x = below(0.5),
                .low = below(0.1),
                .high = below(0.9),
                .share = sums.front() / std::max(weight, 1e-300),
                .likeliest = outcomes_[best]};
    }

private:
    [[nodiscard]] std::size_t row_of(const Weighted& entry) const {
        return engine_.hypotheses()[entry.hypothesis].row;
    }

    void add_outcome(const Observation& seen) {
        outcomes_.push_back(evidence_of(seen, 0, written_, engine_.resolved()).front());
    }

    void find_figures() {
        for (const Weighted& entry : heavy_) {
            figures_.push_back(engine_.figures(entry.hypothesis, outcomes_.front()));
        }
    }

    [[nodiscard]] double mean_figure(std::size_t i) const {
        const auto& weights = engine_.posterior().weight[heavy_[i].hypothesis];
        double sum = 0.0;
        double norm = 0.0;
        for (std::size_t step = 0; step < heat_steps; ++step) {
            sum += weights[step] * figures_[i][step];
            norm += weights[step];
        }
        return norm > 0.0 ? sum / norm : 0.0;
    }

    /// Readings at even steps over what is predicted.
    void add_reading_outcomes() {
        add_outcome(answered(candidate_, engine_.resolved().room_temperature_k));
        find_figures();
        double low = 1e300;
        double high = -1e300;
        for (std::size_t i = 0; i < heavy_.size(); ++i) {
            const double x = mean_figure(i);
            Evidence e = outcomes_.front();
            e.spread = reading_spread(e.seen, x, engine_.resolved().room_temperature_k);
            const double reach =
                1.5
                * total_spread(e, x, engine_.hypotheses()[heavy_[i].hypothesis].solver->altered());
            low = std::min(low, x - reach);
            high = std::max(high, x + reach);
        }
        Evidence pattern = outcomes_.front();
        outcomes_.clear();
        for (std::size_t step = 0; step < reading_steps; ++step) {
            pattern.value = low
                            + (high - low) * (static_cast<double>(step) + 0.5)
                                  / static_cast<double>(reading_steps);
            pattern.spread =
                reading_spread(pattern.seen, pattern.value, engine_.resolved().room_temperature_k);
            outcomes_.push_back(pattern);
        }
    }

    void find_shares() {
        shares_.resize(heavy_.size(), std::vector<double>(outcomes_.size()));
        for (std::size_t i = 0; i < heavy_.size(); ++i) {
            const Hypothesis& hypothesis = engine_.hypotheses()[heavy_[i].hypothesis];
            const auto& weights = engine_.posterior().weight[heavy_[i].hypothesis];
            double total = 0.0;
            for (std::size_t o = 0; o < outcomes_.size(); ++o) {
                for (std::size_t step = 0; step < heat_steps; ++step) {
                    shares_[i][o] +=
                        weights[step]
                        * likelihood(outcomes_[o], figures_[i][step], hypothesis.solver->altered());
                }
                total += shares_[i][o];
            }
            for (double& share : shares_[i]) {
                share /= std::max(total, 1e-300);
            }
        }
    }

    Engine& engine_;
    const Installation& written_;
    const Candidate& candidate_;
    const std::vector<Weighted>& heavy_;
    std::vector<Evidence> outcomes_;
    std::vector<std::array<double, heat_steps>> figures_;
    std::vector<std::vector<double>> shares_; ///< of each outcome under each hypothesis
};

/// The rows behind the leading ones that are worth a thought, by weight.
std::vector<std::size_t> rows_behind(const Engine& engine,
                                     const std::vector<Weighted>& list,
                                     const std::vector<std::size_t>& leading) {
    constexpr std::size_t most_rows = 8;
    constexpr double least_weight = 0.001;
    std::map<std::size_t, double> weights;
    for (const Weighted& entry : list) {
        weights[engine.hypotheses()[entry.hypothesis].row] += entry.weight;
    }
    std::vector<std::size_t> rows;
    for (const auto& [row, weight] : weights) {
        if (weight >= least_weight
            && std::find(leading.begin(), leading.end(), row) == leading.end()) {
            rows.push_back(row);
        }
    }
    std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) {
        return weights[a] > weights[b];
    });
    rows.resize(std::min(rows.size(), most_rows));
    return rows;
}

/// What costs a turn of the hand, or a lamp held to a cleanout, is done before anything is fetched,
/// if it tells anything.
bool is_free(const Ranked& entry, const Installation& written, double most_bits) {
    constexpr double turn_of_the_hand = 0.5;
    constexpr double worth_the_lamp = 0.1; // of what the most telling check tells
    const double least_bits = std::max(0.002, worth_the_lamp * most_bits);
    const bool cleanout = entry.candidate.blank.look == LookedAt::joints
                          && std::any_of(written.run.begin(),
                                         written.run.end(),
                                         [](const Part& part) { return part.cleanout == true; });
    return (cleanout && entry.bits >= least_bits)
           || entry.candidate.check->effort <= turn_of_the_hand;
}

} // namespace

std::vector<Ranked> rank_checks(Engine& engine,
                                const Installation& written,
                                std::vector<Candidate> candidates,
                                const std::vector<std::size_t>& leading) {
    const std::vector<Weighted> list = heavy(engine);
    const std::vector<std::size_t> behind = rows_behind(engine, list, leading);
    std::vector<Ranked> ranked;
    for (Candidate& candidate : candidates) {
        Ranked entry{.candidate = std::move(candidate),
                     .bits = 0.0,
                     .worth = 0.0,
                     .expected = {},
                     .further = {}};
        const Forecast forecast(engine, written, entry.candidate, list);
        entry.bits = forecast.bits();
        entry.worth = entry.bits / entry.candidate.check->effort;
        for (const std::size_t row : leading) {
            entry.expected.push_back(forecast.expected(row));
        }
        for (const std::size_t row : behind) {
            entry.further.push_back(forecast.expected(row));
        }
        ranked.push_back(std::move(entry));
    }
    double most_bits = 0.0;
    for (const Ranked& entry : ranked) {
        most_bits = std::max(most_bits, entry.bits);
    }
    std::stable_sort(ranked.begin(), ranked.end(), [&](const Ranked& a, const Ranked& b) {
        const bool a_free = is_free(a, written, most_bits);
        return a_free != is_free(b, written, most_bits) ? a_free : a.worth > b.worth;
    });
    return ranked;
}

} // namespace fluewright::diagnosis
