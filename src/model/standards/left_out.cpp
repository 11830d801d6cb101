#include "left_out.hpp"

namespace fluewright {

std::vector<std::string> left_out_of_methods(const Case& resolved) {
    std::vector<std::string> notes;
    bool leaks = false;
    for (const Section& section : resolved.sections) {
        const std::string number = std::to_string(section.part + 1);
        if (section.kind == PartKind::draft_regulator) {
            notes.push_back("The draft regulator, part " + number
                            + ", is left out: the method takes its gate as shut. The physics has "
                              "the room air it lets in.");
        } else if (section.kind == PartKind::draft_hood) {
            notes.push_back("The air that the draft hood, part " + number
                            + ", lets in is left out: the method takes the flow and temperature "
                              "of the gas as they leave the heater. The physics has it.");
        }
        leaks = leaks || section.joint_leak_m2 > 0.0;
    }
    if (leaks) {
        notes.emplace_back("The joints of the file that leak are left out: the method takes the "
                           "run as tight. The physics has the air they let in.");
    }
    return notes;
}

bool tells_of_wind(const Case& resolved) {
    return resolved.top_is_adverse || resolved.has_wind();
}

} // namespace fluewright
