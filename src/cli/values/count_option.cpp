#include "count_option.hpp"

#include <algorithm>
#include <charconv>
#include <fmt/core.h>
#include <limits>
#include <thread>

namespace fluewright::cli {

Result<std::uint64_t, std::string> read_whole(std::string_view text, const CountOption& info) {
    std::uint64_t count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc{} || end != text.data() + text.size() || count < info.least
        || count > info.most) {
        return Failure{fmt::format("`{}` does not do for {}; write a whole number from {} to {}",
                                   text,
                                   info.option.name,
                                   info.least,
                                   info.most)};
    }
    return count;
}

Result<std::uint64_t, std::string> read_count(const Context& context, const CountOption& info) {
    const std::string_view text = context.arguments.value(info.option);
    return text.empty() ? Result<std::uint64_t, std::string>{info.usual} : read_whole(text, info);
}

Result<std::uint64_t, std::string> read_seed(const Context& context) {
    return read_count(context,
                      {.option = option::seed,
                       .least = 0,
                       .most = std::numeric_limits<std::uint64_t>::max(),
                       .usual = 1});
}

Result<unsigned, std::string> read_jobs(const Context& context) {
    constexpr std::uint64_t most_jobs = 1024;
    const auto jobs = read_count(context,
                                 {.option = option::jobs,
                                  .least = 1,
                                  .most = most_jobs,
                                  .usual = std::max(1U, std::thread::hardware_concurrency())});
    if (!jobs) {
        return Failure{jobs.error()};
    }
    return static_cast<unsigned>(*jobs);
}

} // namespace fluewright::cli
