#!/usr/bin/env bash
# Checks examples/designs and examples/starts with the program $1.
set -euo pipefail
withy=$1 examples=$2
here=$(dirname "$(readlink -f "$0")")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for design in "$examples"/designs/*.txtpb; do
  name=$(basename "$design" .txtpb)
  "$withy" fmt --check "$design"
  # How long the rod of the uncut butt comes out can't be told before a dry fit: 4. All else is clean.
  expected=0 status=0
  [ "$name" != casting-uncut ] || expected=4
  "$withy" check --fail-on advice "$design" >"$work/$name.txt" || status=$?
  [ $status = $expected ] || { cat "$work/$name.txt"; exit 1; }
  "$withy" convert "$design" --output "$work/$name.json" --quiet
  "$withy" show --json "$design" >"$work/$name.report.json"
  python3 "$here/second_method.py" "$name" "$work/$name.json" "$work/$name.report.json"
done

# What a starting point can't know yet is no error and no warning: 4 is 'cannot tell'.
for start in "$examples"/starts/*.txtpb; do
  "$withy" fmt --check "$start"
  status=0
  "$withy" check --fail-on warning "$start" >"$work/start.txt" || status=$?
  [ $status = 0 ] || [ $status = 4 ] || { cat "$work/start.txt"; exit 1; }
  # Lines that begin with #+ are for the builder: with all of them taken in it has to be a design without an error, of
  # which mass and balance, also with the reel on, can be told.
  sed 's/#+ //' "$start" >"$work/filled.txtpb"
  status=0
  "$withy" check "$work/filled.txtpb" >"$work/filled.txt" || status=$?
  [ $status = 0 ] || [ $status = 4 ] || { echo "$start, filled in:"; cat "$work/filled.txt"; exit 1; }
  "$withy" show --json "$work/filled.txtpb" >"$work/filled.json"
  python3 - "$start" "$work/filled.json" <<'END'
import json, sys
balance = json.load(open(sys.argv[2]))["balance"]
missing = {"mass_g", "balance_from_butt_mm", "balance_with_reel_mm"} - set(balance)
sys.exit(f"{sys.argv[1]}, filled in, does not tell {sorted(missing)}" if missing else 0)
END
done
