#include "exit_status.hpp"
#include "run.hpp"

#include <csignal>
#include <cstdio>
#include <exception>
#include <iostream>
#include <new>
#include <unistd.h>

namespace {

fluewright::cli::Environment environment_of_process() {
    fluewright::cli::Environment environment;
    for (char** entry = environ; entry != nullptr && *entry != nullptr; ++entry) {
        const std::string_view text = *entry;
        const std::size_t equals = text.find('=');
        if (equals != std::string_view::npos) {
            environment.variables.emplace(text.substr(0, equals), text.substr(equals + 1));
        }
    }
    environment.input_is_terminal = ::isatty(STDIN_FILENO) == 1;
    environment.output_is_terminal = ::isatty(STDOUT_FILENO) == 1;
    environment.error_is_terminal = ::isatty(STDERR_FILENO) == 1;
    return environment;
}

} // namespace

int main(int count, char** values) {
    // Whoever reads the answer may go, and a file may be allowed no more bytes: what cannot be
    // written is told as such.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    try {
        std::ios::sync_with_stdio(false);
        const std::vector<std::string> arguments(values + (count > 0 ? 1 : 0), values + count);
        return fluewright::cli::run(
            arguments, environment_of_process(), std::cin, std::cout, std::cerr);
    } catch (const std::bad_alloc&) {
        std::fputs("fluewright: the system gave no more memory; there is no whole answer\n",
                   stderr);
        return fluewright::cli::program_failed;
    } catch (...) {
        std::fputs("fluewright: the program failed; please report it with the command, the input "
                   "and `fluewright --version`\n",
                   stderr);
        return fluewright::cli::program_failed;
    }
}
