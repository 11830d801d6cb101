#pragma once

#include "cli/batch/partial_file.hpp"
#include "fluewright/io/batch/batch_row.hpp"

#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>

namespace fluewright::cli {

/// "12 installations: 8 pass, 3 fall short, 1 at fault".
[[nodiscard]] std::string
counted(const BatchProgress& all, const BatchProgress& before, double seconds);

/// Shares that pass by kind of harm, and what is found how often, for --summary.
class BatchTally {
public:
    void add(const BatchRow& row);
    void add(const BatchTally& other);

    /// Lines with their end; what is found by how many, the most first.
    [[nodiscard]] std::string text() const;

private:
    std::size_t computed_{};
    std::array<std::array<std::size_t, harm_outcome_count>, harm_count> outcomes_{};
    std::map<std::string_view, std::size_t> found_; ///< by id of the matter
};

} // namespace fluewright::cli
