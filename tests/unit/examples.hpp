#pragma once

#include "../catch.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <fstream>
#include <sstream>
#include <string>

namespace fluewright {

/// One of the installations in examples/.
inline Installation example(const std::string& name) {
    std::ifstream file(PROJECT_SOURCE_DIR "/examples/" + name + ".json");
    std::ostringstream text;
    text << file.rdbuf();
    auto read = read_installation(text.str());
    if (!read) {
        FAIL(diagnostics_text(read.error()));
    }
    return std::move(read).value();
}

} // namespace fluewright
