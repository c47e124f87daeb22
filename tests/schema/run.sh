#!/usr/bin/env bash
# Validates what withy writes as JSON, and small cases by hand, with ajv (an independent JSON Schema validator, npm).
set -euo pipefail
material=$1 work=$2
here=$(cd "$(dirname "$0")" && pwd)
rm -rf "$work/material"
mkdir -p "$work/material"
"$material" "$work/material"
cp "$here/package.json" "$here/package-lock.json" "$here/validate.mjs" "$here/cases.mjs" "$work/"
[ -d "$work/node_modules/ajv" ] || npm ci --prefix "$work" --no-audit --no-fund --silent
node "$work/validate.mjs" "$work/material"
