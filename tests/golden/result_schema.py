"""Holds every answer in JSON that the tests have against the published schema of answers.

    python3 result_schema.py PROGRAM CHECKOUT

Taken are the committed outputs under tests/golden and what each command makes of every example. The
schema must be strict, too: a key too many, a key too few and a value of another type are refused.
"""

import concurrent.futures
import json
import pathlib
import subprocess
import sys

import jsonschema

program, root = sys.argv[1], pathlib.Path(sys.argv[2])
examples = sorted(path.name for path in (root / "examples").glob("*.json"))


def run(*arguments, entered=""):
    done = subprocess.run([program, *arguments], cwd=root / "examples", input=entered, capture_output=True, text=True)
    if done.returncode > 2:
        sys.exit(f"{arguments}: status {done.returncode}\n{done.stderr}")
    return done.stdout


def validator(*arguments):
    schema = json.loads(run("schema", *arguments))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


answers, inputs = validator("--of", "result"), validator()
faults, held, kinds = [], 0, set()


def deepest(error):
    return deepest(max(error.context, key=lambda each: len(each.absolute_path))) if error.context else error


def hold(name, text, against=answers):
    """Each document of a text against a schema; the documents."""
    global held
    documents = [json.loads(text)] if text.startswith("{\n") else [json.loads(line) for line in text.splitlines()]
    if not documents:
        faults.append(f"{name}: nothing to hold")
    for document in documents:
        held += 1
        error = next(against.iter_errors(document), None)
        if error is not None:
            error = deepest(error)
            faults.append(f"{name}: {'/'.join(map(str, error.absolute_path))}: {error.message[:300]}")
    return documents


def hold_strictly(name, answer):
    """An answer that is sound must not stay so with a slip anywhere in it."""
    def slips(node, place):
        if isinstance(node, dict):
            yield place, "an unknown key", lambda: node.update({"unknown key": 1}), lambda: node.pop("unknown key")
            for key in list(node):
                kept = node[key]
                # Within an entry for the input file its own schema holds.
                if key == "entry":
                    continue
                if "record" not in answer:
                    yield place, f"no {key}", lambda: node.pop(key), lambda: node.update({key: kept})
                other = [[]] if not isinstance(kept, list) else {"other": 1}
                yield place, f"other {key}", lambda: node.update({key: other}), lambda: node.update({key: kept})
                yield from slips(kept, f"{place}/{key}")
        elif isinstance(node, list) and node:
            yield from slips(node[0], f"{place}/0")

    def first_only(node):
        if isinstance(node, dict):
            return {key: first_only(value) for key, value in node.items()}
        return [first_only(value) for value in node[:1]] if isinstance(node, list) else node

    answer = first_only(answer)
    for place, what, make, undo in slips(answer, ""):
        make()
        if answers.is_valid(answer):
            faults.append(f"{name}: the schema lets {what} pass at {place or '/'}")
        undo()


# What is committed.
for folder in sorted(path.parent for path in (root / "tests/golden").glob("*/args.txt")):
    arguments = (folder / "args.txt").read_text().split("\n")
    text = (folder / "stdout.txt").read_text()
    if arguments[0] == "vary":
        hold(folder.name, text, inputs)
    elif "--json" in arguments or "json" in arguments or "ndjson" in arguments:
        documents = hold(folder.name, text)
        kinds.add(arguments[0])

# What the program makes.
lines = []
for name in examples:
    lines += [
        ["check", name, "--json"],
        ["check", name, "--json", "--no-size-search", "--rules", "us"],
        ["check", name, "--json", "--method", "en13384"],
        ["check", name, "--json", "--method", "handbook"],
        ["size", name, "--json"],
        ["improve", name, "--json"],
        ["compare", name, examples[0], examples[1], "--json"],
        ["sweep", name, "--over", "outdoor=-15..15degC:3", "--json"],
        ["sweep", name, "--over", "height=1..9m:3", "--over", "diameter=80..250mm:3", "--json"],
        ["parts", name, "--json"],
        ["warmup", name, "--json", "--minutes", "20"],
        ["diagnose", name, "--json"],
    ]
lines += [["catalog", "--json"]]
lines += [["catalog", row["name"], "--json"] for row in json.loads(run("catalog", "--json"))["result"]["rows"]]
lines += [["batch", *examples, "--format", "ndjson", *more] for more in ([], ["--fields", "all"])]
with concurrent.futures.ThreadPoolExecutor() as pool:
    texts = list(pool.map(lambda line: run(*line), lines))
shown = set()
for line, text in zip(lines, texts):
    documents = hold(" ".join(line), text)
    kinds.add(line[0])
    if documents and line[0] not in shown and not faults:
        shown.add(line[0])
        hold_strictly(" ".join(line), documents[0])

# A file at fault.
for command in ("check", "size", "improve", "diagnose", "parts", "warmup"):
    for document in hold(f"{command} of a faulty file", run(command, "-", "--json", entered='{"run": [{}]}\n')):
        if not document["result"].get("errors"):
            faults.append(f"{command} of a faulty file: no errors")

if held < 200 or len(kinds) < 10:
    faults.append(f"only {held} answers of {len(kinds)} commands were held")
if faults:
    sys.exit("\n".join(faults[:40]))
