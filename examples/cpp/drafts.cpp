// Prints the draft of an installation file in each weather and way of firing.
#include <fluewright/fluewright.hpp>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

int main(int argc, char** argv) {
    std::ifstream file{argc > 1 ? argv[1] : "bindery.json"};
    const std::string text{std::istreambuf_iterator<char>{file}, {}};
    const auto installation = fluewright::read_installation(text);
    if (!installation) {
        std::cerr << fluewright::diagnostics_text(installation.error());
        return 2;
    }
    const auto answer = fluewright::assess(*installation, {});
    if (!answer) {
        std::cerr << answer.error().front().message << '\n';
        return 2;
    }
    for (const auto& state : answer->solution.states) {
        std::cout << answer->installation.weathers[state.weather].name << ", " << name(state.kind)
                  << ": " << state.draft_pa << " Pa\n";
    }
}
