"""Runs every command of docs/guide.md on the files the page shows, and compares what it prints.

Usage: guide.py PROGRAM ROOT SCRATCH. With FLUEWRIGHT_UPDATE_DOCS=1 the page is written anew instead.
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys

program, root, scratch = (pathlib.Path(word).resolve() for word in sys.argv[1:4])
page = root / "docs/guide.md"
text = page.read_text()
shutil.rmtree(scratch, ignore_errors=True)
scratch.mkdir(parents=True)
paths = dict(os.environ, PATH=f"{program.parent}:{os.environ['PATH']}", LC_ALL="C.UTF-8", NO_COLOR="1")
files = re.findall(r"^```json (\S+)\n(.*?)^```$", text, re.S | re.M)
for name, content in files:
    (scratch / name).write_text(content)
runs = 0


def run(words):
    done = subprocess.run(words, cwd=scratch, env=paths, text=True, capture_output=True, shell=True)
    assert done.returncode in (0, 1, 2), f"{words}: status {done.returncode}"
    return done


def shown(match):
    global runs
    runs += 1
    command = match.group(1)
    done = run(command)
    return f"```console\n$ {command}\n{done.stdout}{done.stderr}```"


made = re.sub(r"^```console\n\$ (.*?)\n(.*?)^```$", shown, text, flags=re.S | re.M)
# Commands in running text: each must be one, with options it has.
for words in re.findall(r"`fluewright ([a-z]+[^`]*)`", text):
    command, *more = words.split()
    help_text = run(f"fluewright {command} --help").stdout
    assert f"Usage: fluewright {command}" in help_text, words
    for option in [word for word in more if word.startswith("--")]:
        assert option in help_text, f"{command} has no {option}"
options = run("for c in check improve diagnose; do fluewright $c --help; done").stdout
for option in re.findall(r"`(--[a-z-]+)", text):
    assert option in options, option
assert runs == 7 and len(files) == 3, (runs, len(files))
if os.environ.get("FLUEWRIGHT_UPDATE_DOCS"):
    page.write_text(made)
elif made != text:
    import difflib

    sys.exit("\n".join(difflib.unified_diff(text.splitlines(), made.splitlines(), "docs/guide.md", "the program", lineterm="")))
print(f"{runs} commands")
