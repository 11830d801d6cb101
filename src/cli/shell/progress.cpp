#include "progress.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <ostream>
#include <string>

namespace fluewright::cli {
namespace {

using namespace std::chrono_literals;

constexpr auto first_after = 1s;
constexpr auto again_after = 200ms;
constexpr int bar_width = 24;

std::string bar(double share) {
    const auto full = static_cast<std::size_t>(share * bar_width);
    return '[' + std::string(full, '#') + std::string(bar_width - full, '.') + ']';
}

std::string time_left(double seconds) {
    const long whole = std::max(0L, std::lround(seconds));
    return whole >= 3600 ? fmt::format("{} h {:02} min", whole / 3600, whole / 60 % 60)
                         : fmt::format("{} min {:02} s", whole / 60, whole % 60);
}

} // namespace

Progress::Progress(std::ostream& terminal, bool shown)
    : terminal_(&terminal), shown_(shown), start_(std::chrono::steady_clock::now()),
      next_(start_ + first_after) {}

double Progress::seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
}

void Progress::tell(std::size_t count, std::optional<double> share) {
    if (!shown_ || std::chrono::steady_clock::now() < next_) {
        return;
    }
    next_ = std::chrono::steady_clock::now() + again_after;
    drawn_ = true;
    const double elapsed = seconds();
    std::string line = fmt::format(
        "\r\x1b[K{} done, {:.0f} a second", count, static_cast<double>(count) / elapsed);
    if (share && *share > 0.0) {
        line += fmt::format(" {} {:.0f} %, {} left",
                            bar(*share),
                            100.0 * *share,
                            time_left(elapsed / *share - elapsed));
    }
    *terminal_ << line << std::flush;
}

std::function<void(std::size_t, std::size_t)> Progress::teller() {
    return [this](std::size_t done, std::size_t all) {
        tell(done, static_cast<double>(done) / static_cast<double>(all));
    };
}

void Progress::clear() {
    if (drawn_) {
        *terminal_ << "\r\x1b[K" << std::flush;
        drawn_ = false;
    }
}

} // namespace fluewright::cli
