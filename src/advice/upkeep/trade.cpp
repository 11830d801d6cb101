#include "fluewright/advice/upkeep/trade.hpp"

namespace fluewright {

TradeAdvice trade_advice(const Installation& written, const Assessment& a, std::string_view body) {
    const Case& c = a.installation;
    return {.rules = check_rules(
                written, c, a.solution, body.empty() ? rule_set_of(written, c.units) : body),
            .joints = joints_of(written, c),
            .surfaces = hot_surfaces(written, c, a.solution),
            .demand = heat_demand(written, c, a.solution),
            .upkeep = maintenance(written, c, a.solution)};
}

} // namespace fluewright
