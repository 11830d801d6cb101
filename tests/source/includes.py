"""Fails on a source that names what a header of the project declares and does not include that header,
itself or through others. A build in units hides that: the source before it brings the header in.

    python3 includes.py CHECKOUT

It reads names, not grammar: types, functions of more than one word, and what is named with its namespace, as
far as one header alone declares it.
"""

import pathlib
import re
import sys

root = pathlib.Path(sys.argv[1])
SEARCH = (root / "include", root / "src")
COMMENT = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])\'', re.S)
INCLUDE = re.compile(r'^\s*#include "([^"]+)"', re.M)
TYPE = re.compile(r"^(?:struct|class|enum class|enum) (\w+)\b(?!;)", re.M)
ALIAS = re.compile(r"^using (\w+) =", re.M)
CONSTANT = re.compile(r"^(?:inline )?constexpr [\w:<>, *&]+ (\w+)(?:\{| =)", re.M)
FUNCTION = re.compile(r"^(?:\[\[nodiscard\]\] )?(?:inline |constexpr |template <[^\n]*>\n)*(?=\S)[\w:<>, *&]+?[ \n*&](\w+)\(", re.M)
NAMESPACE = re.compile(r"^namespace fluewright::(\w+)", re.M)
USED_QUALIFIED = re.compile(r"(?<![\w:])(?:fluewright::)?(\w+)::(\w+)\b")
USED_TYPE = re.compile(r"(?<![\w.:>])([A-Z]\w+)(?=\s*(?:\{|::|[&*]* \w|>|,))")
USED_CALL = re.compile(r"(?<![\w.:>])([a-z]\w*_\w*[a-z0-9])\(")
OWN_CALL = re.compile(r"(?<!return)(?<!else)(?<!throw)(?<=[\w>&*])[ \n]([a-z]\w+)\(|(?:auto|using)&? (?:\w+::)*(\w+)(?: =|;)|(?:[,(] |\()(?:const )?[\w:<>]+&&? (\w+)")
OWN = re.compile(r"(?:struct|class|enum|typename) (\w+)|using (\w+) =|\b([A-Z]\w+)\(|\b([A-Z]\w+)(?:;| = )")


def text_of(path):
    return COMMENT.sub(lambda m: '""' if m[0][0] == '"' else " ", path.read_text())


def own_names(text):
    return {name for pattern in (OWN, OWN_CALL) for found in pattern.findall(text) for name in found if name}


def resolve(spelled, beside):
    for folder in (beside, *SEARCH):
        if (folder / spelled).is_file():
            return (folder / spelled).resolve()
    return None


headers = {path.resolve() for top in SEARCH for path in top.rglob("*.hpp")}
included, declared, inner = {}, {}, {}
for path in headers:
    raw = path.read_text()
    included[path] = {found for spelled in INCLUDE.findall(raw) if (found := resolve(spelled, path.parent))}
    text = text_of(path)
    inner[path] = own_names("\n".join(line for line in text.split("\n") if line[:1] in (" ", "}")))
    for pattern in (TYPE, ALIAS, CONSTANT, FUNCTION):
        for name in pattern.findall(text):
            declared.setdefault(name, set()).add(path)


def reached(start):
    seen, open_ = set(), set(start)
    while open_:
        path = open_.pop()
        if path not in seen:
            seen.add(path)
            open_ |= included.get(path, set())
    return seen


spaces = {space for path in headers for space in NAMESPACE.findall(path.read_text())}
faults, asked = [], 0
for source in sorted((root / "src").rglob("*.cpp")):
    text = text_of(source)
    have = reached(found for spelled in INCLUDE.findall(source.read_text()) if (found := resolve(spelled, source.parent)))
    own = own_names(text).union(*(inner[path] for path in have))
    used = {name for space, name in USED_QUALIFIED.findall(text) if space in spaces}
    used |= set(USED_TYPE.findall(text)) | set(USED_CALL.findall(text))
    for name in sorted(used - own):
        where = declared.get(name, ())
        if len(where) != 1:
            continue
        asked += 1
        if not where & have:
            header = next(iter(where)).relative_to(root.resolve())
            faults.append(f"{source.relative_to(root)}: uses {name}, does not include {header}")
if asked == 0:
    faults.append("no name of a header was found in a source")
if faults:
    sys.exit("\n".join(faults))
print(f"{asked} names asked")
