"""Rejects an upward include: a floor of lib/ may include only what lies below it.

The floors and their order stand here once; DEVELOPERS.md draws the same house. Also keeps generated Protocol Buffers
classes out of the floors that must not know them, and files short enough to hold one idea.
"""

import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

FLOORS = ["units", "findings", "numerics", "document", "rod",
          "sections", "bending", "line_load", "fit", "bonding", "guides", "wraps", "balance",  # the concerns, in their fixed order
          "review", "plugin_host"]
CONCERNS = ["sections", "bending", "line_load", "fit", "bonding", "guides", "wraps", "balance"]
# Skipping a floor is fine, but these see less than all below them.
NOT_BELOW = {"units": {"findings"}, "numerics": {"units", "findings"}, "document": {"numerics"}}
# Files outside these may not include generated classes or the Protocol Buffers library.
SEES_PROTOBUF = re.compile(r"lib/(document|review|plugin_host)/|lib/rod/resolve|lib/rod/[a-z_]*\.cc$|lib/rod/read_")
LONGEST = 450

INCLUDE = re.compile(r'^\s*#include\s+[<"]([^>"]+)[>"]', re.M)


def folder_of(floor):
    return ROOT / "lib" / ("concerns/" + floor if floor in CONCERNS else floor)


def problems():
    for rank, floor in enumerate(FLOORS):
        below = set(FLOORS[:rank + 1]) - NOT_BELOW.get(floor, set())
        for path in sorted(folder_of(floor).rglob("*")):
            if path.suffix not in (".h", ".cc"):
                continue
            name = path.relative_to(ROOT).as_posix()
            text = path.read_text(encoding="utf-8")
            if text.count("\n") > LONGEST:
                yield f"{name}: {text.count(chr(10))} lines; is there a second idea in it?"
            for include in INCLUDE.findall(text):
                parts = include.split("/")
                if parts[0] == "withy" and parts[1] in FLOORS and parts[1] not in below:
                    yield f"{name}: includes {include}, which lies above {floor}; move what is shared down"
                protobuf = include.endswith(".pb.h") or include.startswith("google/protobuf")
                if protobuf and not SEES_PROTOBUF.search(name):
                    yield f"{name}: includes {include}; only document, rod's resolve, review and plugin_host see generated classes"
    for path in sorted((ROOT / "cli").rglob("*.cc")):
        if path.read_text(encoding="utf-8").count("\n") > LONGEST:
            yield f"{path.relative_to(ROOT)}: more than {LONGEST} lines"


def main():
    found = list(problems())
    for line in found:
        print(line)
    print(f"{len(found)} problems in {len(FLOORS)} floors")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
