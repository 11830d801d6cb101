"""Asks `explain` for every id that the tables of data/ hold or that a committed answer prints.

    python3 explained_ids.py PROGRAM CHECKOUT
"""

import csv
import json
import pathlib
import subprocess
import sys

program, root = sys.argv[1], pathlib.Path(sys.argv[2])
ids = {}


def take(word, where):
    if word:
        ids.setdefault(word, where)


for table in ("causes", "checks", "remedy_effort", "rule_bodies", "rules", "sources"):
    with open(root / f"data/{table}.csv", newline="") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        for row in rows:
            take(row["id"], f"data/{table}.csv")

# Keys under which an answer prints an id, and lists whose entries have one under "id".
ID_KEYS = {"check", "finding", "harm", "matter", "source", "sweep_source", "deposit_source", "confirm", "state", "remedy", "body"}
ID_LISTS = {"left_short", "remedies", "falling_short", "stuck", "what_counts", "findings_raised", "findings_cleared"}
LISTS_OF_ROWS = {"findings", "causes", "checks"}


def walk(node, where, key="", above=""):
    if isinstance(node, dict):
        for name, value in node.items():
            # A remedy of a finding is a sentence; that of a step is an id.
            sentence = name == "remedy" and "what" not in node
            joined = name == "state" and isinstance(value, str) and value not in CONDITIONS
            if name in ID_KEYS and isinstance(value, str) and not sentence and not joined:
                take(value, where)
            elif name in ID_LISTS and isinstance(value, list):
                for each in value:
                    take(each, where)
            elif name == "id" and above in LISTS_OF_ROWS:
                take(value, where)
            walk(value, where, name, name)
    elif isinstance(node, list):
        for each in node:
            walk(each, where, key, key)


schema = json.loads(subprocess.run([program, "schema", "--of", "result"], capture_output=True, text=True).stdout)
CONDITIONS = set(schema["$defs"]["state"]["properties"]["state"]["enum"])
for condition in CONDITIONS:
    take(condition, "the schema of answers")
before = len(ids)
for folder in sorted(path.parent for path in (root / "tests/golden").glob("*/args.txt")):
    text = (folder / "stdout.txt").read_text()
    if text.startswith("{\n") and "cautions" in text:
        walk(json.loads(text), folder.name)

faults = []
for word, where in sorted(ids.items()):
    done = subprocess.run([program, "explain", word], capture_output=True, text=True)
    if done.returncode != 0 or word.replace(" ", "") not in done.stdout.replace(" ", "").replace("\n", ""):
        faults.append(f"{where}: `explain {word}` has no page: {done.stderr.strip()}")
if before < 150:
    faults.append(f"only {before} ids in the tables")
for slip, near in (("hihg-fire", "high-fire"), ("leaky-joint", "leaky-joints"), ("gnielinski-1967", "gnielinski-1976")):
    done = subprocess.run([program, "explain", slip], capture_output=True, text=True)
    if done.returncode != 2 or f"did you mean `{near}`?" not in done.stderr:
        faults.append(f"`explain {slip}` does not name {near}: {done.stderr.strip()}")
if faults:
    sys.exit("\n".join(faults[:40]))
