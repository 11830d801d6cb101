#include "advice/sizing/masonry_rows.hpp"
#include "edited_file.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "law.hpp"

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

/// The file a person would write for a row.
Result<Installation, std::string>
file_of(const SizeRow& row, const SizeTable& table, const Installation& written) {
    if (row.present) {
        return written;
    }
    if (table.varies_masonry || row.lines_masonry()) {
        return changed(sizing::masonry_changes(row, table.present_height_m), written);
    }
    return changed(Change{OtherPipe{row.connector_m, row.chimney_m, row.height_m}}, written);
}

std::string named(const SizeRow& row) {
    return "connector " + row.connector + ", chimney " + row.chimney;
}

/// At the height that stands or, every fourth time, at another; seldom connector and chimney apart.
SizeTableOptions options_for(std::uint64_t seed) {
    SizeTableOptions options;
    options.separate = seed % 25 == 0;
    if (seed % 4 == 0) {
        options.heights_m = {3.0 + static_cast<double>(seed % 5)};
    }
    return options;
}

} // namespace

TEST_CASE("a row of size, written and checked, shows the figures of the row") {
    std::size_t rows = 0;
    for (std::uint64_t seed = 0; rows < households; ++seed) {
        const Installation written = random_household(seed);
        const auto table = tabulate_sizes(written, options_for(seed));
        REQUIRE(table.has_value());
        // The one suggested and some of each table; all of them would be thousands.
        for (std::size_t i = 0; i < table->rows.size(); ++i) {
            const SizeRow& row = table->rows[i];
            const bool looked_at = row.suggested || i % 4 == seed % 4;
            if (!row.score || !looked_at) {
                continue;
            }
            const auto file = file_of(row, *table, written);
            REQUIRE(file.has_value());
            const Assessment then = checked(through_file(*file));
            Differences found = compare(*row.score, score_of(then));
            found.number("works", row.works ? 1 : 0, then.works() ? 1 : 0);
            if (!found.none()) {
                fail_law(seed,
                         "the row of " + named(row) + " against check of the file with it:\n"
                             + found.text() + write_installation(*file) + "\nfor the installation",
                         written);
            }
            ++rows;
        }
    }
    CHECK(rows >= households);
}

TEST_CASE("the pipe that size suggests is the one it keeps once it is fitted") {
    constexpr std::uint64_t usual_searches = 32;
    const std::uint64_t sized = searched(usual_searches);
    std::size_t suggested = 0;
    for (std::uint64_t seed = 0; seed < sized; ++seed) {
        const Installation written = random_household(seed);
        const auto table = tabulate_sizes(written, {});
        REQUIRE(table.has_value());
        if (!table->suggested) {
            continue;
        }
        const SizeRow& row = table->rows[*table->suggested];
        const auto file = file_of(row, *table, written);
        REQUIRE(file.has_value());
        const auto again = tabulate_sizes(through_file(*file), {});
        REQUIRE(again.has_value());
        const bool kept = again->suggested && again->rows[*again->suggested].present;
        // Masonry that was changed is the flue as it stands, or pipe where it was lined.
        const bool renamed = row.lines_masonry() || !row.clay_liner.empty();
        if (!kept || (!renamed && again->rows[*again->suggested].connector != row.connector)) {
            fail_law(seed,
                     "size suggests " + named(row)
                         + "; of the file with it, it says: " + again->sentence + "\n"
                         + write_installation(*file) + "\nfor the installation",
                     written);
        }
        ++suggested;
    }
    CHECK(suggested > 5);
}
