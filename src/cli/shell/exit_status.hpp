#pragma once

/// What the shell learns; help, man page and README list the same five.
namespace fluewright::cli {

enum ExitStatus : int {
    all_pass = 0,      ///< done; of a check: what counts is decided, and none of it falls short
    falls_short = 1,   ///< computed, and something that counts falls short or is not decided
    wrong_input = 2,   ///< usage or input at fault
    no_access = 3,     ///< cannot read or write
    program_failed = 4 ///< the solver or the program failed
};

} // namespace fluewright::cli
