// Turns the tables of data/ into C++ before the library is compiled:
//   fluewright_embed data generated
// For each table a file of constexpr rows, generated/fluewright_data/TABLE.inc, and for those whose
// rows the code asks for by name an enumeration of their ids. Ends with 1 and one line for each
// fault when a table is wrong; writes nothing then.
#include "table.hpp"
#include "written.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

namespace {

namespace embed = fluewright::embed;

std::string file_text(const std::filesystem::path& path) {
    std::ifstream file{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{file}, std::istreambuf_iterator<char>{}};
}

/// Leaves a file alone that reads so already, so that nothing is compiled afresh for it.
bool write(const std::filesystem::path& path, const std::string& text) {
    if (std::filesystem::exists(path) && file_text(path) == text) {
        return true;
    }
    std::filesystem::create_directories(path.parent_path());
    std::ofstream file{path, std::ios::binary};
    file << text;
    return static_cast<bool>(file.flush());
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "usage: fluewright_embed DATA GENERATED\n";
        return 2;
    }
    const std::filesystem::path data{argv[1]};
    const std::filesystem::path generated{argv[2]};
    std::vector<embed::Fault> faults;
    std::vector<embed::Table> tables;
    for (const embed::Entry& entry : embed::entries()) {
        const auto path = data / (std::string{entry.table} + ".csv");
        if (!std::filesystem::is_regular_file(path)) {
            std::cerr << path.string() << ": cannot be read\n";
            return 1;
        }
        tables.push_back(
            embed::read_table("data/" + path.filename().string(), file_text(path), faults));
    }
    for (const auto& file : std::filesystem::directory_iterator{data}) {
        const std::string name = "data/" + file.path().filename().string();
        if (file.path().extension() == ".csv"
            && std::none_of(tables.begin(), tables.end(), [&](const embed::Table& table) {
                   return table.file == name;
               })) {
            faults.push_back({name, 1, 1, "data/embed/written.cpp says nothing of this table"});
        }
    }
    const auto sources = std::find_if(tables.begin(), tables.end(), [](const embed::Table& table) {
        return table.file == "data/sources.csv";
    });
    for (const embed::Table& table : tables) {
        if (&table != &*sources && !table.rows.empty()) {
            embed::check_sources(table, *sources, faults);
        }
    }
    std::vector<std::string> headers;
    for (std::size_t i = 0; i < tables.size(); ++i) {
        headers.push_back(embed::enumeration(embed::entries()[i], tables[i], faults));
    }
    for (const embed::Fault& fault : faults) {
        std::cerr << fault.text() << '\n';
    }
    if (!faults.empty()) {
        return 1;
    }
    for (std::size_t i = 0; i < tables.size(); ++i) {
        const embed::Entry& entry = embed::entries()[i];
        const auto rows = generated / "fluewright_data" / (std::string{entry.table} + ".inc");
        if (!write(rows, embed::rows(entry, tables[i]))
            || (!headers[i].empty() && !write(generated / entry.header, headers[i]))) {
            std::cerr << "cannot write below " << generated << '\n';
            return 1;
        }
    }
    return 0;
}
