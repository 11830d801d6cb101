#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace fluewright::cli {

/// An open file of the system, closed when it goes.
class Descriptor {
public:
    Descriptor() = default;

    explicit Descriptor(int number) : number_(number) {}

    ~Descriptor();

    Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}

    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }

    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    [[nodiscard]] int number() const { return number_; }

    [[nodiscard]] bool is_open() const { return number_ >= 0; }

    /// All of the text; false when the system would not take it, errno says why.
    [[nodiscard]] bool write(std::string_view text) const;

    /// False when what was written before did not arrive.
    [[nodiscard]] bool close();

private:
    int number_{-1};
};

/// Waits until there is something to read, or the end of it, no longer than a tenth of a second at
/// a time: a signal may reach any thread, and a read that waits would not be broken off by it.
/// False when `stop` says so; without `stop` it does not wait.
[[nodiscard]] bool wait_for_input(int descriptor, bool (*stop)());

/// What the system says went wrong last: "No space left on device".
[[nodiscard]] std::string system_reason();

} // namespace fluewright::cli
