"""Rows of a table of published figures, written the same way by every script here."""

import csv
import pathlib

FOLDER = pathlib.Path(__file__).resolve().parent.parent
COLUMNS = ["id", "check", "inputs", "expected", "tolerance", "tolerance_kind", "reason", "source",
           "place", "mark", "topic"]


class Table:
    def __init__(self, name, prefix, **common):
        self.name = name
        self.prefix = prefix
        self.common = common
        self.rows = []

    def add(self, check, inputs, expected, **cells):
        row = dict(self.common)
        row.update(cells)
        row["id"] = "%s-%d" % (self.prefix, len(self.rows) + 1)
        row["check"] = check
        row["inputs"] = ";".join("%s=%s" % (name, value) for name, value in inputs.items())
        row["expected"] = expected if isinstance(expected, str) else "%.12g" % expected
        self.rows.append(row)

    def write(self, folder=FOLDER):
        with open(pathlib.Path(folder) / (self.name + ".csv"), "w", newline="") as file:
            file.write("# Made by reference/%s.py; change that file instead.\n" % self.name)
            writer = csv.DictWriter(file, COLUMNS, lineterminator="\n")
            writer.writeheader()
            writer.writerows(self.rows)
