#pragma once

#include "fluewright/advice/assessment.hpp"

#include <optional>
#include <string>
#include <vector>

/// Every trade size, and where asked for every height, against every state.
namespace fluewright {

struct SizeTableOptions {
    std::vector<double> heights_m;     ///< of the chimney top over the outlet; empty: as it stands
    bool separate{false};              ///< connector and chimney may differ
    std::optional<TradeSizes> sizes{}; ///< default: by the units of the file
    Required required{};
    std::string rules{};               ///< as in AssessOptions
    std::optional<UnitSystem> units{}; ///< default: those of the file
};

/// One choice of pipe and height.
struct SizeRow {
    std::string connector; ///< as the trade says it
    std::string chimney;   ///< the same where both are one
    double connector_m{};
    double chimney_m{};
    double height_m{};
    std::string clay_liner{};   ///< of a masonry flue still to be built; empty for pipe
    std::string_view liner{};   ///< wall of a round liner in the masonry that stands; empty: none
    double area_over_outlet{};  ///< the narrower of the two
    std::optional<Score> score; ///< empty where it cannot be built
    std::string ruled_out_by;   ///< a rule, a state, or a danger the present run has not
    std::string seldom_sold;    ///< which pipe of the run shops seldom stock in it; empty: none
    bool works{};               ///< what `check` says of the run with it
    bool against_rule{};        ///< a rule of the trade stands against it, however it draws
    bool present{};
    bool suggested{};

    [[nodiscard]] bool lines_masonry() const { return !liner.empty(); }
};

struct SizeTable {
    Case present;
    std::string present_pipe; ///< its trade name, or that there are several sizes
    double present_height_m{};
    bool separate{};
    bool several_heights{};
    double masonry_over_outlet{}; ///< area of the masonry that pipe leads into, over the outlet's
    bool masonry_too_wide{};      ///< that is more than the trade allows, whatever the pipe
    bool sweeping_cures{};        ///< the present run falls short, and passes once it is swept
    bool keeps_masonry{}; ///< a part of the run is masonry or rectangular and stays as it is
    bool
        varies_masonry{}; ///< there is no pipe to choose: the rows are clay liners and round liners
    std::string size_not_met;           ///< what is asked of its size and not met; empty: nothing
    std::vector<const Matter*> against; ///< against the present run, whatever its size
    std::vector<SizeRow> rows;
    std::optional<std::size_t> suggested; ///< index of the row
    std::string sentence;                 ///< the suggestion and why
    std::string not_decided; ///< fire_not_decided() of the present run; no size decides it
    bool leaves_open{};      ///< something that counts is not decided
};

/// Solves every size. Of those that no rule stands against, the present pipe is suggested where it
/// passes, else the smallest that does, at the height nearest to the present one. Faults: those of
/// resolve().
[[nodiscard]] Result<SizeTable, Faults> tabulate_sizes(const Installation& written,
                                                       const SizeTableOptions& options);

} // namespace fluewright
