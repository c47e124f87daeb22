"""Many builders record in one file at the same moment: whoever is told that it is done finds the entry in the file.

The others are told so (exit status 5), and nothing else ever happens.
"""

import argparse
import pathlib
import re
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

from workshop import Workshop

DESIGN = "casting-uncut.txtpb"
DONE, NO_OUTPUT = 0, 5
AT_ONCE = 12


def cuts_in(workshop):
    return set(re.findall(r"amount { mm: (\d+)", (workshop.folder / DESIGN).read_text(encoding="utf-8")))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--withy", required=True)
    with tempfile.TemporaryDirectory() as folder:
        workshop = Workshop(folder, parser.parse_args().withy)
        before = cuts_in(workshop)
        cuts = [str(30 + i) for i in range(AT_ONCE)]
        with ThreadPoolExecutor(AT_ONCE) as pool:
            runs = list(pool.map(lambda cut: workshop.run(f"withy trim {DESIGN} --cut '{cut} mm' --quiet"), cuts))
        told = {cut for cut, (_, _, status) in zip(cuts, runs) if status == DONE}
        written = cuts_in(workshop) - before
        others = {status for _, _, status in runs} - {DONE, NO_OUTPUT}
        left = [name.name for name in pathlib.Path(workshop.folder).glob(".withy-*")]
        print(f"{len(told)} of {AT_ONCE} recorded, {len(written)} entries; other exit statuses: {sorted(others)}")
        return 0 if told and told == written and not others and not left else 1


if __name__ == "__main__":
    sys.exit(main())
