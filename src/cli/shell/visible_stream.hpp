#pragma once

#include <iosfwd>
#include <streambuf>
#include <string>

namespace fluewright::cli {

/// Passes text on line by line, with what could steer a terminal escaped and a line nobody would
/// read to its end cut: complaints quote arguments, names of files and what stands in them.
class VisibleLines : public std::streambuf {
public:
    explicit VisibleLines(std::ostream& out) : out_(&out) {}

    ~VisibleLines() override;
    VisibleLines(const VisibleLines&) = delete;
    VisibleLines& operator=(const VisibleLines&) = delete;

protected:
    int_type overflow(int_type c) override;
    std::streamsize xsputn(const char* text, std::streamsize count) override;
    int sync() override;

private:
    void pass_on();

    std::ostream* out_;
    std::string line_;
};

} // namespace fluewright::cli
