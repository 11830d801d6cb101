"""Makes the tables of this folder again and holds them against the committed ones; of tables that
hold other rows, too, the computed ones. Of the marches, which take longest, every fourth, unless --all is
asked for. Leaves with 77, "skipped", where the libraries are missing."""

import csv
import sys
import tempfile

SKIPPED = 77
CLOSE = 1e-9

sys.dont_write_bytecode = True
try:
    import fluids.atmosphere  # noqa: F401
    import iapws  # noqa: F401
    import scipy  # noqa: F401
except ImportError as problem:
    print("skipped: %s" % problem)
    sys.exit(SKIPPED)

import acid_dew_point
import again
import appliances_scipy
import area_changes_fluids
import atmosphere_fluids
import bends_fluids
import combustion
import expansion
import friction_fluids
import house
import march_scipy
import rare_terms
import states_scipy
import water_iapws
from table import FOLDER


def rows_of(path):
    with open(path, newline="") as file:
        return list(csv.reader(line for line in file if not line.startswith("#")))


def alike(ours, fresh, close):
    """Cells are equal as text, or as numbers that differ in the last digits alone."""
    if ours == fresh:
        return True
    try:
        a, b = float(ours), float(fresh)
    except ValueError:
        return False
    return abs(a - b) <= close * max(abs(a), abs(b), 1e-6)


def differences(name, folder, close, some):
    ours = rows_of(FOLDER / (name + ".csv"))
    fresh = rows_of("%s/%s.csv" % (folder, name))
    if some:  # known by what is asked; their numbers are others
        made = {(row[1], row[2]) for row in fresh}
        ours = [row[1:] for row in ours if (row[1], row[2]) in made]
        fresh = [row[1:] for row in fresh]
    if len(ours) != len(fresh):
        yield "%s.csv has %d rows, a fresh one %d" % (name, len(ours), len(fresh))
    for a, b in zip(ours, fresh):
        if len(a) != len(b) or not all(alike(x, y, close) for x, y in zip(a, b)):
            yield "%s.csv, row %s differs from a fresh one" % (name, a[0])


def main():
    found = 0
    every = 1 if "--all" in sys.argv[1:] else 4
    with tempfile.TemporaryDirectory() as folder:
        for module in (appliances_scipy, area_changes_fluids, atmosphere_fluids, bends_fluids,
                       friction_fluids, march_scipy, rare_terms, states_scipy, water_iapws):
            some = module is march_scipy and every > 1
            table = module.table(every) if some else module.table()
            table.write(folder)
            for difference in differences(table.name, folder, getattr(module, "CLOSE", CLOSE), some):
                print(difference)
                found += 1
    for module in (acid_dew_point, combustion, expansion, house):
        for difference in again.differences(module.__name__, module.CHECKS, module is combustion):
            print(difference)
            found += 1
    print("%d differences" % found)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
