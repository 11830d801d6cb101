"""What a person may write (titles, names, names of files) stays text in whatever a command answers.

    escapes.py PROGRAM EXAMPLES SCRATCH

Every free text of one installation breaks out of markup, begins a formula, or both. No command may
let an element, a script, an address, a formula or a character that steers a terminal out of it.
"""

import csv
import html.parser
import io
import json
import os
import re
import unicodedata
import xml.etree.ElementTree as tree

from processes import begin, examples, expect, finish, read, run, write

begin()

BREAK_OUT = "=1+1\"'><script src=//x>alert(1)</script><img src=x onerror=y>&amp;]]>-->`"
FORMULAS = ("=", "+", "-", "@", "\t")


def hostile(name, text):
    """The text with every name and title of it replaced by one that breaks out."""
    lines = [line for line in text.splitlines() if not line.strip().startswith("//")]
    file = json.loads("\n".join(lines))
    file["title"] = BREAK_OUT + "title"
    file["id"] = BREAK_OUT + "id"
    count = 0

    def names(value):
        nonlocal count
        if isinstance(value, dict):
            if isinstance(value.get("name"), str) and ("flow" in value or "outdoor_temperature" in value
                                                       or "area" in value or "element" in value):
                count += 1
                value["name"] = f"{BREAK_OUT}{count}"
            for member in value.values():
                names(member)
        elif isinstance(value, list):
            for member in value:
                names(member)

    names(file)
    # Names of the file's own, which other places of it use.
    text = json.dumps(file, ensure_ascii=False)
    for own in ("fuels", "walls", "fittings"):
        for key in file.get(own, {}):
            text = text.replace(json.dumps(key), json.dumps(BREAK_OUT + key))
    write(name, text.encode())


NAMES = ("pump-house", "weaving-mill", "weigh-house", "tannery", "toll-house", "tile-kiln")
FILES = []
for example in NAMES:
    with open(f"{examples}/{example}.json", encoding="utf-8") as given:
        FILES.append(f"=1+<script>&{example}.json")
        hostile(FILES[-1], given.read())
write("prices.json", json.dumps({"currency": BREAK_OUT, "prices": {"sweep": 90, "raise-top": 100}}).encode())
write("pieces.json", json.dumps({"currency": BREAK_OUT, "prices": [{"what": BREAK_OUT, "each": 3}]}).encode())


class Page(html.parser.HTMLParser):
    """Elements and attributes as a browser would see them."""

    def __init__(self):
        super().__init__()
        self.wrong = []

    def handle_starttag(self, tag, attrs):
        if tag in ("script", "img", "iframe", "object", "embed", "base", "form", "link"):
            self.wrong.append(tag)
        for name, value in attrs:
            if name != "xmlns" and (
                    name.startswith("on") or re.match(r"\s*(javascript|data|https?):|//", value or "", re.I)):
                self.wrong.append(f"{tag} {name}={value}")

    handle_startendtag = handle_starttag


def check_visible(what, text):
    steering = {hex(ord(c)) for c in text
                if c not in "\n\r" and unicodedata.category(c) in ("Cc", "Cf", "Zl", "Zp", "Co", "Cn", "Cs")}
    expect(not steering, f"{what}: {steering}")


def check_svg(what, text):
    try:
        root = tree.fromstring(text)
    except tree.ParseError as fault:
        expect(False, f"{what}: not well-formed: {fault}")
        return
    for element in root.iter():
        tag = element.tag.split("}")[-1]
        expect(tag not in ("script", "image", "foreignObject", "img", "a"), f"{what}: an element {tag}")
        for name, value in element.attrib.items():
            expect(not name.split("}")[-1].startswith("on") and "script:" not in value, f"{what}: {name}={value}")


def check_html(what, text):
    page = Page()
    page.feed(text)
    expect(not page.wrong, f"{what}: {page.wrong[:3]}")
    for picture in re.findall(r"<svg.*?</svg>", text, re.S):
        check_svg(what, picture)


def check_csv(what, text):
    for row in csv.reader(io.StringIO(text, newline="")):
        for cell in row:
            if cell.startswith(FORMULAS):
                try:
                    float(cell)
                except ValueError:
                    expect(False, f"{what}: a formula {cell[:40]!r}")
            expect(cell.lower() not in ("inf", "nan", "-inf", "-nan"), f"{what}: a cell {cell!r}")


def check_json(what, text):
    def refuse(word):
        expect(False, f"{what}: {word} in JSON")

    for line in text.splitlines() if "ndjson" in what else [text]:
        json.loads(line, parse_constant=refuse)


CHECKS = {"svg": check_svg, "html": check_html, "csv": check_csv, "json": check_json, "ndjson": check_json}
tried = 0


def check(arguments, form="text"):
    global tried
    tried += 1
    status, out, error = run(*arguments)
    what = " ".join(arguments)[:150] + f" ({form})"
    expect(status in (0, 1), f"{what}: status {status}, {error[:300]}")
    text = out.decode("utf-8")
    check_visible(what, text)
    check_visible(what + " complaints", error)
    if form in CHECKS:
        CHECKS[form](what, text)


for file in FILES:
    over = ["--over", "moisture=12..25%:2"]
    check(["check", file, "--details"])
    check(["check", file, "--json"], "json")
    check(["report", file], "html")
    check(["draw", file], "svg")
    for shown in ("temperature", "cut-list"):
        check(["draw", file, "--show", shown], "svg")
    check(["draw", file, "--profile"], "svg")
    check(["sweep", file, *over])
    for form in ("svg", "csv", "json"):
        check(["sweep", file, *over, "--format", form], form)
    for form in ("svg", "csv", "json"):
        check(["size", file, "--format", form], form)
    for form in ("text", "csv", "json"):
        check(["parts", file, "--prices", "pieces.json", "--format", form], form)
    check(["batch", file, "--format", "csv", "--values", "fuel,height,/run/0/wall"], "csv")
    check(["batch", file, "--format", "csv", "--fields", "all"], "csv")
    check(["batch", file, "--format", "ndjson", "--fields", "all"], "ndjson")
    check(["batch", file, "--summary"])
    check(["vary", file, *over], "ndjson")
for file in (FILES[0], FILES[3]):
    for form in ("text", "svg", "csv", "json"):
        check(["warmup", file, "--minutes", "10", "--format", form], form)
    for form in ("text", "csv", "json"):
        check(["improve", file, "--prices", "prices.json", "--most", "2", "--format", form], form)
    for form in ("text", "svg", "html", "json"):
        check(["diagnose", file, "--format", form], form)
    for form in ("text", "svg", "html", "csv", "json"):
        check(["compare", file, FILES[4], "--format", form], form)

# What is refused is told without being carried out; a page of faults, too.
write("wrong.json", json.dumps({"title": BREAK_OUT, BREAK_OUT: {BREAK_OUT: BREAK_OUT}}).encode())
for arguments in (["check", "wrong.json"], ["check", "wrong.json", "--json"], ["report", "wrong.json"],
                  ["draw", "wrong.json"], ["batch", "wrong.json", "--format", "csv", "--fields", "all"],
                  ["explain", BREAK_OUT], ["catalog", BREAK_OUT], ["completions", BREAK_OUT], ["help", BREAK_OUT],
                  ["check", FILES[0], "--rules", BREAK_OUT], ["manual", BREAK_OUT], [BREAK_OUT],
                  ["sweep", FILES[0], "--over", BREAK_OUT], ["draw", FILES[0], "--condition", BREAK_OUT + "\x1b[2J\u202e"]):
    status, out, error = run(*arguments)
    what = " ".join(arguments)[:100]
    expect(status == 2, f"{what}: status {status}")
    check_visible(what, out.decode("utf-8") + error)
    if "csv" in arguments:
        check_csv(what, out.decode("utf-8"))

# A key of the file that steers comes back in the place of the fault.
write("steers.json", '{"appliance": {"\u202e\ufeffx": null}}'.encode())
for form in ([], ["--json"]):
    status, out, error = run("check", "steers.json", *form)
    check_visible(f"a key that steers {form}", out.decode("utf-8") + error)

# Of a name of a file that is no text at all.
os.rename(FILES[4], b"bytes\xff\xfe\x1b[2J.json")
for form in ("csv", "ndjson", "table"):
    status, out, error = run("batch", b"bytes\xff\xfe\x1b[2J.json", "--format", form)
    expect(status in (0, 1), f"a file name of bytes: {status} {error}")
    check_visible(f"a file name of bytes ({form})", out.decode("utf-8", errors="strict"))
for command in (["report"], ["draw"], ["check", "--json"], ["compare"], ["compare", "--format", "csv"], ["parts"], ["vary", *over]):
    more = [FILES[0]] if command[0] == "compare" else []
    status, out, error = run(*command[:1], b"bytes\xff\xfe\x1b[2J.json", *more, *command[1:])
    expect(status in (0, 1), f"{command}, a file name of bytes: {status} {error}")
    check_visible(f"{command}, a file name of bytes", out.decode("utf-8", errors="strict"))

print("answers:", tried)
finish()
