#include "catalog_rules.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

namespace fluewright {

CatalogTable catalog_of_rules() {
    CatalogTable table{"rules",
                       "Rules of installation by body; `fluewright explain NAME` tells more",
                       {{"name", "name"},
                        {"body", "body"},
                        {"strength", "strength"},
                        {"severity", "severity"},
                        {"rule", "asked", Kind::number, CatalogPlace::line},
                        {"applies", "for", Kind::number, CatalogPlace::line},
                        {"finding", "finding", Kind::number, CatalogPlace::line},
                        {"source", "source", Kind::number, CatalogPlace::line},
                        {"clause", "clause", Kind::number, CatalogPlace::same_line},
                        {"year", "edition", Kind::number, CatalogPlace::same_line},
                        {"mark", "how known", Kind::number, CatalogPlace::same_line},
                        {"disagrees", "another source", Kind::number, CatalogPlace::line}},
                       {}};
    for (const catalog::Rule& row : catalog::rules()) {
        const catalog::Source* source = catalog::find_source(row.source);
        table.rows.push_back({row.id,
                              row.body,
                              row.strength,
                              row.severity,
                              row.says,
                              row.applies,
                              row.matter,
                              row.source,
                              row.clause,
                              source == nullptr ? std::string_view{} : source->year,
                              row.mark,
                              row.disagrees});
    }
    return table;
}

} // namespace fluewright
