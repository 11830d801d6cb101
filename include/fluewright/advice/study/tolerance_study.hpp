#pragma once

#include "fluewright/advice/assessment.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

/// What the spreads written behind values ("4.2 m ± 0.1 m") do to the verdict.
namespace fluewright {

/// One value of the file with a spread.
struct VariedInput {
    std::string pointer;
    double value{};
    double half_width{};
    Kind kind{};
};

/// One state that counts, over all runs.
struct StateSpread {
    std::size_t state{}; ///< index into Solution::states of the file as written
    Kind kind{Kind::pressure};
    double as_written{}; ///< spare with every value as written, as in StateVerdict
    double low{};        ///< 5 % of the runs have less to spare
    double median{};
    double high{};          ///< 5 % have more
    double passing_share{}; ///< of the runs: the probability that the state passes
    /// Of the runs: the state has no figures, as the run cannot vent the burn rate. They lie below
    /// all that have.
    double without_figures_share{};
    std::vector<double> first_order; ///< of each input: its share of the variance, by itself
};

struct ToleranceStudy {
    std::vector<VariedInput> inputs;
    std::vector<StateSpread> states;
    double working_share{}; ///< of the runs: what is required passes
    /// Of the runs, by kind of harm: nothing of it falls short.
    std::array<double, harm_count> sound_share{};
    std::size_t tightest{}; ///< index into `states`: passes least often, then has least to spare
    std::size_t runs{};     ///< computed
    std::size_t refused{};  ///< runs whose values together describe nothing that can be built
    std::optional<Fault> refusal; ///< the first of them
    std::uint64_t seed{};
};

struct ToleranceOptions {
    std::size_t runs{2000};
    std::uint64_t seed{1};
    unsigned jobs{1};
    /// Called now and then with the runs computed and those to compute; may be empty.
    std::function<void(std::size_t, std::size_t)> progress{};
};

/// Whether the file gives a spread to anything that decides a state (a reading under `observed` is
/// no part of the installation).
[[nodiscard]] bool has_tolerances(const Installation& written);

/// Solves and checks the installation with every value that has a spread moved anywhere within it,
/// all at once and independently: no value within the limits is likelier than another.
///
/// Source  JCGM 100:2008 (GUM) 4.3.7: where only limits are known, the distribution over them is
///         uniform   [gum-2008, from memory]
/// Notes   The same for the same seed, on one thread and on many. Nothing where every run is
///         refused; `assessment` is that of `written`.
/// [theory eq. 60]
[[nodiscard]] ToleranceStudy study_tolerances(const Installation& written,
                                              const Assessment& assessment,
                                              const ToleranceOptions& options);

} // namespace fluewright
