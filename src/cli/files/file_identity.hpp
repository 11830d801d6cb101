#pragma once

#include <set>
#include <string>
#include <sys/types.h>
#include <utility>

namespace fluewright::cli {

/// The files a command has read. One file has many names (other spellings, links of both kinds), so
/// it is known by what the system calls it: device and number.
class FilesRead {
public:
    /// Notes an open file; what is not a regular file cannot be lost by writing and is left out.
    void add(int descriptor);

    /// The file a path leads to, when it leads to one.
    void add(const std::string& path);

    /// Whether what a path leads to is one of them. False when it leads to nothing.
    [[nodiscard]] bool has(const std::string& path) const;

private:
    std::set<std::pair<dev_t, ino_t>> files_;
};

} // namespace fluewright::cli
