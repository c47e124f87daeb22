#!/usr/bin/env bash
# The schema's gate: buf's lint, and nothing broken since the baseline (proto/baseline.binpb, the last release).
#
#   schema_gate.sh TOOLS [PROTO]            judge PROTO (default: the project's proto/)
#   schema_gate.sh TOOLS --accept           the same, then make the schema as it is the new baseline: at a release
#
# TOOLS is a folder outside the source tree, where buf is installed from the npm registry once. Exit status: 0 passed,
# 1 the schema is at fault (buf's lines say where), 2 the gate could not be run.
set -uo pipefail

readonly BUF_VERSION=1.75.0
root=$(cd "$(dirname "$0")/../.." && pwd)
tools=${1:?"usage: schema_gate.sh TOOLS [PROTO | --accept]"}
proto=$root/proto
accept=false
case ${2:-} in
  '') ;;
  --accept) accept=true ;;
  *) proto=$2 ;;
esac

buf=$tools/node_modules/.bin/buf
if [ ! -x "$buf" ]; then
  mkdir -p "$tools"
  npm install --silent --no-save --prefix "$tools" "@bufbuild/buf@$BUF_VERSION" >&2 || {
    echo "schema_gate: buf $BUF_VERSION could not be installed from the npm registry" >&2
    exit 2
  }
fi

cd "$proto" || exit 2
failed=0
"$buf" lint || failed=1
"$buf" breaking --against "$root/proto/baseline.binpb" || failed=1
if [ "$failed" = 0 ] && [ "$accept" = true ]; then
  "$buf" build --as-file-descriptor-set --exclude-source-info -o "$root/proto/baseline.binpb" || failed=1
fi
exit "$failed"
