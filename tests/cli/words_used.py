"""Holds every word a person reads to the glossary: no word that it does not use, no long sentence.

Usage: words_used.py PROGRAM ROOT

Read are the tables of data/, the help of every command, every page of `explain`, the documents, and the
text that every command gives for every example.
"""

import csv
import json
import pathlib
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

program, root = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
LONGEST = 30  # words in a sentence


def rows_of(table):
    with open(root / f"data/{table}.csv", newline="") as file:
        yield from csv.DictReader(line for line in file if not line.startswith("#"))


banned = {}
for row in rows_of("glossary"):
    for word in filter(None, row["not_used"].split("|")):
        banned[word.lower()] = row["id"]
forbidden = re.compile(
    r"(?<![\w-])(" + "|".join(sorted(map(re.escape, banned), key=len, reverse=True)) + r")(?![\w-])", re.I
)
# "safe" promises what no calculation can.
promise = re.compile(r"(?<![\w-])(safe|safely)(?![\w-])", re.I)
faults = []
read = set()  # lines and sentences: most stand in many answers


def plain_words(where, text):
    for line in text.splitlines():
        if line in read:
            continue
        read.add(line)
        for word in forbidden.findall(line):
            faults.append(f"{where}: `{word}`, say `{banned[word.lower()]}`: {line.strip()[:110]}")
        if promise.search(line):
            faults.append(f"{where}: promises safety: {line.strip()[:110]}")


def short_sentences(where, text):
    # A list after a colon and the parts between semicolons are read one by one.
    for sentence in re.split(r"(?<=[.;:?!])\s+|\n\s*\n", text):
        if ("sentence", sentence) in read:
            continue
        read.add(("sentence", sentence))
        words = [word for word in sentence.split() if re.search(r"[A-Za-z]", word)]
        if sum(word.endswith(",") for word in words) > len(words) / 2:
            continue  # a list of names
        if len(words) > LONGEST:
            faults.append(f"{where}: {len(words)} words: {' '.join(sentence.split())[:160]}")


def prose_of(document):
    """The paragraphs of a page, without what is code, table, heading or equation."""
    text = re.sub(r"^```.*?^```$", "", document, flags=re.S | re.M)
    text = re.sub(r"^\s*[-*|#].*$", lambda m: m.group(0) if m.group(0).lstrip()[0] in "-*" else "", text, flags=re.M)
    return re.sub(r"^(\s*[-*] )", r"\n\n\1", text, flags=re.M)


# Tables: what is text for people, not names that other tables refer to.
names_only = {"id", "aliases", "source", "mark", "layers", "kinds", "not_used", "confirm", "reveals"}
for path in sorted((root / "data").glob("*.csv")):
    if path.stem in ("sources", "glossary"):  # titles of documents; the words themselves
        continue
    for row in rows_of(path.stem):
        for column, cell in row.items():
            if column not in names_only and cell:
                plain_words(f"data/{path.name}, {row.get('id', '')}, {column}", cell)
                if column not in ("note", "rule"):
                    short_sentences(f"data/{path.name}, {row.get('id', '')}, {column}", cell)
for row in rows_of("glossary"):
    short_sentences(f"data/glossary.csv, {row['id']}", row["meaning"])


def run(*words):
    done = subprocess.run([program, *words], cwd=root / "examples", capture_output=True, text=True, timeout=300)
    assert done.returncode in (0, 1, 2), f"{words}: status {done.returncode}\n{done.stderr}"
    return done.stdout + done.stderr


def paragraphs(text):
    """Text as printed, its wrapped lines joined where they are no table."""
    joined, before = [], ""
    for line in text.splitlines():
        table = re.search(r"\S {2,}\S", line.lstrip())
        if table or not line.strip():
            joined.append("\n\n")
        else:
            under_heading = before and not before.startswith(" ") and line.startswith("  ")
            fresh = re.match(r"\s*(\d+\.|-|\*) |  fluewright ", line) or under_heading or len(line) - len(line.lstrip()) < len(before) - len(before.lstrip())
            joined.append(("\n\n" if fresh else " ") + line.strip())
        before = line
    return "".join(joined)


commands = re.findall(r"^  ([a-z]+) ", run("--help").split("\nCommands:\n")[1].split("\n\n")[0], re.M)
assert "check" in commands and len(commands) > 12, commands
for words in [("--help",), *((command, "--help") for command in commands)]:
    text = run(*words)
    plain_words(" ".join(words), text)
    short_sentences(" ".join(words), paragraphs(text))

ids = set()
for table in ("causes", "checks", "remedy_effort", "rule_bodies", "rules"):
    ids |= {row["id"] for row in rows_of(table)}
ids |= set(re.findall(r"^## ([a-z0-9-]+)$", (root / "docs/checks.md").read_text(), re.M))
ids |= {"high fire", "low fire", "air control open", "reloading on embers", "idle", "cold start", "fire", "draft", "upkeep"}
for row in rows_of("glossary"):  # every word and every alias has a page
    for word in (row["id"], *filter(None, row["aliases"].split("|"))):
        page = run("explain", word)
        if "no page" in page:
            faults.append(f"explain {word}: no page")
        short_sentences(f"explain {word}", paragraphs(page))
for word in sorted(ids):
    page = run("explain", word)
    plain_words(f"explain {word}", re.sub(r"\n(Source|Sources|Also called|By .*)\n.*?(?=\n\n|\Z)", "", page, flags=re.S))
    short_sentences(f"explain {word}", paragraphs(page))

titles = re.compile(r"\[[^\]]*\]", re.S)  # the title of a document is spelled as it is
asked = [
    (command, example.name, *options)
    for example in sorted((root / "examples").glob("*.json"))
    for command, *options in (
        ("check",),
        ("check", "--details", "--rules", "us", "--units", "us"),
        ("check", "--details", "--rules", "uk"),
        ("check", "--requirements"),
        ("check", "--method", "en13384"),
        ("improve",),
        ("diagnose",),
        ("size",),
        ("parts",),
        ("warmup",),
        ("sweep", "--over", "outdoor=-10..15degC:3"),
    )
]
asked.append(("compare", "bindery.json", "boat-shed.json"))
asked.append(("batch", "."))
with ThreadPoolExecutor(2) as pool:
    for words, text in zip(asked, pool.map(lambda words: run(*words), asked)):
        own = titles.sub("", text)
        plain_words(" ".join(words), own)
        short_sentences(" ".join(words), paragraphs(own))

for path in [root / "README.md", *sorted((root / "docs").rglob("*.md"))]:
    if path.name in ("changelog.md", "validation.md", "rules.md") or "validation" in path.parts:
        continue  # what was called otherwise in its time; titles of documents
    text = path.read_text()
    plain_words(str(path.relative_to(root)), re.sub(r"`[^`]*`", "", text))
    if path.parent.name == "guide" or path.name in ("README.md", "guide.md"):
        short_sentences(str(path.relative_to(root)), prose_of(text))

unlike = list(dict.fromkeys(faults))
print("\n".join(unlike[:400]))
print(f"{len(asked)} answers, {len(ids)} pages, {len(unlike)} faults")
sys.exit(1 if unlike else 0)
