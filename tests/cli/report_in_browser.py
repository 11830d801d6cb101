"""Opens the pages in headless Chromium: no message on its console, nothing fetched, a PDF by printing.

    python3 report_in_browser.py PROGRAM EXAMPLES SCRATCH

Skipped (status 77) where there is no Chromium. Where FLUEWRIGHT_AXE names axe.min.js of axe-core (npm install
axe-core), each page must be without a violation of its rules, light and dark.
"""

import html
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys

PROGRAM, EXAMPLES, SCRATCH = (pathlib.Path(word).resolve() for word in sys.argv[1:4])
BROWSER = shutil.which("chromium") or shutil.which("chromium-browser")
if BROWSER is None:
    print("no Chromium is installed")
    sys.exit(77)
shutil.rmtree(SCRATCH, ignore_errors=True)
SCRATCH.mkdir(parents=True)
faults = []


def page(name, *arguments):
    file = SCRATCH / f"{name}.html"
    done = subprocess.run([PROGRAM, *arguments, "--output", file], capture_output=True, text=True, check=False)
    if done.returncode not in (0, 1) or not file.exists():
        sys.exit(f"{arguments}: status {done.returncode}\n{done.stderr}")
    return file


def browse(*arguments):
    done = subprocess.run(
        [BROWSER, "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync",
         "--disable-component-update", "--disable-default-apps", "--no-first-run", "--enable-logging=stderr",
         f"--user-data-dir={SCRATCH / 'profile'}", *map(str, arguments)],
        capture_output=True, text=True, errors="replace", timeout=120, check=False)
    return done


def requests(net_log):
    """Why and what: the browser gives a number to what pages ask for, and others to its own errands."""
    return re.findall(r'"traffic_annotation":(\d+),"url":"([^"]*)"', net_log.read_text(errors="replace"))


def check(file):
    def fault(what):
        faults.append(f"{file.name}: {what}")

    net_log, pdf = file.with_suffix(".net.json"), file.with_suffix(".pdf")
    shown = browse(f"--log-net-log={net_log}", "--dump-dom", file.as_uri())
    for line in shown.stderr.splitlines():
        if "CONSOLE" in line:
            fault(f"console: {line}")
    heading = re.search(r"<h1>(.*?)</h1>", file.read_text(encoding="utf-8")).group(1)
    if f"<h1>{heading}</h1>" not in shown.stdout:
        fault("its heading is not shown")
    fetched = {url for kind, url in requests(net_log) if kind == of_pages and not url.startswith("file:")}
    if fetched:
        fault(f"fetches {sorted(fetched)[:3]}")
    printed = browse("--no-pdf-header-footer", f"--print-to-pdf={pdf}", file.as_uri())
    for line in printed.stderr.splitlines():
        if "CONSOLE" in line:
            fault(f"console while printing: {line}")
    content = pdf.read_bytes() if pdf.exists() else b""
    pages = len(re.findall(rb"/Type\s*/Page\b", content))
    if not content.startswith(b"%PDF-") or not 1 <= pages <= 30:
        fault(f"its PDF has {len(content)} bytes and {pages} pages")
    print(f"{file.name}: {pages} pages")


AXE = os.environ.get("FLUEWRIGHT_AXE")
DARK, LIGHT = 0, 1
RUN_AXE = """axe.run(document).then((found) => {
  const out = document.createElement("pre");
  out.id = "found";
  out.textContent = JSON.stringify({dark: matchMedia("(prefers-color-scheme: dark)").matches, held: found.passes.length,
    broken: found.violations.map((rule) => [rule.id, rule.nodes[0].html])});
  document.body.appendChild(out);
});"""


def accessible(file):
    """The page with the checker written into it; its own policy lets no script run, so that goes."""
    page_text = re.sub(r"<meta http-equiv=\"Content-Security-Policy\"[^>]*>", "", file.read_text(encoding="utf-8"))
    checker = pathlib.Path(AXE).read_text(encoding="utf-8").replace("</script", "<\\/script")
    copy = file.with_suffix(".axe.html")
    copy.write_text(page_text.replace("</body>", f"<script>{checker}</script><script>{RUN_AXE}</script></body>"))
    for scheme in (LIGHT, DARK):
        shown = browse(f"--blink-settings=preferredColorScheme={scheme}", "--virtual-time-budget=30000", "--dump-dom",
                       copy.as_uri())
        found = re.search(r'<pre id="found">(.*?)</pre>', shown.stdout, re.S)
        told = json.loads(html.unescape(found.group(1))) if found else None
        if told is None or told["held"] == 0 or told["dark"] != (scheme == DARK):
            faults.append(f"{file.name}: the checker of accessibility told nothing of this page: {told}")
        else:
            faults.extend(f"{file.name}: {rule}: {where}" for rule, where in told["broken"])


# A page that does bring something in must be noticed, or the silence of the others says nothing.
loud = SCRATCH / "loud.html"
loud.write_text('<h1>x</h1><img src="http://127.0.0.1:9/x.png"><script>console.log("heard")</script>')
seen = browse(f"--log-net-log={SCRATCH / 'loud.json'}", "--dump-dom", loud.as_uri())
of_pages = next((kind for kind, url in requests(SCRATCH / "loud.json") if url == "http://127.0.0.1:9/x.png"), None)
if "heard" not in seen.stderr or of_pages is None:
    sys.exit("this Chromium tells neither its console nor what it fetches; the test would see nothing")

# So must one without a language or a name for its picture.
if AXE:
    mute = SCRATCH / "mute.html"
    mute.write_text('<body><h1>x</h1><img src="data:,"></body>')
    accessible(mute)
    if not any("image-alt" in fault for fault in faults):
        sys.exit(f"the checker of accessibility sees nothing: {faults}")
    faults.clear()

pages = [
    page("report", "report", EXAMPLES / "weigh-house.json"),
    page("diagnosis", "diagnose", EXAMPLES / "tannery.json", "--format", "html"),
    page("comparison", "compare", EXAMPLES / "bindery.json", EXAMPLES / "toll-house.json", "--format", "html"),
    page("batch", "batch", EXAMPLES / "bindery.json", EXAMPLES / "toll-house.json", EXAMPLES / "net-loft.json"),
]
for each in pages:
    check(each)
    if AXE:
        accessible(each)
if faults:
    sys.exit("\n".join(faults))
