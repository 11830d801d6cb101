#include "file_identity.hpp"

#include <sys/stat.h>

namespace fluewright::cli {

void FilesRead::add(int descriptor) {
    struct stat found {};

    if (::fstat(descriptor, &found) == 0 && S_ISREG(found.st_mode)) {
        files_.emplace(found.st_dev, found.st_ino);
    }
}

void FilesRead::add(const std::string& path) {
    struct stat found {};

    if (::stat(path.c_str(), &found) == 0 && S_ISREG(found.st_mode)) {
        files_.emplace(found.st_dev, found.st_ino);
    }
}

bool FilesRead::has(const std::string& path) const {
    struct stat found {};

    return ::stat(path.c_str(), &found) == 0 && files_.contains({found.st_dev, found.st_ino});
}

} // namespace fluewright::cli
