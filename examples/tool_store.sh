#!/bin/sh
# The same tool store over HTTP: sh examples/tool_store.sh http://127.0.0.1:8000
# Three calls: the whole plan as text, one figure for a spreadsheet cell, and a mistake answered.
set -eu
base="${1:-http://127.0.0.1:8000}"
here="$(dirname "$0")"

echo "# The order list"
curl -sS -H 'Content-Type: application/json' -H 'Accept: text/plain' \
  --data @"$here/tool_store.json" "$base/v1/plans" | sed -n '/^ORDER LIST/,/^$/p'

echo "# Bundles, for a cell"
curl -sS "$base/v1/plans?eave_length=13ft6in&run=9ft4in&pitch=3:12&pointer=/order/shingles/packs"
echo

echo "# A length without a unit"
curl -sS "$base/v1/area?eave_length=14&slope_length=9ft4in"
echo
