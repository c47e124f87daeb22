#!/usr/bin/env bash
# Reads an example from Python and from JavaScript with nothing but the schema: generates what each needs from proto/ in
# a folder of its own, runs both example programs on the JSON and the binary form, and compares what they print with each
# other and with the positions as they stand in the text of the design.
set -euo pipefail
build=$1 source=$2
work=$build/readers
mkdir -p "$work"
design=$source/examples/designs/casting.txtpb
"$build/cli/withy" convert "$design" --output "$work/casting.binpb" --force --quiet
"$build/cli/withy" convert "$design" --output "$work/casting.json" --force --quiet

# Debian's own interpreter: that is the one python3-protobuf belongs to.
mkdir -p "$work/python"
protoc -I"$source/proto" --python_out="$work/python" "$source"/proto/withy/v1/*.proto
PYTHONPATH="$work/python" /usr/bin/python3 "$source/examples/python/read_design.py" "$work/casting.binpb" >"$work/python.txt"

mkdir -p "$work/javascript"
cp "$source/examples/javascript/"* "$work/javascript/"
[ -d "$work/javascript/node_modules/protobufjs" ] ||
  npm install --prefix "$work/javascript" --no-audit --no-fund --silent protobufjs@7 >/dev/null
node "$work/javascript/read_design.mjs" "$source/proto" "$work/casting.binpb" >"$work/javascript.txt"
node "$work/javascript/read_design.mjs" "$source/proto" "$work/casting.json" >"$work/javascript_json.txt"

diff "$work/python.txt" "$work/javascript.txt"
diff "$work/python.txt" "$work/javascript_json.txt"
# Each guide of the text, by id, is printed.
for id in $(grep -oE '^guides \{ id: "[^"]+"' "$design" | grep -oE '"[^"]+"' | tr -d '"'); do
  grep -qw "$id" "$work/python.txt" || { echo "guide $id is not printed"; exit 1; }
done
[ "$(grep -c '^guides {' "$design")" -ge 5 ]
cat "$work/python.txt"
