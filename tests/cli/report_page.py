"""Holds the page that `report` writes of every example to what it promises.

    python3 report_page.py PROGRAM EXAMPLES

Well-formed, self-contained, not heavy, headings in order, every list of contents and table with its heads,
the figures and findings of `check --json`, the exit status of `check`; titles that try to break out do not.
"""

import html.parser
import json
import pathlib
import re
import subprocess
import sys
import time
import xml.etree.ElementTree as tree

PROGRAM, EXAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
MOST_BYTES = 300_000
SVG = "{http://www.w3.org/2000/svg}"
faults = []


def run(*arguments, text=None):
    done = subprocess.run([PROGRAM, *arguments], input=text, capture_output=True, text=True, encoding="utf-8", check=False)
    return done.returncode, done.stdout


def bare(text):
    """As words() has it: back ticks are code on the page."""
    return " ".join(text.replace("`", "").split())


def words(element):
    return " ".join("".join(element.itertext()).split())


class Tags(html.parser.HTMLParser):
    """What an HTML parser makes of it: every element that is opened is closed."""

    VOID = {"meta", "br", "hr", "img", "link", "input"}

    def __init__(self):
        super().__init__()
        self.open, self.wrong, self.seen = [], [], set()

    def handle_starttag(self, tag, attrs):
        self.seen.add(tag)
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.seen.add(tag)

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            self.wrong.append(tag)


def check_page(name, page, answer):
    def fault(what):
        faults.append(f"{name}: {what}")

    if len(page.encode()) > MOST_BYTES:
        fault(f"{len(page.encode())} bytes")
    if not page.startswith("<!DOCTYPE html>\n"):
        fault("no document type")
    root = tree.fromstring(page.split("\n", 1)[1])
    tags = Tags()
    tags.feed(page)
    if tags.wrong or tags.open:
        fault(f"not closed in order: {tags.wrong[:3]} {tags.open[:3]}")
    if {"script", "img", "link", "iframe", "object"} & tags.seen:
        fault(f"brings in {tags.seen & {'script', 'img', 'link', 'iframe', 'object'}}")
    for element in root.iter():
        for key, value in element.attrib.items():
            if key in ("src", "href") and not value.startswith("#"):
                fault(f"refers to {value}")
            if key.startswith("on") or key == "style":
                fault(f"has {key}")
    style = root.find("head/style").text
    if re.search(r"url\(|@import|https?:", style):
        fault("its style fetches something")
    if root.get("lang") != "en" or not words(root.find("head/title")):
        fault("no language or title")
    for landmark in ("header", "nav", "main", "footer"):
        if len(root.findall(f"body/{landmark}")) != 1:
            fault(f"not one {landmark}")
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    if len(ids) != len(set(ids)):
        fault("an id twice")
    for link in root.iter("a"):
        if link.get("href")[1:] not in ids:
            fault(f"{link.get('href')} leads nowhere")
    level = 0
    for element in root.iter():
        if re.fullmatch("h[1-6]", str(element.tag)):
            if int(element.tag[1]) > level + 1:
                fault(f"{element.tag} behind h{level}: {words(element)}")
            level = int(element.tag[1])
    if len(list(root.iter("h1"))) != 1:
        fault("not one h1")
    for table in root.iter("table"):
        if not any(head.get("scope") for head in table.iter("th")):
            fault(f"a table without heads: {words(table)[:60]}")
    pictures = list(root.iter(SVG + "svg"))
    if not pictures or not all(p.get("role") == "img" and p.get("aria-label") for p in pictures):
        fault("a picture without a text in its place")
    text = words(root.find("body"))
    for caution in answer["cautions"]:
        if bare(caution) not in text:
            fault(f"does not warn: {caution}")
    result = answer["result"]
    for told in (result.get("sentence"), *result.get("urgent", ())):
        if told and bare(told) not in text:
            fault(f"does not say {told}")
    if "findings" not in result:
        return
    for finding in result["findings"]:
        for key in ("title", "message", "remedy"):
            if bare(finding[key]) not in text:
                fault(f"does not say {finding[key]}")
    for harm in result["verdict"]:
        if harm["outcome"] != "does not apply" and bare(harm["sentence"]) not in text:
            fault(f"does not say {harm['sentence']}")
    for assumed in answer["assumptions"]:
        if bare(assumed["what"]) not in text:
            fault(f"does not say that it took {assumed['what']}")


slowest = 0.0
for file in sorted(EXAMPLES.glob("*.json")):
    start = time.monotonic()
    status, page = run("report", str(file))
    slowest = max(slowest, time.monotonic() - start)
    check_status, answer = run("check", str(file), "--json")
    if status != check_status:
        faults.append(f"{file.name}: status {status}, that of check is {check_status}")
    check_page(file.name, page, json.loads(answer))

for file in ("net-loft", "tannery", "dye-house", "ferry-office"):
    path = str(EXAMPLES / f"{file}.json")
    status, page = run("diagnose", path, "--format", "html")
    json_status, answer = run("diagnose", path, "--json")
    if status != json_status:
        faults.append(f"diagnose {file}: status {status}, not {json_status}")
    check_page(f"diagnose {file}", page, json.loads(answer))
layouts = [str(EXAMPLES / f"{file}.json") for file in ("bindery", "toll-house", "village-hall")]
status, page = run("compare", *layouts, "--format", "html")
json_status, answer = run("compare", *layouts, "--json")
if status != json_status:
    faults.append(f"compare: status {status}, not {json_status}")
check_page("compare", page, json.loads(answer))

# A batch: what the lines say, summed up on a page of its own.
batch_files = sorted(str(file) for file in EXAMPLES.glob("*.json"))
status, page = run("batch", *batch_files, "--format", "html")
lines_status, lines = run("batch", *batch_files, "--format", "ndjson")
if status != lines_status:
    faults.append(f"batch: status {status}, not {lines_status}")
rows = [json.loads(line) for line in lines.splitlines()]
check_page("batch", page, {"cautions": [], "result": {}})
text = words(tree.fromstring(page.split("\n", 1)[1]).find("body"))
counts = {outcome: sum(row["outcome"] == outcome for row in rows) for outcome in ("pass", "open", "short", "fault")}
if (
    f"{len(rows)} installations: {counts['pass']} pass, {counts['open']} open, {counts['short']} fall short, "
    f"{counts['fault']} at fault."
) not in text:
    faults.append(f"batch: does not count {counts}")
for row in rows:
    if (row["outcome"] != "pass") != (f">{row['id']}<" in page):
        faults.append(f"batch: {row['id']} {row['outcome']} is not where it belongs")
if "Carbon monoxide" not in text:
    faults.append("batch: does not warn")

broken = json.loads(re.sub(r"^\s*//.*$", "", (EXAMPLES / "net-loft.json").read_text(encoding="utf-8"), flags=re.M))
for title in ("</title><script>alert(1)</script>", "a & b < c > \"d\" 'e'", "\u202eturned\u2066", "\ufffe\uffff", "\u0001<b>\u00022x\u0003\u0002Z", "`code` --- ]]>"):
    broken["title"] = title
    broken["site"]["weather"][0]["name"] = title
    for observed in broken.get("observed", []):
        observed.pop("weather", None)
    text = json.dumps(broken)
    status, page = run("report", "-", text=text)
    if status in (0, 1):
        check_page(repr(title), page, json.loads(run("check", "-", "--json", text=text)[1]))
    elif status != 2:
        faults.append(f"{title!r}: status {status}")

print(f"slowest report {1000 * slowest:.0f} ms")
if faults:
    sys.exit("\n".join(faults))
