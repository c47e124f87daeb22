#!/usr/bin/env bash
# What `withy check --sarif` prints of sound, faulty, binary, unreadable and unjudged designs, against the published schema.
#   run.sh WITHY WORK_FOLDER
set -euo pipefail
withy=$1 work=$2
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../../.." && pwd)
rm -rf "$work/logs"
mkdir -p "$work/logs"
cp "$here/package.json" "$here/package-lock.json" "$here/validate.cjs" "$work/"
[ -d "$work/node_modules/ajv" ] || npm ci --prefix "$work" --no-audit --no-fund --silent

# A check ends with 1, 3 or 4 where it found something; anything else is a failure of its own.
sarif() {
  local name=$1 status=0
  shift
  "$withy" check --sarif "$@" >"$work/logs/$name.sarif" || status=$?
  case $status in 0 | 1 | 3 | 4) ;; *) echo "$name: exit status $status" >&2; exit 1 ;; esac
}
export HOME=$work XDG_DATA_HOME=$work/none
"$withy" convert --quiet --force "$root/examples/designs/casting.txtpb" -o "$work/casting.binpb"
printf 'return 1' >"$work/broken.lua"
sarif sound "$root"/examples/designs/*.txtpb
sarif faulty "$root"/tests/faulty/*/*.txtpb
sarif binary "$work/casting.binpb"
sarif missing "$work/no such file.txtpb"
sarif plugin --plugin "$work/broken.lua" "$root/examples/designs/fly.txtpb"
sarif advice --fail-on advice "$root"/examples/designs/surf.txtpb
node "$work/validate.cjs" "$work/logs"
