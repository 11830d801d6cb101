// Replays a corpus and texts like it: the fuzz test that runs with any compiler.
//   fuzz_replay ENTRY COUNT FILE...
#include "entries.hpp"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>

namespace {

std::string read_file(const char* path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace

int main(int argc, char** argv) {
    const fuzz::Entry* entry = argc > 3 ? fuzz::find_entry(argv[1]) : nullptr;
    if (entry == nullptr) {
        std::fputs("usage: fuzz_replay ENTRY COUNT FILE...\nentries:", stderr);
        for (const fuzz::Entry& one : fuzz::entries()) {
            std::fprintf(stderr, " %.*s", static_cast<int>(one.name.size()), one.name.data());
        }
        std::fputc('\n', stderr);
        return 2;
    }
    const std::uint64_t count = std::strtoull(argv[2], nullptr, 10);
    std::uint64_t seed = 20240229;
    for (int i = 3; i < argc; ++i) {
        const std::string text = read_file(argv[i]);
        entry->take(text);
        for (std::uint64_t k = 0; k < count; ++k) {
            entry->take(entry->change(text, ++seed));
        }
    }
    std::printf(
        "%d files, %llu changes of each\n", argc - 3, static_cast<unsigned long long>(count));
    return 0;
}
