#include "descriptor.hpp"

#include <cerrno>
#include <poll.h>
#include <system_error>
#include <unistd.h>

namespace fluewright::cli {

Descriptor::~Descriptor() {
    if (number_ >= 0) {
        ::close(number_);
    }
}

bool Descriptor::write(std::string_view text) const {
    while (!text.empty()) {
        const ssize_t count = ::write(number_, text.data(), text.size());
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count <= 0) {
            return false;
        }
        text.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
}

bool Descriptor::close() {
    return ::close(std::exchange(number_, -1)) == 0;
}

bool wait_for_input(int descriptor, bool (*stop)()) {
    constexpr int look_again_ms = 100;
    constexpr int until_it_comes = -1;
    while (stop == nullptr || !stop()) {
        pollfd input{.fd = descriptor, .events = POLLIN, .revents = 0};
        const int ready = ::poll(&input, 1, stop != nullptr ? look_again_ms : until_it_comes);
        if (ready > 0 || (ready < 0 && errno != EINTR)) {
            return true; // what is wrong, reading will tell
        }
    }
    return false;
}

std::string system_reason() {
    return errno != 0 ? std::generic_category().message(errno) : "unknown reason";
}

} // namespace fluewright::cli
