#include "outcome.hpp"
#include "wrong_figures.hpp"

#include <algorithm>

namespace fluewright::diagnosis {

std::string row_title(const Row& row) {
    std::string title{row.flaw != nullptr ? row.flaw->title : std::string_view{}};
    for (const Cause* cause : row.causes) {
        title += (title.empty() ? "" : " and ") + std::string{cause->title};
    }
    return title.empty() ? std::string{cause_of(CauseId::nothing).title} : title;
}

std::optional<std::size_t> OutcomeBuilder::row_that_explains() const {
    const std::vector<std::size_t> rows = leading(engine_.rows().size());
    const auto found = std::find_if(rows.begin(), rows.end(), [&](std::size_t row) {
        if (row != rows.front() && engine_.posterior().row[row] < least_to_judge) {
            return false;
        }
        for (std::size_t e = 0; e < evidence_.size(); ++e) {
            if (conflicts(row, e)) {
                return false;
            }
        }
        return true;
    });
    return found == rows.end() ? std::nullopt : std::optional{*found};
}

/// Where nothing explains all: the figures of the file, and the readings, that may be wrong. Of
/// readings those that the leading row does not account for, since each costs a diagnosis.
void OutcomeBuilder::doubt(Diagnosis& result) const {
    constexpr int most_doubted = 3;
    result.wrong_figures = wrong_figures(written_);
    int doubted = 0;
    for (std::size_t e = 0; e < evidence_.size() && doubted < most_doubted; ++e) {
        if (!evidence_[e].is_reading() || result.seen[e].fits || evidence_.size() == 1) {
            continue;
        }
        ++doubted;
        std::vector<Evidence> rest = evidence_;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(e));
        Engine engine(written_, resolved_);
        engine.weigh(rest);
        const OutcomeBuilder other(written_, resolved_, engine, rest);
        if (const auto row = other.row_that_explains()) {
            result.doubtful.push_back({e, row_title(engine.rows()[*row])});
        }
    }
}

} // namespace fluewright::diagnosis
