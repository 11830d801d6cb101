#pragma once

// Debian 12 ships version 2 of the test library, later systems version 3; the tests serve both.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
