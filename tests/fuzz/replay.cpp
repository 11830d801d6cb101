// Replays a corpus and its mutations: the fuzz test that runs with any compiler.
//   fuzz_replay COUNT FILE...
#include "one_input.hpp"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

namespace {

std::string read_file(const char* path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// Words that are near misses of what a file holds: more likely to get deep than random bytes.
const std::vector<std::string> snippets{"0",
                                        "-1",
                                        "1e308",
                                        "1e-308",
                                        "nan",
                                        "\"0 m\"",
                                        "\"-3 m\"",
                                        "\"1e9 m\"",
                                        "null",
                                        "true",
                                        "[]",
                                        "{}",
                                        "\"\"",
                                        "\"°C\"",
                                        "\xff\xfe",
                                        "\"6\"",
                                        "\"70 %\"",
                                        "\"100 m\"",
                                        "\"1 mm\"",
                                        "\"50 mm\"",
                                        "\"1 m\"",
                                        ",",
                                        "}",
                                        "\"up\"",
                                        "\"elbow\"",
                                        "\"cap\"",
                                        "\"outdoors\"",
                                        "\"1200 degC\"",
                                        "\"0.1 kg/h\"",
                                        "\"200 kg/h\"",
                                        "\"99 %\"",
                                        "//",
                                        "/*",
                                        "\"±\"",
                                        "\"20 degC ± 5 K\""};

std::string mutated(std::string text, std::mt19937_64& random) {
    const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    const std::size_t times = 1 + below(4);
    for (std::size_t i = 0; i < times && !text.empty(); ++i) {
        const std::size_t at = below(text.size());
        switch (below(6)) {
        case 0:
            text[at] = static_cast<char>(below(256));
            break;
        case 1:
            text.erase(at, 1 + below(12));
            break;
        case 2:
            text.insert(at, snippets[below(snippets.size())]);
            break;
        case 3:
            text.insert(at, text.substr(below(text.size()), below(40)));
            break;
        case 4: {
            // Another value in the place of a quoted one.
            const std::size_t open = text.find(": \"", at);
            const std::size_t close = open == std::string::npos ? open : text.find('"', open + 3);
            if (close != std::string::npos) {
                text.replace(open + 2, close - open - 1, snippets[below(snippets.size())]);
            }
            break;
        }
        default: {
            // A digit changed: values out of the ordinary, but well formed.
            const std::size_t digit = text.find_first_of("0123456789", at);
            if (digit != std::string::npos) {
                text[digit] = static_cast<char>('0' + below(10));
            }
            break;
        }
        }
    }
    return text;
}

} // namespace

int main(int argc, char** argv) {
    if (argc < 3) {
        std::fputs("usage: fuzz_replay COUNT FILE...\n", stderr);
        return 2;
    }
    const int count = std::atoi(argv[1]);
    std::mt19937_64 random(20240229);
    for (int i = 2; i < argc; ++i) {
        const std::string text = read_file(argv[i]);
        take_one_input(text);
        for (int k = 0; k < count; ++k) {
            take_one_input(mutated(text, random));
        }
    }
    std::printf("%d files, %d mutations each\n", argc - 2, count);
    return 0;
}
