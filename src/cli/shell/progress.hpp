#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <iosfwd>
#include <optional>

namespace fluewright::cli {

/// One line on a terminal that tells how far a long command is; nothing in a pipe, nothing in the
/// first second.
class Progress {
public:
    Progress(std::ostream& terminal, bool shown);

    /// Tells the count, and the share of all when it is known; draws at most five times a second.
    void tell(std::size_t count, std::optional<double> share);

    /// The same as a function of what is done and of all there is, for a search to call. This
    /// object must outlive it.
    [[nodiscard]] std::function<void(std::size_t, std::size_t)> teller();

    /// Takes the line away.
    void clear();

    [[nodiscard]] double seconds() const;

private:
    std::ostream* terminal_;
    bool shown_;
    bool drawn_{};
    std::chrono::steady_clock::time_point start_;
    std::chrono::steady_clock::time_point next_;
};

} // namespace fluewright::cli
