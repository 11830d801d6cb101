#include "line_reader.hpp"

#include "cli/files/descriptor.hpp"

#include <algorithm>
#include <cerrno>
#include <istream>
#include <unistd.h>

namespace fluewright::cli {
namespace {

constexpr std::size_t block_bytes = 1U << 16U;

} // namespace

LineReader::LineReader(int descriptor, bool (*stop)())
    : read_block_([this, descriptor, stop](std::string& block) {
          for (;;) {
              if (!wait_for_input(descriptor, stop)) {
                  return Next::stopped;
              }
              block.resize(block_bytes);
              errno = 0;
              const ssize_t count = ::read(descriptor, block.data(), block.size());
              block.resize(static_cast<std::size_t>(std::max<ssize_t>(count, 0)));
              if (count > 0) {
                  return Next::line;
              }
              if (count == 0) {
                  return Next::end;
              }
              if (errno != EINTR && errno != EAGAIN) {
                  why_ = system_reason();
                  return Next::failed;
              }
          }
      }) {}

LineReader::LineReader(std::istream& in)
    : read_block_([this, &in](std::string& block) {
          block.resize(block_bytes);
          in.read(block.data(), static_cast<std::streamsize>(block.size()));
          block.resize(static_cast<std::size_t>(in.gcount()));
          if (in.bad()) {
              why_ = "the stream failed";
              return Next::failed;
          }
          return block.empty() ? Next::end : Next::line;
      }) {}

LineReader::Next LineReader::fill() {
    at_ = 0;
    block_.clear();
    return read_block_(block_);
}

LineReader::Next LineReader::next(std::string& line, std::size_t most_bytes) {
    line.clear();
    bool begun = false;
    for (;;) {
        if (at_ >= block_.size()) {
            const Next got = fill();
            if (got == Next::end && begun) {
                return Next::line;
            }
            if (got != Next::line) {
                return got;
            }
        }
        begun = true;
        const std::size_t end = std::min(block_.find('\n', at_), block_.size());
        line.append(block_, at_, std::min(end - at_, most_bytes - line.size()));
        at_ = end;
        if (end < block_.size()) {
            ++at_;
            return Next::line;
        }
    }
}

} // namespace fluewright::cli
