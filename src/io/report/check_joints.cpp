#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/text/words.hpp"

#include <fmt/core.h>

namespace fluewright::report {

std::string joints_text(const Case& resolved, const StateResult& state, const Style& style) {
    constexpr std::size_t inset = 2;
    TextTable table(
        {{.heading = "joint under"},
         {.heading = "height", .align = Align::right},
         {.heading = fmt::format("against the\nair round it, {}",
                                 customary_unit(Kind::pressure, style.units)),
          .align = Align::decimal},
         {.heading = fmt::format("leak,\n{}", customary_unit(Kind::gas_flow, style.units)),
          .align = Align::decimal},
         {.heading = ""}});
    for (const Joint& joint : joints_of(resolved, state)) {
        const bool out = joint.pressure_pa > 0.0;
        table.add({{section_words(resolved, joint.section)},
                   {quantity(joint.height_m, Kind::length, style)},
                   {signed_number(joint.pressure_pa, Kind::pressure, style)},
                   {signed_number(joint.leak_kg_s, Kind::gas_flow, style)},
                   {std::string{leak_words(joint.pressure_pa, state.kind)},
                    out ? Ink::warning : Ink::plain}});
    }
    return '\n' + table.text(style, inset);
}

} // namespace fluewright::report
