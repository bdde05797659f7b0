#!/bin/sh
# Times this project's solver, native and as WebAssembly under Node, beside general-purpose solvers on
# the same seeded problems, checks that they agree, and prints a table. Called by make bench-peers;
# needs Go, Node, and Debian's python3-scipy and python3-cvxopt.
set -e
cd "$(dirname "$0")/../../core/crosscheck"
dir=${1:-$(mktemp -d)}
mkdir -p "$dir"
go test -c -o "$dir/native.test" .
GOOS=js GOARCH=wasm go test -c -o "$dir/wasm.test" .
step() { # step NAME COMMAND...: one step of TestBench
	name=$1
	shift
	COHOIST_BENCH="$dir" COHOIST_BENCH_STEP="$name" "$@" -test.run '^TestBench$' -test.timeout 60m >"$dir/$name.log" || { cat "$dir/$name.log"; exit 1; }
}
step write "$dir/native.test"
echo "general solvers (minutes)" >&2
/usr/bin/python3 ../../testdata/peers/bench.py "$dir" 2>"$dir/peers.log" || { cat "$dir/peers.log"; exit 1; }
echo "gonum simplex" >&2
step simplex "$dir/native.test"
echo "this solver, native" >&2
step native "$dir/native.test"
echo "this solver, WebAssembly under Node" >&2
step wasm "$(go env GOROOT)/lib/wasm/go_js_wasm_exec" "$dir/wasm.test"
step table "$dir/native.test"
grep -v -e '^PASS' -e '^ok' "$dir/table.log"
grep -m1 'model name' /proc/cpuinfo 2>/dev/null || true
