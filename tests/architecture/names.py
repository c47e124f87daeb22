"""Rejects a field name that is a keyword or a common macro in a language people read designs from."""

import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

CPP = """alignas alignof and asm auto bitand bitor bool break case catch char class compl concept const consteval constexpr
constinit continue decltype default delete do double else enum explicit export extern false float for friend goto if inline
int long mutable namespace new noexcept not nullptr operator or private protected public register requires return short
signed sizeof static struct switch template this throw true try typedef typeid typename union unsigned using virtual void
volatile wchar_t while xor linux unix major minor errno assert index stdin stdout stderr NULL EOF min max""".split()
PYTHON = """False None True and as assert async await break class continue def del elif else except finally for from global
if import in is lambda nonlocal not or pass raise return try while with yield""".split()
JAVASCRIPT = """await break case catch class const continue debugger default delete do else enum export extends false finally
for function if implements import in instanceof interface let new null package private protected public return static super
switch this throw true try typeof var void while with yield constructor __proto__ prototype""".split()
LUA = """and break do else elseif end false for function goto if in local nil not or repeat return then true until
while""".split()
# `min` and `max` are macros only under a Windows header that the program can turn off; ranges are too clear to rename.
TAKEN = set(CPP + PYTHON + JAVASCRIPT + LUA) - {"min", "max"}

FIELD = re.compile(r"^\s+(?:optional\s+|repeated\s+)?(?:map<[^>]+>|[\w.]+)\s+(\w+)\s*=\s*\d+", re.M)


def main():
    bad = []
    count = 0
    for path in sorted((ROOT / "proto").rglob("*.proto")):
        text = re.sub(r"//.*", "", path.read_text(encoding="utf-8"))
        for name in FIELD.findall(text):
            count += 1
            if name in TAKEN:
                bad.append(f"{path.relative_to(ROOT)}: field {name} is a keyword or macro somewhere")
    for line in bad:
        print(line)
    print(f"{count} field names, {len(bad)} taken")
    return 1 if bad or count < 100 else 0


if __name__ == "__main__":
    sys.exit(main())
