#pragma once

#include "fit.hpp"
#include "flaws/cures.hpp"

#include <map>
#include <memory>
#include <optional>

/// Bayes' rule over causes and their sizes, on a fixed grid.   [theory eq. 63]
namespace fluewright::diagnosis {

/// A row of the answer before the places and sizes are told apart: no cause, one, or two; or a flaw
/// of the design.
struct Row {
    std::vector<const Cause*> causes;
    const Cause* flaw{};
};

/// One point of the grid.
struct Hypothesis {
    std::size_t row{};
    std::vector<CauseAt> causes;
    double log_prior{};
    std::unique_ptr<Solver> solver;
    SolvedSituations predictions;
    bool hopeless{}; ///< so unlikely by part of the evidence that the rest is not looked at
};

/// Weight of each hypothesis at each heat of the fire; all together 1.
struct Posterior {
    std::vector<std::array<double, heat_steps>> weight;
    std::vector<double> row; ///< sums by row

    [[nodiscard]] double of(std::size_t hypothesis) const;
};

/// Likelihoods of one piece of evidence over the grid.
using LikelihoodTable = std::vector<std::array<double, heat_steps>>;

class Engine {
public:
    Engine(const Installation& written, const Case& resolved);

    /// Weighs the grid by all the evidence and adds pairs of the likeliest causes.
    void weigh(const std::vector<Evidence>& evidence);

    [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }

    [[nodiscard]] const std::vector<Hypothesis>& hypotheses() const { return hypotheses_; }

    [[nodiscard]] const Posterior& posterior() const { return posterior_; }

    /// By evidence; in the order given to weigh().
    [[nodiscard]] const std::vector<LikelihoodTable>& tables() const { return tables_; }

    /// The posterior with one piece of evidence left out.
    [[nodiscard]] Posterior without(std::size_t evidence) const;

    /// What evidence a hypothesis predicts, at every heat of the fire.
    [[nodiscard]] std::array<double, heat_steps> figures(std::size_t hypothesis,
                                                         const Evidence& evidence);

    [[nodiscard]] const Case& resolved() const { return resolved_; }

private:
    void add_row(std::vector<const Cause*> causes);
    void add_singles();
    void add_flaws(double unit_prior);
    void add_pairs();
    void
    add(std::size_t row, std::vector<CauseAt> causes, double log_prior, const FoundFlaw& flaw = {});
    void weigh_from(std::size_t first, const std::vector<Evidence>& evidence);
    void fill_table(std::size_t first, std::size_t number, const Evidence& evidence);
    [[nodiscard]] double log_prior_of(const Hypothesis& hypothesis) const;
    void drop_hopeless(std::size_t first, const std::vector<std::size_t>& weighed);
    [[nodiscard]] Posterior normalised(std::optional<std::size_t> left_out) const;
    [[nodiscard]] std::size_t best_of(std::size_t row) const;

    const Installation& written_;
    const Case& resolved_;
    HeatGrid grid_;
    std::vector<Row> rows_;
    std::vector<double> row_prior_;
    std::vector<Hypothesis> hypotheses_;
    std::size_t singles_{};
    double short_run_log_{};   ///< what a run that falls short adds to the weight of nothing hidden
    double soundness_log_{};   ///< what speaks for a sound run before its evidence is weighed
    bool too_much_{};          ///< what was seen comes of too much draft or air
    double best_log_weight_{}; ///< of the hypotheses weighed so far
    std::vector<LikelihoodTable> tables_;
    Posterior posterior_;
};

/// The sizes tried of a cause, from small to large.
[[nodiscard]] std::vector<double> sizes_of(const Cause& cause, std::size_t count);

/// Where a size lies on the scale on which sizes are evenly spaced.
[[nodiscard]] double on_scale(const Cause& cause, double size);
[[nodiscard]] double from_scale(const Cause& cause, double scaled);

} // namespace fluewright::diagnosis
