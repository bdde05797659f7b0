# Cohoist: two commands do everything, `make run` and `make test`. `make help` lists the rest.

GO   ?= go
PORT ?= 8080
WASM_EXEC = $(shell $(GO) env GOROOT)/lib/wasm/go_js_wasm_exec
CORE = $(shell $(GO) list ./core/... ./ui/... 2>/dev/null)

.DEFAULT_GOAL := help
.PHONY: help run site test check quick format vet imports generated native wasm-tests size golden bench bench-peers bench-engine fuzz generate clean

help: ## this list
	@grep -hE '^[a-z-]+:.*##' $(MAKEFILE_LIST) | sed -E 's/:[^#]*## /\t/' | expand -t 14

run: site ## build the site, serve it on localhost, print the address
	@$(GO) run ./wasm/serve -dir dist -port $(PORT)

site: ## build the static site into dist/
	@$(GO) run ./wasm/site -out dist

test: ## every test, the browser's included; installs Chromium and Node from Debian if there are none
	@.ci/tools
	@.ci/test

check: test ## the same as test: what CI runs

quick: format vet ## formatting, vet and the native tests, without the browser
	@$(GO) test $$($(GO) list ./... | grep -v browsertest)

format: ## fail when a Go file is not gofmt's
	@out=$$(gofmt -l core ui wasm); test -z "$$out" || { echo "not gofmt-clean: $$out"; exit 1; }

vet: ## go vet, native and as js/wasm
	@$(GO) vet ./...
	@GOOS=js GOARCH=wasm $(GO) vet ./core/... ./ui/... ./wasm

generate: ## write the Go files of the vugu components and the schemas of plan and report again
	@for d in $$(find ui -name '*.vugu' -exec dirname {} \; | sort -u); do \
		$(GO) tool vugugen -s -skip-go-mod -skip-main $$d || exit 1; \
		gofmt -w $$d/*_gen.go || exit 1; done
	@$(GO) run ./wasm/schema

generated: generate ## fail when a generated file was not current
	@git diff --exit-code --stat -- '*_gen.go' public/schema || { echo "run make generate and commit"; exit 1; }

wasm-tests: ## the core's tests again as js/wasm under Node
	@GOOS=js GOARCH=wasm $(GO) test -exec "$(WASM_EXEC)" $$($(GO) list ./core/... | grep -v crosscheck)

fuzz: ## every fuzz target for FUZZ (3s)
	@.ci/fuzz

golden: ## write the golden files again; read the diff
	@$(GO) test ./core/report -update
	@$(GO) test ./core/handover -run Golden -update

bench: ## Go benchmarks, native
	@$(GO) test -run '^$$' -bench . -benchmem ./core/...

bench-peers: ## this solver beside general-purpose solvers on the same problems; needs Debian's python3-scipy and python3-cvxopt
	@testdata/peers/bench.sh

bench-engine: ## the rehearsal beside a rigid-body engine, both as WebAssembly under Node; needs npm
	@testdata/engine/bench.sh

clean: ## remove what was built
	@rm -rf dist build
