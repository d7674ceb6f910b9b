# Targets with a comment behind ## are shown by make help.

GO ?= go
SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := help

VERSION := $(shell git describe --tags --always --abbrev=12 --dirty 2>/dev/null || echo unversioned)
LDFLAGS := -s -w -X toewright/internal/version.name=$(VERSION)
# Nothing of the machine and the folder gets into what is built.
BUILD := $(GO) build -trimpath -buildvcs=false -ldflags='$(LDFLAGS)'
DIST := internal/web/dist
JS := GOOS=js GOARCH=wasm

# Packages that run in the browser, tested under node without its document.
WASM_TESTED := ./solver/... ./optimize/... ./wasm/... ./app/store
# Packages that have files of their own for the browser.
JS_ONLY := ./wasm/... ./app/...
# Names that a browser may have; CHROMIUM says it otherwise.
CHROMIUM ?= $(shell for b in chromium chromium-browser google-chrome chrome; do command -v $$b && break; done)
export CHROMIUM

# Most that the page may cost on the wire, in bytes of Brotli.
SIZE_LIMIT := 1980000

# left_out says which tests did not run, and fails where that is not allowed.
left_out = { printf '\n\#\#\#\#\# LEFT OUT: %s: no %s was found.\n\#\#\#\#\# To run them: %s\n\n' $(1) $(2) $(3) >&2; test "$${CI:-}" != true; }

.PHONY: help
help: ## Show this help
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/  make \1\t\2/p' $(MAKEFILE_LIST) | expand -t 22

.PHONY: build
build: front ## Build the page and the program into bin/toewright
	$(BUILD) -o bin/toewright ./cmd/toewright

.PHONY: run
run: front-quick ## Build all and serve the page on this machine
	$(BUILD) -o bin/toewright ./cmd/toewright
	bin/toewright serve

# The page gets go-app without its server; see tools/slim.
SLIM := bin/slim
.PHONY: slim
slim:
	$(GO) run ./tools/slim -out $(SLIM)

# Packages whose speed is felt, with what they stand on. All else is compiled without
# inlining, which makes the page a tenth smaller; the runtime itself too, which makes it
# another 48 kB smaller and a frame of a drag some 6 % longer.
FAST := internal/runtime/... internal/abi internal/bytealg internal/byteorder internal/cpu internal/goarch \
  internal/strconv math math/bits sync/atomic bytes slices sort strconv strings \
  unicode/utf8 gonum.org/... toewright/solver
COMPILE := -gcflags=all=-l $(FAST:%=-gcflags=%=)

.PHONY: wasm
wasm: slim
	$(JS) $(BUILD) -modfile=$(SLIM)/go.mod $(COMPILE) -o bin/linked.wasm ./app
	$(GO) run ./tools/shrink -out bin/app.wasm bin/linked.wasm

# The styles are one file on the wire, in this order.
STYLES := app/web/app.css app/web/plot.css app/web/sheet.css app/web/parts.css app/web/frame.css \
  $(patsubst %,app/web/%.css,car tape readings find compare make why show) app/web/print.css
bin/page.css: $(STYLES)
	mkdir -p bin
	cat $(STYLES) > $@

# And so are the scripts, of which the first asks for the program.
BOOT := $(addprefix app/web/boot/,program.js update.js install.js paint.js copy.js)
bin/boot.js: $(BOOT)
	mkdir -p bin
	cat $(BOOT) > $@

# What the page consists of.
JOINED := bin/page.css bin/boot.js
ASSETS := bin/app.wasm $(JOINED) $(filter-out %.css %/boot,$(wildcard app/web/*))

# The page in all its forms. Brotli takes most of a minute.
.PHONY: front
front: wasm $(JOINED)
	$(GO) run ./tools/assets -out $(DIST) $(ASSETS)

# The page without Brotli, unless it is there already.
.PHONY: front-quick
front-quick: wasm $(JOINED)
	$(GO) run ./tools/assets -quick -out $(DIST) $(ASSETS)

.PHONY: site
site: build ## Write the page as files for any web host into bin/site
	rm -rf bin/site
	bin/toewright site bin/site

# Platforms that a release has a program for.
PLATFORMS := linux/amd64 linux/arm64 darwin/amd64 darwin/arm64 windows/amd64 windows/arm64

.PHONY: release
release: front ## Build the program for each platform into bin/release, with checksums
	rm -rf bin/release
	for p in $(PLATFORMS); do os=$${p%/*} arch=$${p#*/}; \
	  CGO_ENABLED=0 GOOS=$$os GOARCH=$$arch $(BUILD) -o bin/release/toewright-$(VERSION)-$$os-$$arch$$(test $$os != windows || echo .exe) ./cmd/toewright; \
	done
	cd bin/release && sha256sum toewright-* > SHA256SUMS && cat SHA256SUMS

.PHONY: reproduce
reproduce: ## Build the last commit twice, in two folders with caches of their own, and compare
	@commit=$$(git rev-parse HEAD) a=$$(mktemp -d) b=$$(mktemp -d)/deeper; trap 'rm -rf "$$a" "$${b%/deeper}"' EXIT; \
	for d in "$$a" "$$b"; do \
	  git clone -q . "$$d/src"; git -C "$$d/src" checkout -q $$commit; GOCACHE="$$d/cache" $(MAKE) -C "$$d/src" release PLATFORMS='$(PLATFORMS)'; \
	done; \
	diff "$$a/src/bin/release/SHA256SUMS" "$$b/src/bin/release/SHA256SUMS"; echo 'the same bytes both times'

.PHONY: test
test: test-native test-wasm test-browser test-engines ## Run all tests: native, under WebAssembly, in browsers

.PHONY: test-native
test-native: ## Run the tests that need neither node nor a browser
	$(GO) test -timeout 20m $$($(GO) list ./... | grep -v /internal/browsertest)

.PHONY: test-wasm
test-wasm: ## Run the solver's and the bridge's tests under node, made smaller as the page is
	@if command -v node >/dev/null; then set -x; $(GO) build -o bin/shrink ./tools/shrink; \
	  SHRINK=$(CURDIR)/bin/shrink PATH="$$($(GO) env GOROOT)/lib/wasm:$$PATH" $(JS) $(GO) test -exec $(CURDIR)/tools/shrink/node.sh -timeout 20m $(WASM_TESTED); \
	else $(call left_out,'the tests under WebAssembly','node','apt-get install nodejs'); fi

# The accessibility checker of these tests, as package-lock.json pins it.
AXE := internal/browsertest/node_modules/axe-core/axe.min.js
$(AXE): internal/browsertest/package-lock.json
	@if command -v npm >/dev/null; then npm ci --no-audit --no-fund --ignore-scripts --prefix internal/browsertest && touch $@; \
	else $(call left_out,'the tests of accessibility','npm','apt-get install npm'); fi

.PHONY: test-browser
test-browser: front-quick $(AXE) ## Run the tests of the page in headless Chromium
	@if [ -n "$(CHROMIUM)" ]; then set -x; \
	  TOEWRIGHT_BROWSER=required $(GO) test -count=1 -timeout 38m ./internal/browsertest; \
	else $(call left_out,'the tests of the page','Chromium','apt-get install chromium'); fi

# What drives the engines, as Debian names it.
ENGINES := firefox-esr webkit2gtk-driver xvfb xauth chromium-driver

.PHONY: test-engines
test-engines: front-quick $(AXE) ## Run the page's main job in Firefox, WebKit and Chromium
	@missing=(); for p in firefox-esr WebKitWebDriver xvfb-run chromedriver; do command -v $$p >/dev/null || missing+=($$p); done; \
	if (($${#missing[@]} == 0)); then set -x; TOEWRIGHT_ENGINES=required $(GO) test -count=1 -timeout 20m ./internal/browsertest/engines; \
	else $(call left_out,'the main job in every engine',"$${missing[*]}",'apt-get install --no-install-recommends $(ENGINES)'); fi

.PHONY: pictures
pictures: front-quick ## Make the pictures anew that the documents show: curves of the theory, and the page
	$(GO) run ./tools/pictures docs/images
	TOEWRIGHT_SHOTS=$(CURDIR)/docs/images TOEWRIGHT_BROWSER=required $(GO) test -count=1 -run '^TestPictures$$' ./internal/browsertest

.PHONY: race
race: ## Run the tests of what is concurrent under the race detector
	$(GO) test -race ./wasm/... ./app/worker ./internal/shards ./internal/batch ./internal/web/... ./cmd/...

# A load tool and a search for known vulnerabilities, pinned in a module of their own
# so that what they need is no dependency of ours.
bin/vegeta bin/govulncheck: tools/pinned/go.mod tools/pinned/go.sum
	$(GO) -C tools/pinned build -o ../../$@ $$($(GO) -C tools/pinned list tool | grep '/$(notdir $@)\(/v[0-9]*\)\?$$')

# govulncheck ends with 3 where it has found something, with 1 where it could not look.
.PHONY: vulnerabilities
vulnerabilities: bin/govulncheck
	@status=0; bin/govulncheck ./... >bin/govulncheck.log 2>&1 || status=$$?; \
	if ((status == 0)); then echo 'govulncheck: no known vulnerability is called'; \
	elif ((status != 3)) && grep -q 'fetching vulnerabilities' bin/govulncheck.log; then \
	  printf '\n##### LEFT OUT: govulncheck cannot reach its database, so known vulnerabilities were NOT looked for.\n\n' >&2; \
	else cat bin/govulncheck.log; exit 1; fi

.PHONY: load
load: bin/vegeta ## Put the service under load and attack on the loopback for a minute
	$(BUILD) -o bin/toewright ./cmd/toewright
	$(GO) run ./tools/load

# The example of docs/batch.md on a Slurm of the loopback; another version for its parts.
.PHONY: batch
batch: ## Run the Slurm example of docs/batch.md, with all that can go wrong, on four virtual nodes
	@if command -v slurmctld slurmd munged >/dev/null; then \
	  $(BUILD) -o bin/toewright ./cmd/toewright; \
	  $(GO) build -ldflags='-X toewright/internal/version.name=another' -o bin/another ./cmd/toewright; \
	  tools/batch/slurm.sh bin/toewright bin/another; \
	else $(call left_out,'the Slurm example','Slurm','apt-get install --no-install-recommends slurm-wlm munge'); fi

# The Kubernetes manifests of docs/batch.md, by a module of its own with Kubernetes' types.
.PHONY: manifests
manifests: ## Hold the Kubernetes example of docs/batch.md against the types of its API
	$(GO) -C tools/manifests test ./...

# What a container is built by, if anything that answers.
CONTAINER = $(shell for b in podman docker buildah; do $$b info >/dev/null 2>&1 && echo $$b && break; done)

.PHONY: container
container: release ## Build the container of the release, and ask it for its version
	@if [ -n "$(CONTAINER)" ]; then set -x; \
	  $(CONTAINER) build --build-arg PROGRAM=bin/release/toewright-$(VERSION)-linux-$$($(GO) env GOARCH) -t toewright -f Containerfile .; \
	  if test "$(CONTAINER)" = buildah; then c=$$(buildah from toewright) && buildah run "$$c" /toewright version && buildah rm "$$c"; \
	  else $(CONTAINER) run --rm toewright version; fi; \
	else $(call left_out,'the container','podman or docker','apt-get install podman'); fi

# What a host of files needs; the tests of the page run it from one.
.PHONY: try-site
try-site: site ## Write the site and look whether all of it is there
	@for f in index.html manifest.webmanifest app-worker.js web/app.wasm web/app.wasm.br web/app.wasm.gz; do test -s bin/site/$$f || { echo "bin/site has no $$f" >&2; exit 1; }; done

# Each takes minutes: what a change rarely breaks and a release needs.
.PHONY: nightly
nightly: reproduce try-site container batch manifests ## Build releases twice and compare, the site, the container; run the Slurm example, check that of Kubernetes

.PHONY: check
check: ## Check format, vet, lint, modules and known vulnerabilities
	@test -z "$$(gofmt -l $$(git ls-files '*.go'))" || { gofmt -l $$(git ls-files '*.go'); echo 'run gofmt -w on these' >&2; exit 1; }
	$(GO) vet ./...
	$(JS) $(GO) vet $(JS_ONLY)
	$(GO) build -o bin/staticcheck honnef.co/go/tools/cmd/staticcheck
	bin/staticcheck ./...
	$(JS) bin/staticcheck $(JS_ONLY)
	$(GO) mod tidy -diff
	$(GO) mod verify
	$(GO) -C tools/pinned mod verify
	$(GO) -C tools/manifests mod verify
	@$(MAKE) --no-print-directory vulnerabilities

.PHONY: bench
bench: ## Run the benchmarks
	$(GO) test -run '^$$' -bench . ./...

# An empty go-app page, packed as ours is.
.PHONY: empty-page
empty-page:
	mkdir -p bin/empty
	$(JS) $(BUILD) -o bin/empty/app.wasm ./internal/browsertest/emptypage
	$(GO) run ./internal/browsertest/emptypage bin/empty/site
	$(GO) run ./tools/assets -out bin/empty/site/web bin/empty/app.wasm app/web/icon-192.png

.PHONY: bench-browser
bench-browser: front empty-page ## Measure the long jobs, the frames of a drag, the start and its check in headless Chromium
	TOEWRIGHT_BROWSER=required $(GO) test -run '^$$' -bench Jobs -benchtime 1x -timeout 30m ./internal/browsertest
	TOEWRIGHT_BROWSER=required $(GO) test -run '^$$' -bench Drag -benchtime 5x -timeout 30m ./internal/browsertest
	TOEWRIGHT_BROWSER=required $(GO) test -run '^$$' -bench Start -benchtime 15x -timeout 30m ./internal/browsertest
	TOEWRIGHT_BROWSER=required $(GO) test -run '^$$' -bench Check -benchtime 7x -timeout 30m ./internal/browsertest

.PHONY: bench-engines
bench-engines: front-quick ## Measure the start in Firefox, WebKit and Chromium
	$(GO) test -run '^$$' -bench Start -benchtime 5x -timeout 30m ./internal/browsertest/engines

# What bench-peers measures against, as Debian names it.
PEERS := g++ python3-scipy libslvs1-dev libsimbody-dev libnlopt-dev

.PHONY: bench-peers
bench-peers: ## Measure against scipy, libslvs, Simbody, NLopt and plain C; write docs/benchmarks.md
	@dpkg-query -W $(PEERS) >/dev/null || { echo 'the comparison needs these packages: make bench-peers-install' >&2; exit 1; }
	$(GO) run ./tools/peers -out docs/benchmarks.md

.PHONY: bench-peers-install
bench-peers-install: ## Install what bench-peers needs, by apt-get
	apt-get install --no-install-recommends $(PEERS)

.PHONY: coverage
coverage: ## Simulate thousands of cars and write how far advice and tape can be trusted; some minutes
	$(GO) run ./tools/coverage -out docs/coverage.md
	$(GO) run ./tools/coverage -located -cars 160 -out docs/located.md

.PHONY: mutants
mutants: ## Change the code for the worse and see whether a test fails; a quarter of an hour
	nice $(GO) run ./tools/mutate -out docs/mutants.md

.PHONY: golden
golden: ## Write the golden files anew; read the diff afterwards
	$(GO) test $$(grep -rlE --include='*_test.go' 'flag.Bool\("update"|validation.Hold' . | xargs -r dirname | sort -u) -p 1 -update

.PHONY: size
size: front ## Print what the program weighs; fail past the limit
	@for f in app.wasm app.wasm.gz app.wasm.br; do printf '%-12s %9d\n' $$f $$(wc -c < $(DIST)/$$f); done
	@test $$(wc -c < $(DIST)/app.wasm.br) -le $(SIZE_LIMIT) || { echo 'app.wasm.br is past $(SIZE_LIMIT) bytes' >&2; exit 1; }

.PHONY: clean
clean: ## Remove what was built
	rm -rf bin
	find $(DIST) -type f ! -name '.*' -delete
