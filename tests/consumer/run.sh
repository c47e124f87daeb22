#!/usr/bin/env bash
# An outside project finds, links and uses the installed library: installs the build in $1 to a fresh prefix, builds
# examples/embed against it with nothing of this tree in sight, and runs it on an example.
set -euo pipefail
build=$1 source=$2 compiler=$3 flags=${4:-}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cmake --install "$build" --prefix "$work/prefix" >"$work/install.log"
cp -r "$source/examples/embed" "$work/embed"
cmake -S "$work/embed" -B "$work/build" -G Ninja -DCMAKE_CXX_COMPILER="$compiler" -DCMAKE_CXX_FLAGS="$flags" \
  -DCMAKE_PREFIX_PATH="$work/prefix" >"$work/configure.log" ||
  { cat "$work/configure.log"; exit 1; }
cmake --build "$work/build" >"$work/build.log" || { tail -40 "$work/build.log"; exit 1; }
program=$(find "$work/build" -maxdepth 1 -type f -perm -u+x | head -n 1)
"$program" "$source/examples/designs/casting.txtpb" | tee "$work/output"
# The order says 7 ft 3 in = 2209.8 mm within a quarter of an inch; see the design's own arithmetic.
grep -Eq 'overall length: 22(0[4-9]|1[0-6])\.' "$work/output"
"$work/prefix/bin/withy" check --quiet "$source/examples/designs/casting.txtpb"
