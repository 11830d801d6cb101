#pragma once

#include "fluewright/io/reference/catalog_report.hpp"

namespace fluewright {

/// The rules of installation of every body, with clause and edition.
[[nodiscard]] CatalogTable catalog_of_rules();

} // namespace fluewright
