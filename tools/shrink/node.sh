#!/bin/bash
# Runs a WebAssembly program under node as the page gets it, made smaller by the shrink that SHRINK names:
#
#	GOOS=js GOARCH=wasm go test -exec tools/shrink/node.sh ./solver
set -eu
smaller=$(mktemp)
trap 'rm -f "$smaller"' EXIT
"$SHRINK" -out "$smaller" "$1"
go_js_wasm_exec "$smaller" "${@:2}"
