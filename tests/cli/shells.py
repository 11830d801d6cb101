"""Completes in the shells themselves, and holds the manual page to mandoc's lint.

Usage: shells.py PROGRAM SCRATCH; it needs bash, zsh, fish and mandoc.
"""

import os
import pathlib
import pty
import re
import select
import shutil
import subprocess
import sys
import time

program, scratch = (pathlib.Path(word).resolve() for word in sys.argv[1:3])
shutil.rmtree(scratch, ignore_errors=True)
scratch.mkdir(parents=True)
missing = [tool for tool in ("bash", "zsh", "fish", "mandoc") if shutil.which(tool) is None]
assert not missing, f"not installed: {', '.join(missing)}"
paths = dict(os.environ, PATH=f"{program.parent}:{os.environ['PATH']}", HOME=str(scratch), LC_ALL="C.UTF-8", TERM="dumb")


def run(words, **more):
    done = subprocess.run(words, env=paths, cwd=scratch, text=True, capture_output=True, timeout=60, **more)
    assert done.returncode == 0, f"{words}: status {done.returncode}\n{done.stdout}{done.stderr}"
    return done.stdout


# The manual page.
page = run([program, "manual"])
(scratch / "fluewright.1").write_text(page)
lint = subprocess.run(["mandoc", "-T", "lint", "-W", "style", "fluewright.1"], cwd=scratch, capture_output=True, text=True)
assert lint.stdout + lint.stderr == "", lint.stdout + lint.stderr
shown = re.sub(".\b", "", run(["mandoc", "-T", "ascii", "fluewright.1"]))
help_text = run([program, "--help"])
commands = re.findall(r"^  ([a-z]+) ", help_text.split("\nCommands:\n")[1].split("\n\n")[0], re.M)
for command in commands:
    assert f"fluewright {command}" in shown, f"the manual page lacks {command}"
    for option in re.findall(r"^  (?:-\w, )?(--[a-z-]+)", run([program, command, "--help"]), re.M):
        assert option in shown, f"the manual page lacks {option} of {command}"

# What each shell makes of a beginning: the one word it must become.
cases = {
    "fluewright chec": "fluewright check",
    "fluewright che": "fluewright check",
    "fluewright diagnose --as": "fluewright diagnose --ask",
    "fluewright check --units met": "fluewright check --units metric",
    "fluewright check --rules c": "fluewright check --rules ca",
    "fluewright check --format js": "fluewright check --format json",
    "fluewright sweep --format sv": "fluewright sweep --format svg",
    "fluewright check bind": "fluewright check bindery.json",
}
(scratch / "bindery.json").write_text("{}")
for shell, name in (("bash", "fluewright.bash"), ("zsh", "_fluewright"), ("fish", "fluewright.fish")):
    (scratch / name).write_text(run([program, "completions", shell]))

for typed, wanted in cases.items():
    words = typed.split()
    script = (
        "source ./fluewright.bash\n"
        f"COMP_WORDS=({' '.join(words)}); COMP_CWORD={len(words) - 1}\n"
        '_fluewright\nprintf "%s\\n" "${COMPREPLY[@]}"\n'
    )
    found = run(["bash", "--norc", "-c", script]).split()
    assert found == [wanted.split()[-1]], f"bash: {typed} -> {found}"
    found = run(["fish", "--no-config", "-c", f"source ./fluewright.fish; complete -C '{typed}'"])
    found = [line.split("\t")[0] for line in found.splitlines()]
    assert found == [wanted.split()[-1]], f"fish: {typed} -> {found}"

# zsh completes on a line being edited; what the line has become is written down by a key of its own.
(scratch / ".zshrc").write_text(
    "fpath=($PWD $fpath)\nautoload -Uz compinit\ncompinit -u -D\nPS1='ready> '\n"
    "note() { print -r -- $BUFFER >> lines; BUFFER= }\nzle -N note\nbindkey '^X' note\nunsetopt beep\n"
)
child, terminal = pty.fork()
if child == 0:
    os.chdir(scratch)
    os.execvpe("zsh", ["zsh", "-i"], paths)


def read_until(text, seconds=20):
    seen, end = "", time.monotonic() + seconds
    while time.monotonic() < end:
        if select.select([terminal], [], [], 0.2)[0]:
            try:
                seen += os.read(terminal, 4096).decode(errors="replace")
            except OSError:
                break
            if text in seen:
                return seen
    raise AssertionError(f"zsh never said {text!r}: {seen!r}")


read_until("ready> ")
for number, (typed, wanted) in enumerate(cases.items(), 1):
    os.write(terminal, typed.encode() + b"\t\x18")
    end = time.monotonic() + 20
    lines = []
    while time.monotonic() < end and len(lines) < number:
        time.sleep(0.05)
        if select.select([terminal], [], [], 0)[0]:
            os.read(terminal, 4096)
        lines = (scratch / "lines").read_text().splitlines() if (scratch / "lines").exists() else []
    assert len(lines) == number and lines[-1].rstrip() == wanted, f"zsh: {typed} -> {lines[-1:]}"
os.write(terminal, b"\x15exit\n")
os.waitpid(child, 0)
print(f"{len(cases)} completions in three shells; {len(commands)} commands in the manual page")
