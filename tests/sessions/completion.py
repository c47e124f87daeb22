"""Loads the completion scripts into the shells themselves and asks them to complete.

    completion.py --withy build/cli/withy

bash and fish are asked for their answers. zsh answers only inside its line editor, so its builtins are replaced by ones that
print what they are given. A shell that is not installed is skipped, bash never.
"""

import argparse
import shutil
import sys
import tempfile

from workshop import Workshop

# What was typed, the last word unfinished; words that must be offered; words that must not.
CASES = [
    (["ch"], ["check"], ["show"]),
    (["plugin", ""], ["list", "test", "new"], ["check"]),
    (["check", "--f"], ["--fail-on"], ["--set"]),
    (["check", "--fail-on", ""], ["error", "warning", "advice"], ["casting.txtpb"]),
    (["check", "cas"], ["casting.txtpb"], ["fly.txtpb"]),
    (["check", "casting.p"], [], ["casting.png"]),
    (["explain", "guides/"], ["guides/order"], []),
    (["new", "s"], ["spinning", "surf"], ["fly"]),
    (["export", "cut"], ["cut-sheet"], []),
    (["export", ""], ["cut-sheet"], ["casting.txtpb"]),
    (["export", "cut-sheet", "ca"], ["casting.txtpb"], ["cut-sheet"]),
    (["import", "taper"], ["taper-csv"], []),
    (["convert", "casting.txtpb", "--to", "j"], ["json"], []),
    (["plugin", "new", "--ki"], ["--kind"], ["--accept"]),
    (["schema", "re"], ["report"], ["list"]),
]

BASH = """
source <(withy --completion bash)
COMP_WORDS=(withy {words}); COMP_CWORD={at}
_withy
printf '%s\\n' "${{COMPREPLY[@]}}"
"""

ZSH = """
zsh -f <<'END'
compdef() {{ }}
compadd() {{ shift; for w in "$@"; do [[ $w = "$typed_part"* ]] && print -r -- $w; done; true }}
_files() {{ for f in "$typed_part"*(N); do [[ -z $2 || $f = ${{~2}} ]] && print -r -- $f; done; true }}
source <(withy --completion zsh)
typed_part={last}
words=(withy {words}); CURRENT={next}
_withy
END
"""

FISH = """fish --no-config -c 'withy --completion fish | source; complete -C "withy {line}"' | cut -f1"""


def quoted(word):
    return "'" + word + "'"


def script(shell, words):
    values = {"words": " ".join(map(quoted, words)), "at": len(words), "next": len(words) + 1, "last": quoted(words[-1]),
              "line": " ".join(words)}
    return {"bash": BASH, "zsh": ZSH, "fish": FISH}[shell].format(**values)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--withy", required=True)
    withy = parser.parse_args().withy
    failures, asked, shells = 0, 0, []
    with tempfile.TemporaryDirectory() as folder:
        workshop = Workshop(folder, withy)
        workshop.run("touch casting.png")
        for shell in ("bash", "zsh", "fish"):
            if shell != "bash" and not shutil.which(shell):
                continue
            shells.append(shell)
            for words, wanted, unwanted in CASES:
                asked += 1
                out, err, _ = workshop.run(script(shell, words))
                offered = out.decode().split("\n")
                missing = [word for word in wanted if word not in offered]
                wrong = [word for word in unwanted if word in offered]
                if missing or wrong or err:
                    failures += 1
                    print(f"{shell}: {words}: missing {missing}, wrong {wrong}\n{err.decode()}")
    print(f"{asked} questions to {', '.join(shells)}, {failures} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
