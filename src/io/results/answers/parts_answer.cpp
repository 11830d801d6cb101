#include "fluewright/io/report/parts_text.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/trade_rows.hpp"

namespace fluewright::results {
namespace {

struct TotalsRow {
    const PartsList& of;
};

/// A line for the shop: something to buy, or a piece to cut.
struct ShopRow {
    const PartsLine* line;
    const Cut* cut;
};

} // namespace

template <>
const Record<PartsLine>& record_of<PartsLine>() {
    static const Record<PartsLine> record{
        "part_to_buy",
        "a line of the list of parts",
        {{"what", "in words", &PartsLine::what},
         {"size", "as the trade says it", &PartsLine::size},
         {"count", "in `unit`", &PartsLine::count},
         {"unit", "empty for pieces, else kg or m", &PartsLine::unit},
         {"weight",
          Kind::mass,
          "of all of them; null where it is not estimated",
          [](const PartsLine& l) {
              return l.weight_kg > 0.0 ? std::optional{l.weight_kg} : std::nullopt;
          }},
         {"length",
          Kind::length,
          "of one length of pipe; null of anything else",
          [](const PartsLine& l) { return l.pipe ? std::optional{l.length_m} : std::nullopt; }},
         {"at_hand", "need not be bought", &PartsLine::at_hand},
         {"where", "it goes", &PartsLine::where},
         {"why", "what it is for; empty where the run itself names it", &PartsLine::why},
         {"source", "of that; empty where the run itself names it", &PartsLine::source},
         {"price", "of all of them, by the prices given", &PartsLine::price}}};
    return record;
}

template <>
const Record<Cut>& record_of<Cut>() {
    static const Record<Cut> record{
        "cut",
        "one piece to cut",
        {{"place", "the stretch it is for", &Cut::place},
         {"wall", "of the pipe", &Cut::wall},
         {"size", "as the trade says it", &Cut::size},
         {"piece", "in the stretch, from 1 at the heater", &Cut::piece},
         {"length", Kind::length, "overall, lap counted", &Cut::length_m},
         {{"from", "out of"}, Kind::length, "length of the stock it comes out of", &Cut::from_m},
         {"stock", "which of the lengths that are cut it comes out of, from 1", &Cut::stock},
         {"turn", "which piece out of that length, from 1", &Cut::turn},
         {"from_offcut", "it is not the first out of that stock", &Cut::from_offcut},
         {"measured_from",
          "the end to measure from, which the piece keeps: crimped, socket, plain or either",
          [](const Cut& c) { return name(c.from); }},
         {"crimp", "its other end is crimped after the cut", &Cut::crimp},
         {"at_hand", "the stock need not be bought", &Cut::at_hand},
         {"measure", "from which end, and what is kept", &Cut::measure}}};
    return record;
}

template <>
const Record<PipeStretch>& record_of<PipeStretch>() {
    static const Record<PipeStretch> record{
        "stretch",
        "an unbroken way of pipe between two fittings",
        {{"place", "in words", &PipeStretch::place},
         {"parts",
          "numbers of the parts in the file, from 1",
          [](const PipeStretch& s) {
              std::vector<int> numbers;
              for (const int part : s.parts) {
                  numbers.push_back(part + 1);
              }
              return numbers;
          }},
         {"wall", "its id", &PipeStretch::wall},
         {"diameter", Kind::length, "inside", &PipeStretch::diameter_m},
         {"drawn", Kind::length, "from center to center of the turns", &PipeStretch::drawn_m},
         {"between", Kind::length, "from face to face of the fittings", &PipeStretch::between_m},
         {"lap", Kind::length, "how far each piece goes into the next", &PipeStretch::lap_m},
         {"pieces",
          Kind::length,
          "overall lengths, heater end first",
          [](const PipeStretch& s) {
              std::vector<double> lengths_m;
              for (const StretchPiece& piece : s.pieces) {
                  lengths_m.push_back(piece.length_m);
              }
              return lengths_m;
          }},
         {"telescopes", "the last piece does", [](const PipeStretch& s) { return s.telescopes(); }},
         {"off",
          Kind::length,
          "how much longer it comes out than drawn, where no pieces make it up",
          &PipeStretch::off_m},
         {"note", "in words", &PipeStretch::note}}};
    return record;
}

template <>
const Record<LeftInBox>& record_of<LeftInBox>() {
    static const Record<LeftInBox> record{"left_in_box",
                                          "what is not used of what is at hand",
                                          {{"what", "in words", &LeftInBox::what},
                                           {"size", "as the trade says it", &LeftInBox::size},
                                           {"count", "left over", &LeftInBox::count},
                                           {"why", "it is not used", &LeftInBox::why}}};
    return record;
}

template <>
const Record<Growth>& record_of<Growth>() {
    static const Record<Growth> record{"growth",
                                       "how much an unbroken stretch grows when hot",
                                       {{"place", "in words", &Growth::place},
                                        {"length", Kind::length, "cold", &Growth::length_m},
                                        {"grows", Kind::length, "when hot", &Growth::grows_m},
                                        {"mean_wall",
                                         Kind::temperature,
                                         "of its inner wall",
                                         [](const Growth& g) { return if_finite(g.mean_wall_k); }},
                                        {"free", "something takes it up", &Growth::free},
                                        {"where", "it can go", &Growth::where}}};
    return record;
}

template <>
const Record<TotalsRow>& record_of<TotalsRow>() {
    static const Record<TotalsRow> record{
        "parts_totals",
        "sums of the list of parts",
        {{"weight",
          Kind::mass,
          "of all that is estimated",
          [](const TotalsRow& t) { return t.of.weight_kg; }},
         {"bought", Kind::length, "of pipe", [](const TotalsRow& t) { return t.of.bought_m; }},
         {"offcut", Kind::length, "left over", [](const TotalsRow& t) { return t.of.offcut_m; }},
         {"exact",
          "it is shown that no choice of pieces buys less, or costs less with prices",
          [](const TotalsRow& t) { return t.of.exact; }},
         {"price", "of all that is priced", [](const TotalsRow& t) { return t.of.price; }},
         {"currency",
          "of the price, as the user wrote it",
          [](const TotalsRow& t) -> decltype(auto) { return (t.of.currency); }},
         {"unpriced", "lines to buy that have no price", [](const TotalsRow& t) {
              return t.of.unpriced;
          }}}};
    return record;
}

template <>
const Record<ShopRow>& record_of<ShopRow>() {
    using Maybe = std::optional<double>;
    static const Record<ShopRow> record{
        "shop_line",
        "a line of `parts --format csv`: something to buy, or a piece to cut",
        {{"kind",
          "part or cut",
          [](const ShopRow& r) { return r.line != nullptr ? "part" : "cut"; }},
         {"what",
          "what to buy, or the stretch the piece is for",
          [](const ShopRow& r) -> decltype(auto) {
              return (r.line != nullptr ? r.line->what : r.cut->place);
          }},
         {"size",
          "as the trade says it",
          [](const ShopRow& r) -> decltype(auto) {
              return (r.line != nullptr ? r.line->size : r.cut->size);
          }},
         {"count",
          "in `unit`",
          [](const ShopRow& r) { return r.line != nullptr ? r.line->count : 1.0; }},
         {"unit",
          "empty for pieces, else kg or m",
          [](const ShopRow& r) {
              return r.line != nullptr ? std::string_view{r.line->unit} : std::string_view{};
          }},
         {"weight",
          Kind::mass,
          "of all of them",
          [](const ShopRow& r) {
              return r.line != nullptr && r.line->weight_kg > 0.0 ? Maybe{r.line->weight_kg}
                                                                  : Maybe{};
          }},
         {"piece",
          "in the stretch, from 1 at the heater",
          [](const ShopRow& r) {
              return r.cut != nullptr ? std::optional{r.cut->piece} : std::nullopt;
          }},
         {"length",
          Kind::length,
          "of a length of pipe to bring; of a cut the piece, overall, lap counted",
          [](const ShopRow& r) {
              return r.cut != nullptr ? Maybe{r.cut->length_m}
                     : r.line->pipe   ? Maybe{r.line->length_m}
                                      : Maybe{};
          }},
         {"from",
          Kind::length,
          "length of the stock it comes out of",
          [](const ShopRow& r) { return r.cut != nullptr ? Maybe{r.cut->from_m} : Maybe{}; }},
         {"stock",
          "which of the lengths that are cut it comes out of, from 1",
          [](const ShopRow& r) {
              return r.cut != nullptr ? std::optional{r.cut->stock} : std::nullopt;
          }},
         {"from_offcut",
          "it is not the first out of that stock",
          [](const ShopRow& r) { return r.cut != nullptr && r.cut->from_offcut; }},
         {"measured_from",
          "the end a cut is measured from, which the piece keeps",
          [](const ShopRow& r) {
              return r.cut != nullptr ? name(r.cut->from) : std::string_view{};
          }},
         {"crimp",
          "the other end of the piece is crimped after the cut",
          [](const ShopRow& r) { return r.cut != nullptr && r.cut->crimp; }},
         {"price",
          "of all of them, by the prices given",
          [](const ShopRow& r) { return r.line != nullptr ? r.line->price : Maybe{}; }},
         {"why",
          "what it is for",
          [](const ShopRow& r) {
              return r.line != nullptr ? std::string_view{r.line->why} : std::string_view{};
          }},
         {"source",
          "of that",
          [](const ShopRow& r) {
              return r.line != nullptr ? std::string_view{r.line->source} : std::string_view{};
          }},
         {"at_hand",
          "need not be bought",
          [](const ShopRow& r) { return r.line != nullptr ? r.line->at_hand : r.cut->at_hand; }},
         {"where",
          "it goes, or from which end to measure and what is kept",
          [](const ShopRow& r) -> decltype(auto) {
              return (r.line != nullptr ? r.line->where : r.cut->measure);
          }}}};
    return record;
}

template <>
const Record<PartsList>& record_of<PartsList>() {
    static const Record<PartsList> record{
        "parts_answer",
        "what to buy, what to cut from which end, which adapters",
        {{"dangers", "that stand in the run as it is drawn", &PartsList::dangers},
         {"not_decided",
          "what leaves fire and carbon monoxide open; null where nothing does",
          [](const PartsList& l) { return unless_empty(l.not_decided); }},
         {"falls_short",
          "what keeps the run from drawing; null where nothing does",
          [](const PartsList& l) { return unless_empty(l.falls_short); }},
         {"parts", "what to buy", &PartsList::lines},
         {"cuts", "pieces to cut", &PartsList::cuts},
         {"stretches", "of pipe", &PartsList::stretches},
         {"joints",
          "in flow order",
          [](const PartsList& p) -> decltype(auto) { return (p.joints.joints); }},
         {"left_in_box", "not used of what is at hand", &PartsList::left_in_box},
         {"growth", "when hot", &PartsList::growth},
         {"totals", "sums", [](const PartsList& p) { return TotalsRow{p}; }},
         {"assumed", "sentences", &PartsList::assumed}}};
    return record;
}

const RecordInfo& parts_result() {
    return record_of<PartsList>().info();
}

const RecordInfo& shop_record() {
    return record_of<ShopRow>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string parts_json(const PartsList& list, const PartsReportOptions& options) {
    return results::answer_text(
        "parts", options.input, results::record_of<PartsList>().json(list), options.assumptions);
}

std::string parts_csv(const PartsList& list) {
    std::string out = results::csv_heading<results::ShopRow>();
    for (const PartsLine& line : list.lines) {
        results::append_csv(results::ShopRow{&line, nullptr}, out);
    }
    for (const Cut& cut : list.cuts) {
        results::append_csv(results::ShopRow{nullptr, &cut}, out);
    }
    return out;
}

} // namespace fluewright
