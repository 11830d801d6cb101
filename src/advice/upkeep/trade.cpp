#include "fluewright/advice/upkeep/trade.hpp"

namespace fluewright {

TradeAdvice trade_advice(const Installation& written, const Assessment& a) {
    const Case& c = a.installation;
    return {.joints = joints_of(c),
            .surfaces = hot_surfaces(written, c, a.solution),
            .demand = heat_demand(written, c, a.solution),
            .upkeep = maintenance(written, c, a.solution)};
}

} // namespace fluewright
