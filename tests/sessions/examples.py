"""Runs every example that the help of withy shows, each in a fresh folder; all must do what they say.

    examples.py --withy build/cli/withy

Also holds help to its form: every command listed has one, it opens with its examples, nothing is wider than 80 columns.
"""

import argparse
import re
import sys
import tempfile

from workshop import Workshop


def fresh(withy, command):
    with tempfile.TemporaryDirectory() as folder:
        return Workshop(folder, withy).run(command)


def commands(withy):
    out = fresh(withy, "withy --help")[0].decode()
    listed = out.split("\nCommands\n")[1].split("\n\n")[0]
    return [match[1] for match in re.finditer(r"^  (\w+(?: \w+)?)  +\S", listed, re.M)]


def examples_in(help_text):
    part = help_text.split("Examples\n")[1].split("\n\n")[0]
    return [line.strip() for line in part.split("\n") if line.startswith("  withy ")]


def problems_of_help(name, text):
    lines = text.split("\n")
    if len(lines) < 3 or lines[2] != "Examples":
        yield f"{name}: its help does not open with examples"
    for line in lines:
        if len(line) > 80 and not line.startswith("  withy "):
            yield f"{name}: wider than 80 columns: {line}"


def problem_of_example(withy, line):
    out, err, status = fresh(withy, line)
    # A design that lacks a measurement is judged 'cannot tell', which its last line then says.
    honest = status == 4 and b"cannot tell" in out
    if status != 0 and not honest:
        return f"{line}: exit status {status}\n{out.decode()}{err.decode()}"
    return None


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--withy", required=True)
    withy = parser.parse_args().withy
    found, count = [], 0
    texts = {"withy": fresh(withy, "withy --help")[0].decode()}
    for name in commands(withy):
        out, _, status = fresh(withy, f"withy {name} --help")
        texts[name] = out.decode()
        if status != 0:
            found.append(f"{name} --help: exit status {status}")
        found += problems_of_help(name, texts[name])
    for text in texts.values():
        for line in examples_in(text):
            count += 1
            problem = problem_of_example(withy, line)
            if problem:
                found.append(problem)
    print("\n".join(found + [f"{len(texts)} helps, {count} examples, {len(found)} problems"]))
    return 1 if found or count < 20 else 0


if __name__ == "__main__":
    sys.exit(main())
