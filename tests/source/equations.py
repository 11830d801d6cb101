"""Fails unless the equations of docs/theory.md are numbered one after the other, each is quoted
somewhere in the code, and the code quotes none that is not there.

    python3 equations.py CHECKOUT

An equation begins its line, or the bold heading of a list entry: "(12) ...". The code quotes it as
"theory eq. 12", "theory eq. 12, 14" or "theory eq. 12 to 14".
"""

import pathlib
import re
import sys

root = pathlib.Path(sys.argv[1])
theory = (root / "docs/theory.md").read_text()
numbers = [int(n) for n in re.findall(r"^(?:- \*\*[^*]+\*\* )?\((\d+)\)", theory, re.M)]
faults = []
if numbers != list(range(1, len(numbers) + 1)):
    odd = next(i for i, n in enumerate(numbers, 1) if n != i)
    faults.append(f"docs/theory.md: equation ({numbers[odd - 1]}) stands where ({odd}) is due")
if re.search(r"^\(\d+[a-z]\)", theory, re.M):
    faults.append("docs/theory.md: numbers have no letters")
quoted = set()
for folder in ("include", "src"):
    for path in sorted((root / folder).rglob("*.[ch]pp")):
        text = re.sub(r"\n\s*//+<? ?", " ", path.read_text())
        for found in re.finditer(r"theory eq\. (\d+(?:(?:, | to )\d+)*)", text):
            for part in found.group(1).split(", "):
                first, _, last = part.partition(" to ")
                for number in range(int(first), int(last or first) + 1):
                    quoted.add(number)
                    if number not in numbers:
                        faults.append(f"{path.relative_to(root)}: docs/theory.md has no equation ({number})")
        if re.search(r"\[theory(?! eq\. \d)", text):
            faults.append(f"{path.relative_to(root)}: quote docs/theory.md by number: theory eq. 12")
for number in numbers:
    if number not in quoted:
        faults.append(f"docs/theory.md: nobody in the code quotes equation ({number})")
if not numbers:
    faults.append("docs/theory.md: no equations")
if faults:
    sys.exit("\n".join(faults))
