"""Runs the sessions in Markdown files beside this one and compares what withy prints with what they show.

    run.py --withy build/cli/withy [--accept] [FILE.md ...]

A session is a code block that begins with ```console:

    $ withy check casting.txtpb       a command line (bash), continued by lines that begin with "> "
    casting.txtpb: clean              its standard output
    ! withy: ...                      its standard error, each line behind "! ", after standard output
    [exit 1]                          its exit status, where it is not 0

A line "..." stands for any lines. All blocks of one file run in one folder, in order. --accept writes what was printed into
the file; read the difference before you commit it.
"""

import argparse
import difflib
import pathlib
import sys
import tempfile

from workshop import Workshop

HERE = pathlib.Path(__file__).resolve().parent


def printed(workshop, command):
    out, err, status = workshop.run(command)
    text = out.decode("utf-8", "backslashreplace").replace(str(workshop.top), "/tmp/top")
    lines = text.split("\n")
    if lines[-1] == "":
        lines.pop()
    errors = err.decode("utf-8", "backslashreplace").replace(str(workshop.top), "/tmp/top")
    lines += ["! " + line for line in errors.splitlines()]
    if status != 0:
        lines.append(f"[exit {status}]")
    return [line.rstrip() for line in lines]


def matches(expected, actual):
    """True where `actual` is `expected`, "..." in it standing for any lines."""
    parts = [[]]
    for line in expected:
        if line == "...":
            parts.append([])
        else:
            parts[-1].append(line)
    if len(parts) == 1:
        return expected == actual
    first, middle, last = parts[0], parts[1:-1], parts[-1]
    if len(first) + len(last) > len(actual) or actual[:len(first)] != first:
        return False
    end = len(actual) - len(last)
    if actual[end:] != last:
        return False
    at = len(first)
    for part in middle:
        while at + len(part) <= end and actual[at:at + len(part)] != part:
            at += 1
        if at + len(part) > end:
            return False
        at += len(part)
    return True


def steps(block):
    """Splits the lines of a block into (command lines, output lines)."""
    found = []
    for line in block:
        if line.startswith("$ "):
            found.append(([line], []))
        elif found and line.startswith("> ") and not found[-1][1]:
            found[-1][0].append(line)
        elif found:
            found[-1][1].append(line)
    return found


def run_block(workshop, block, name, accept):
    """Runs a block; returns its lines as they should be, and how many steps differ."""
    result, differ = [], 0
    for command, expected in steps(block):
        actual = printed(workshop, "\n".join(line[2:] for line in command))
        result += command
        if matches(expected, actual):
            result += expected
            continue
        differ += 1
        result += actual
        if not accept:
            print(f"{name}: {command[0]}")
            print("\n".join(difflib.unified_diff(expected, actual, "expected", "printed", lineterm="", n=3)))
    return result, differ


def run_file(path, withy, accept):
    lines = path.read_text(encoding="utf-8").split("\n")
    result, block, differ, count = [], None, 0, 0
    with tempfile.TemporaryDirectory() as folder:
        workshop = Workshop(folder, withy)
        for line in lines:
            if block is None:
                result.append(line)
                if line == "```console":
                    block = []
            elif line == "```":
                count += len(steps(block))
                kept, wrong = run_block(workshop, block, path.name, accept)
                result += kept + [line]
                differ += wrong
                block = None
            else:
                block.append(line)
    if accept and differ:
        path.write_text("\n".join(result), encoding="utf-8")
    return count, differ


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--withy", required=True)
    parser.add_argument("--accept", action="store_true")
    parser.add_argument("files", nargs="*", type=pathlib.Path)
    arguments = parser.parse_args()
    total, wrong = 0, 0
    for path in arguments.files or sorted(HERE.glob("*.md")):
        count, differ = run_file(path, arguments.withy, arguments.accept)
        total, wrong = total + count, wrong + differ
    print(f"{total} commands, {wrong} {'accepted' if arguments.accept else 'differ'}")
    return 1 if total == 0 or (wrong and not arguments.accept) else 0


if __name__ == "__main__":
    sys.exit(main())
