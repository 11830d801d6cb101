// What another program needs: read an installation, assess it, use the answer.
#include <fluewright/advice/assessment.hpp>
#include <fluewright/io/input/json_reader.hpp>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

int main(int argc, char** argv) {
    std::ifstream file(argc > 1 ? argv[1] : "");
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    const auto read = fluewright::read_installation(text);
    if (!read) {
        return 2;
    }
    const auto assessed = fluewright::assess(*read, {});
    if (!assessed) {
        return 2;
    }
    std::cout << assessed->sentence << '\n';
    return assessed->works ? 0 : 1;
}
