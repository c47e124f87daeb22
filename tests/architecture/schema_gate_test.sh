#!/usr/bin/env bash
# The gate lets the schema through as it is and with a field added, and stops every change that it is there to stop.
#
#   schema_gate_test.sh TOOLS
set -uo pipefail

here=$(cd "$(dirname "$0")" && pwd)
tools=${1:?"usage: schema_gate_test.sh TOOLS"}
work=$(mktemp -d)
trap 'rm -r "$work"' EXIT
failures=0

# expect passes|stops WHAT FILE SED: the gate on a copy of the schema with one change. A change that changes nothing
# would prove nothing.
expect() {
  local wanted=$1 what=$2 file=$3 edit=$4 status=0
  rm -rf "$work/proto" && cp -r "$here/../../proto" "$work/proto"
  sed -i -E "$edit" "$work/proto/withy/v1/$file"
  if [ -n "$edit" ] && cmp -s "$here/../../proto/withy/v1/$file" "$work/proto/withy/v1/$file"; then
    echo "FAIL: '$what' changed nothing"
    failures=$((failures + 1))
    return
  fi
  "$here/schema_gate.sh" "$tools" "$work/proto" > "$work/output" 2>&1 || status=$?
  case $wanted/$status in
    passes/0 | stops/1) echo "ok: $what $wanted" ;;
    *)
      echo "FAIL: $what should have been one that $wanted (exit status $status)"
      cat "$work/output"
      failures=$((failures + 1))
      ;;
  esac
}

expect passes 'the schema as it is' guides.proto ''
expect passes 'a field added' guides.proto 's|^(  // Placed by hand.*)$|  // New.\n  bool added = 900;\n\1|'
expect stops 'a field removed' guides.proto '/^  bool locked = 6;/d'
expect stops 'a field renamed' guides.proto 's/^  bool locked = 6;/  bool fixed_by_hand = 6;/'
expect stops 'a field renumbered' guides.proto 's/^  bool locked = 6;/  bool locked = 60;/'
expect stops 'a type changed' guides.proto 's/^  bool locked = 6;/  string locked = 6;/'
expect stops 'an enum value removed' quantity.proto '/^    MEASURED = 2;/d'
expect stops 'an enum value renamed' quantity.proto 's/^    MEASURED = 2;/    GAUGED = 2;/'
expect stops 'a field without a comment' guides.proto '/^  \/\/ Placed by hand/d'
expect stops 'a name that is not snake_case' shop.proto 's/saw_kerf/sawKerf/'
exit $((failures > 0))
