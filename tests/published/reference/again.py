"""Computes the computed rows of a table again from their inputs and holds them against the figures
that stand there, to the last digit printed."""

import csv
import decimal

from table import FOLDER


def inputs_of(text):
    """Numbers where they are numbers."""
    values = {}
    for pair in text.split(";"):
        name, _, value = pair.partition("=")
        try:
            values[name] = float(value)
        except ValueError:
            values[name] = value
    return values


def last_digit(text):
    """Unit of the last digit that is printed."""
    return 10.0 ** decimal.Decimal(text).as_tuple().exponent


def differences(name, checks, by_tolerance=False):
    """`checks`: the function of each check over its inputs and the source of the row. By tolerance:
    where the inputs of the table are rounded, its own tolerance counts in place of the last digit."""
    with open(FOLDER / (name + ".csv"), newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    for row in rows:
        if row["mark"] != "computed":
            continue
        if row["check"] not in checks:
            yield "%s.csv, row %s: nothing computes %s" % (name, row["id"], row["check"])
            continue
        fresh = checks[row["check"]](source=row["source"], **inputs_of(row["inputs"]))
        expected = float(row["expected"])
        allowed = 0.501 * last_digit(row["expected"])
        if by_tolerance:
            share = abs(expected) if row["tolerance_kind"] == "relative" else 1.0
            allowed = max(allowed, float(row["tolerance"]) * share)
        if abs(fresh - expected) > allowed:
            yield "%s.csv, row %s: %s, and %.8g afresh" % (name, row["id"], row["expected"], fresh)
