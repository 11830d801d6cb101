#include "fluewright/advice/parts/parts_list.hpp"

#include "stretches.hpp"

namespace fluewright {

PartsList parts_list(const Installation& written,
                     const Case& resolved,
                     const Solution& solution,
                     const std::vector<StockPiece>& at_hand) {
    PartsList list;
    std::vector<StockPiece> stock = written.stock;
    stock.insert(stock.end(), at_hand.begin(), at_hand.end());
    const checking::View view{written, resolved, &solution};
    const parts::Job job{view, stock, list};
    list.joints = joints_of(resolved);
    parts::stretches(job);
    parts::cuts(job);
    parts::growth(job);
    parts::pipe_lines(job);
    parts::small_lines(job);
    for (const PartsLine& line : list.lines) {
        list.weight_kg += line.weight_kg;
    }
    list.assumed.emplace_back("elbows and tees of usual build: hold a real one against the figures "
                              "before cutting");
    for (const PartEnds& ends : list.joints.parts) {
        if (ends.heater.assumed || ends.chimney.assumed) {
            list.assumed.emplace_back(
                "ends of pipe as usual for their wall (the inserted end "
                "towards the heater); say `heater_end` and `chimney_end` where yours "
                "differ");
            break;
        }
    }
    return list;
}

} // namespace fluewright
