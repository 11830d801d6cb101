#pragma once

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>

namespace fluewright::cli {

/// The lines of a stream, one after another, in bounded memory.
class LineReader {
public:
    enum class Next {
        line,    ///< there was one
        end,     ///< the stream has ended
        failed,  ///< it could not be read any further: why()
        stopped, ///< whoever reads was asked to stop
    };

    /// Of an open file of the system, which stays the caller's. It is waited for no longer than a
    /// tenth of a second at a time, so that a producer that stalls, also within a line, does not
    /// keep the program from stopping when `stop` says so.
    LineReader(int descriptor, bool (*stop)());

    /// Of a stream of the program itself.
    explicit LineReader(std::istream& in);

    LineReader(const LineReader&) = delete;
    LineReader& operator=(const LineReader&) = delete;

    /// The next line without its end, never longer than `most_bytes`: what is over is read and
    /// left out, so that whoever takes a line of that length sees that it is too long. A last line
    /// without an end counts.
    [[nodiscard]] Next next(std::string& line, std::size_t most_bytes);

    [[nodiscard]] const std::string& why() const { return why_; }

private:
    [[nodiscard]] Next fill();

    std::function<Next(std::string&)> read_block_; ///< line: there is more in the block
    std::string block_;
    std::size_t at_{};
    std::string why_;
};

} // namespace fluewright::cli
