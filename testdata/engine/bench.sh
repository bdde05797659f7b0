#!/bin/sh
# Times core/rehearse beside a rigid-body engine, both as WebAssembly under Node, by turns in one run. Called by make
# bench-engine; needs Go, Node and npm, and keeps nothing of the engine.
set -e
cd "$(dirname "$0")"
root=$(cd ../.. && pwd)
dir=${1:-$(mktemp -d)}
npm install --silent --no-fund --no-audit --prefix "$dir" mujoco-js@0.0.7
cp scene.mjs race.mjs "$dir/"
# compiled as the site's programs are
flags=$(grep -o '"-gcflags=[^"]*"' "$root/wasm/site/collect.go" | tr -d '"')
(cd "$root" && GOEXPERIMENT=nogreenteagc GOOS=js GOARCH=wasm go test -c $flags -o "$dir/race.wasm" ./core/rehearse)
cd "$dir" && node race.mjs race.wasm "$(go env GOROOT)" "$root/testdata/engine/swing.jsonl"
grep -m1 'model name' /proc/cpuinfo 2>/dev/null || true
