"""Fails on a comment of the code that names a source which data/sources.csv does not hold.

    python3 source_keys.py CHECKOUT

A comment that says where something is from ("/// Source   ...", up to the next blank line or
heading of its block) names the id of a row: in brackets, `[gnielinski-1976, from memory]`, or as its
first word; or it sends the reader on to another function: "as emissivity()". A bracket with an id in
it is checked wherever it stands, in texts for the user as well. Sources that `used_by` leaves to the code must be named somewhere.
"""

import csv
import pathlib
import re
import sys

HEADING = re.compile(r"^(Range|Notes?|Limits|Faults|Errors|Returns)\b")
KEY = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)+|[a-z]+[0-9]{3,}[a-z0-9]*|judgement|practice|memory|derivation|idelchik")
BRACKET = re.compile(r"\[([a-z][^\]\[]*)\]")


def blocks(text):
    """The comments of a file as (line, text): lines that follow each other, slashes taken off."""
    block, start = [], 0
    for number, line in enumerate(text.splitlines() + [""], 1):
        found = re.match(r"\s*//+<? ?(.*)$", line)
        if found:
            if not block:
                start = number
            block.append(found.group(1).strip())
        elif block:
            yield start, block
            block = []
        inline = re.match(r"[^\"]*[^\s/\"][^\"]*//+<? ?(.*)$", line)
        if inline:
            yield number, [inline.group(1).strip()]


def stated_sources(block):
    """Where a block says "Source": (offset of its line, all of what it says)."""
    for at, line in enumerate(block):
        found = re.search(r"\bSource(?::| {2,})\s*(.*)$", line)
        if not found:
            continue
        said = [found.group(1)]
        for more in block[at + 1 :]:
            if not more or HEADING.match(more):
                break
            said.append(more)
        yield at, " ".join(said)


def main(root):
    with open(root / "data/sources.csv", newline="") as file:
        rows = list(csv.reader(line for line in file if not line.startswith("#")))
    known = {row[0]: row[4] for row in rows[1:]}
    faults, named, stated = [], set(), 0
    files = [path for folder in ("include", "src") for path in sorted((root / folder).rglob("*.[ch]pp"))]
    for path in files:
        short = path.relative_to(root)
        text = path.read_text()
        joined = re.sub(r"\n\s*//+<? ?", " ", text)
        for bracket in BRACKET.finditer(joined):
            for part in re.split(r"[,;] *", bracket.group(1)):
                key = part.split(":")[0]
                if KEY.fullmatch(key):
                    named.add(key)
                    if key not in known:
                        faults.append(f"{short}: [{key}] is no row of data/sources.csv")
        for start, block in blocks(text):
            for offset, said in stated_sources(block):
                stated += 1
                keys = [re.match(r"[^,:; ]*", b).group() for b in BRACKET.findall(said)]
                first = re.match(r"[^,:; ]*", said).group()
                if first in known:
                    keys.append(first)
                    named.add(first)
                if not any(key in known for key in keys) and not re.match(r"(as )?[\w:]+\(\)", said):
                    faults.append(f"{short}:{start + offset}: no row of data/sources.csv in: {said}")
        named.update(key for key in known if f'"{key}"' in text)
    tables = "".join(path.read_text() for path in sorted((root / "data").glob("*.csv")) if path.name != "sources.csv")
    tests = "".join(path.read_text() for path in sorted((root / "tests").rglob("*.csv")))
    tests += "".join(path.read_text() for path in sorted((root / "tests").rglob("*.[ch]pp")))
    theory = (root / "docs/theory.md").read_text()
    for key, used_by in known.items():
        if used_by == "code" and key not in named and not any(key in text for text in (tables, tests, theory)):
            faults.append(f"data/sources.csv: nobody names {key}")
    if stated == 0:
        faults.append("no comment says where anything is from")
    if faults:
        sys.exit("\n".join(faults))


main(pathlib.Path(sys.argv[1]))
