"""Fails on a row of data/defaults.csv that neither the code nor a field of the file asks for.

    python3 default_ids.py CHECKOUT
"""

import pathlib
import re
import sys

root = pathlib.Path(sys.argv[1])
lines = [line for line in (root / "data/defaults.csv").read_text().splitlines() if not line.startswith("#")]
ids = [line.split(",")[0] for line in lines[1:]]
asked = set()
for folder in ("src", "include"):
    for path in sorted((root / folder).rglob("*.[ch]pp")):
        text = path.read_text()
        asked.update(re.findall(r"DefaultId::(\w+)", text))
idle = [name for name in ids if name not in asked]
if not ids or idle:
    sys.exit("data/defaults.csv: nobody asks for " + (", ".join(idle) or "anything"))
