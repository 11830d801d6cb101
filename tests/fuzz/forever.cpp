// Entry point of clang's coverage-guided fuzzer.
#include "one_input.hpp"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    take_one_input({reinterpret_cast<const char*>(data), size});
    return 0;
}
