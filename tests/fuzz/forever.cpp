// Entry points of clang's coverage-guided fuzzer, for the entry FLUEWRIGHT_FUZZ_ENTRY.
#include "entries.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace {

const fuzz::Entry& entry() {
    static const fuzz::Entry& found = *fuzz::find_entry(FLUEWRIGHT_FUZZ_ENTRY);
    return found;
}

} // namespace

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    entry().take({reinterpret_cast<const char*>(data), size});
    return 0;
}

/// Half by what the fuzzer itself learns, half by what is known of the format.
extern "C" std::size_t
LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
    const bool whole = entry().name == "installation";
    if (!whole && seed % 2 == 0) {
        return LLVMFuzzerMutate(data, size, most);
    }
    const std::string changed = entry().change({reinterpret_cast<const char*>(data), size}, seed);
    const std::size_t length = std::min(changed.size(), most);
    std::copy_n(changed.begin(), length, reinterpret_cast<char*>(data));
    return length;
}
