#include "engine.hpp"

#include "fluewright/advice/score.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "seen/too_much.hpp"
#include "seen/untroubled.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace fluewright::diagnosis {
namespace {

constexpr std::size_t single_sizes = 10;
constexpr std::size_t leak_sizes = 6; ///< with leaks every flow is a search
constexpr std::size_t pair_sizes = 5;
constexpr std::size_t paired_causes = 3;

/// A hypothesis e^12, or a hundred thousand times, behind the best is out of the running.
constexpr double hopeless_log = 12.0;

/// How much likelier a run of which nobody complains is sound than one of which somebody does, and
/// how much less its flaws matter; judgement.
constexpr double untroubled_times = 5.0;

/// A glaring flaw of the design weighs as much as several hidden causes, which nobody has seen; the
/// slightest hardly counts; judgement.
constexpr double flaw_weight = 4.0;
constexpr double slightest_flaw = 0.03;

/// A second cause must matter before its pairs are worth their time.
constexpr double least_row_for_pair = 1e-4;

bool can_size(const Cause& cause, const Case& c, double size) {
    return id_of(cause) != CauseId::wet_wood || size > c.appliance.moisture + 0.03;
}

} // namespace

double on_scale(const Cause& cause, double size) {
    if (cause.scale == "log") {
        return std::log(size);
    }
    return cause.scale == "free" ? -std::log(1.0 - size) : size;
}

double from_scale(const Cause& cause, double scaled) {
    if (cause.scale == "log") {
        return std::exp(scaled);
    }
    return cause.scale == "free" ? 1.0 - std::exp(-scaled) : scaled;
}

std::vector<double> sizes_of(const Cause& cause, std::size_t count) {
    const double low = on_scale(cause, cause.size_low);
    const double step = (on_scale(cause, cause.size_high) - low) / static_cast<double>(count);
    std::vector<double> sizes;
    for (std::size_t i = 0; i < count; ++i) {
        sizes.push_back(from_scale(cause, low + step * (static_cast<double>(i) + 0.5)));
    }
    return sizes;
}

double Posterior::of(std::size_t hypothesis) const {
    const auto& at = weight[hypothesis];
    return std::accumulate(at.begin(), at.end(), 0.0);
}

Engine::Engine(const Installation& written, const Case& resolved)
    : written_(written), resolved_(resolved) {
    add_singles();
}

void Engine::add(std::size_t row,
                 std::vector<CauseAt> causes,
                 double log_prior,
                 const FoundFlaw& flaw) {
    auto altered = alter(written_, resolved_, causes);
    if (!altered) {
        return;
    }
    altered->flaw = flaw.cause;
    altered->flaw_grade = flaw.grade;
    Hypothesis hypothesis;
    hypothesis.row = row;
    hypothesis.causes = std::move(causes);
    hypothesis.log_prior = log_prior;
    hypothesis.solver = std::make_unique<Solver>(std::move(*altered), grid_.factors);
    hypotheses_.push_back(std::move(hypothesis));
}

void Engine::add_row(std::vector<const Cause*> causes) {
    rows_.push_back({std::move(causes), nullptr});
}

void Engine::add_singles() {
    struct Candidate {
        const Cause* cause;
        std::vector<Place> places;
        std::vector<double> sizes;
    };

    // A run that falls short as described needs no hidden cause to be in trouble.
    const double sound_prior = cause_of(CauseId::nothing).prior;
    const double unhidden_prior =
        sound_prior + (score(resolved_).passes ? 0.0 : cause_of(CauseId::design_whole).prior);
    short_run_log_ = std::log(unhidden_prior / sound_prior);
    std::vector<Candidate> candidates;
    double sum = 0.0;
    for (const Cause& cause : causes()) {
        if (cause.kind == "none") {
            candidates.push_back({&cause, {}, {}});
            sum += unhidden_prior;
            continue;
        }
        Candidate candidate{&cause, places_of(cause, resolved_, written_.observed), {}};
        const std::size_t sizes = id_of(cause) == CauseId::leaky_joints ? leak_sizes : single_sizes;
        for (const double size : sizes_of(cause, sizes)) {
            if (can_size(cause, resolved_, size)) {
                candidate.sizes.push_back(size);
            }
        }
        if (cause.kind == "hidden" && !candidate.places.empty() && !candidate.sizes.empty()) {
            sum += cause.prior;
            candidates.push_back(std::move(candidate));
        }
    }
    for (const Candidate& candidate : candidates) {
        const std::size_t row = rows_.size();
        const double prior =
            (candidate.cause->kind == "none" ? unhidden_prior : candidate.cause->prior) / sum;
        row_prior_.push_back(prior);
        if (candidate.cause->kind == "none") {
            add_row({});
            add(row, {}, std::log(prior));
            continue;
        }
        add_row({candidate.cause});
        const auto points = candidate.places.size() * candidate.sizes.size();
        for (const Place& place : candidate.places) {
            for (const double size : candidate.sizes) {
                add(row,
                    {{candidate.cause, place, size}},
                    std::log(prior / static_cast<double>(points)));
            }
        }
    }
    singles_ = hypotheses_.size();
    add_flaws(1.0 / sum);
}

/// The run as the file describes it, each time with one of its flaws as the reason: the trade tells
/// of more troubles than the model computes.
void Engine::add_flaws(double unit_prior) {
    for (const FoundFlaw& flaw : flaws_of(written_, resolved_)) {
        const double weight = flaw_weight * (slightest_flaw + (1.0 - slightest_flaw) * flaw.grade);
        const double prior = weight * flaw.weight * flaw.cause->prior * unit_prior;
        add(rows_.size(), {}, std::log(prior), flaw);
        rows_.push_back({{}, flaw.cause});
        row_prior_.push_back(prior);
    }
}

std::size_t Engine::best_of(std::size_t row) const {
    std::size_t best = 0;
    double most = -1.0;
    for (std::size_t h = 0; h < singles_; ++h) {
        const double weight = posterior_.of(h);
        if (hypotheses_[h].row == row && weight > most) {
            most = weight;
            best = h;
        }
    }
    return best;
}

/// Each of the likeliest causes with each other, at the likeliest place of either.
void Engine::add_pairs() {
    std::vector<std::size_t> likeliest(row_prior_.size());
    std::iota(likeliest.begin(), likeliest.end(), std::size_t{0});
    std::stable_sort(likeliest.begin(), likeliest.end(), [&](std::size_t a, std::size_t b) {
        return posterior_.row[a] > posterior_.row[b];
    });
    std::erase_if(likeliest, [&](std::size_t row) {
        return rows_[row].causes.empty() || posterior_.row[row] < least_row_for_pair;
    });
    likeliest.resize(std::min(likeliest.size(), paired_causes));
    const double share = catalog::default_of(DefaultId::pair_of_causes_share).value;
    for (std::size_t i = 0; i < likeliest.size(); ++i) {
        for (std::size_t j = i + 1; j < likeliest.size(); ++j) {
            const std::size_t a = std::min(likeliest[i], likeliest[j]);
            const std::size_t b = std::max(likeliest[i], likeliest[j]);
            const CauseAt& first = hypotheses_[best_of(a)].causes.front();
            const CauseAt& second = hypotheses_[best_of(b)].causes.front();
            const std::vector<const Cause*> pair{first.cause, second.cause};
            const bool known = std::any_of(
                rows_.begin(), rows_.end(), [&](const Row& row) { return row.causes == pair; });
            if (known) {
                continue;
            }
            const std::size_t row = rows_.size();
            add_row(pair);
            const double log_prior = std::log(share * row_prior_[a] * row_prior_[b]
                                              / static_cast<double>(pair_sizes * pair_sizes));
            for (const double size_a : sizes_of(*first.cause, pair_sizes)) {
                for (const double size_b : sizes_of(*second.cause, pair_sizes)) {
                    if (can_size(*first.cause, resolved_, size_a)
                        && can_size(*second.cause, resolved_, size_b)) {
                        add(row,
                            {{first.cause, first.place, size_a},
                             {second.cause, second.place, size_b}},
                            log_prior);
                    }
                }
            }
        }
    }
}

std::array<double, heat_steps> Engine::figures(std::size_t index, const Evidence& evidence) {
    Hypothesis& hypothesis = hypotheses_[index];
    solve_for(evidence, resolved_, *hypothesis.solver, hypothesis.predictions);
    return figures_of(evidence, hypothesis.solver->altered(), hypothesis.predictions, grid_);
}

void Engine::fill_table(std::size_t first, std::size_t number, const Evidence& evidence) {
    LikelihoodTable& table = tables_[number];
    for (std::size_t h = first; h < hypotheses_.size(); ++h) {
        if (hypotheses_[h].hopeless) {
            continue;
        }
        const auto x = figures(h, evidence);
        for (std::size_t i = 0; i < heat_steps; ++i) {
            table[h][i] = likelihood(evidence, x[i], hypotheses_[h].solver->altered());
        }
    }
}

/// Most who ask have a complaint: the weights of the causes are those of troubled runs.
double Engine::log_prior_of(const Hypothesis& hypothesis) const {
    const bool is_flaw = rows_[hypothesis.row].flaw != nullptr;
    const double times_log = hypothesis.row == 0 ? soundness_log_ : is_flaw ? -soundness_log_ : 0.0;
    // No run has too much draft because it falls short of draft.
    const double of_short_run_log = hypothesis.row == 0 && too_much_ ? short_run_log_ : 0.0;
    return hypothesis.log_prior + times_log - of_short_run_log;
}

/// Marks what lies too far behind the best hypothesis by the evidence weighed so far.
void Engine::drop_hopeless(std::size_t first, const std::vector<std::size_t>& weighed) {
    std::vector<double> log_weight(hypotheses_.size());
    for (std::size_t h = first; h < hypotheses_.size(); ++h) {
        double greatest = -std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < heat_steps && !hypotheses_[h].hopeless; ++i) {
            double sum = std::log(grid_.weight[i]);
            for (const std::size_t e : weighed) {
                sum += std::log(tables_[e][h][i] + 1e-300);
            }
            greatest = std::max(greatest, sum);
        }
        log_weight[h] = log_prior_of(hypotheses_[h]) + greatest;
    }
    // Pairs are weighed after the single causes and compared with those.
    double best = first > 0 ? best_log_weight_ : -std::numeric_limits<double>::infinity();
    if (first == 0) {
        best = *std::max_element(log_weight.begin(), log_weight.end());
    }
    for (std::size_t h = first; h < hypotheses_.size(); ++h) {
        hypotheses_[h].hopeless = log_weight[h] < best - hopeless_log;
    }
    best_log_weight_ = best;
}

/// Weighs the hypotheses from `first` on, by the evidence that costs least first.
void Engine::weigh_from(std::size_t first, const std::vector<Evidence>& evidence) {
    std::vector<std::size_t> order(evidence.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto cost = [&](std::size_t e) {
        const auto list = needs(evidence[e], resolved_);
        const bool plain = list.size() == 1 && list.front().doing == Doing::high_fire;
        return plain ? std::size_t{1} : 2 * list.size();
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return cost(a) < cost(b);
    });
    for (std::size_t e = 0; e < evidence.size(); ++e) {
        tables_[e].resize(hypotheses_.size());
    }
    std::vector<std::size_t> weighed;
    for (const std::size_t e : order) {
        fill_table(first, e, evidence[e]);
        weighed.push_back(e);
        drop_hopeless(first, weighed);
    }
}

Posterior Engine::normalised(std::optional<std::size_t> left_out) const {
    Posterior posterior;
    posterior.weight.resize(hypotheses_.size());
    posterior.row.resize(rows_.size());
    double greatest = -std::numeric_limits<double>::infinity();
    for (std::size_t h = 0; h < hypotheses_.size(); ++h) {
        posterior.weight[h].fill(-std::numeric_limits<double>::infinity());
        for (std::size_t i = 0; i < heat_steps && !hypotheses_[h].hopeless; ++i) {
            double sum = log_prior_of(hypotheses_[h]) + std::log(grid_.weight[i]);
            for (std::size_t e = 0; e < tables_.size(); ++e) {
                sum += e == left_out ? 0.0 : std::log(tables_[e][h][i] + 1e-300);
            }
            posterior.weight[h][i] = sum;
            greatest = std::max(greatest, sum);
        }
    }
    double total = 0.0;
    for (auto& weights : posterior.weight) {
        for (double& weight : weights) {
            weight = std::exp(weight - greatest);
            total += weight;
        }
    }
    for (std::size_t h = 0; h < hypotheses_.size(); ++h) {
        for (double& weight : posterior.weight[h]) {
            weight /= total;
            posterior.row[hypotheses_[h].row] += weight;
        }
    }
    return posterior;
}

void Engine::weigh(const std::vector<Evidence>& evidence) {
    const bool untroubled = is_untroubled(evidence, resolved_.appliance);
    too_much_ = too_much_in(evidence, resolved_.appliance) != TooMuch::no;
    soundness_log_ = untroubled && !too_much_ ? std::log(untroubled_times) : 0.0;
    tables_.assign(evidence.size(), {});
    for (Hypothesis& hypothesis : hypotheses_) {
        hypothesis.hopeless = false;
    }
    weigh_from(0, evidence);
    posterior_ = normalised(std::nullopt);
    const std::size_t known = hypotheses_.size();
    add_pairs();
    weigh_from(known, evidence);
    posterior_ = normalised(std::nullopt);
}

Posterior Engine::without(std::size_t evidence) const {
    return normalised(evidence);
}

} // namespace fluewright::diagnosis
