# Riserwork needs Go, of the version in go.mod or newer, and make.
# The browser tests need Chromium as well.

ADDR ?= 127.0.0.1:8080
SITE := web/build
DESK := .bin/riserwork
WASM := GOOS=js GOARCH=wasm
# Calls that are written out in place make these packages larger, and nothing
# in them is called often enough to gain by it.
LEAN := $(foreach p,problems $(addprefix problems/,building devices exam paper sets skills walk) app/page app/draw app/record,-gcflags=riserwork/$(p)=-l)
WASMBUILD := $(WASM) go build -trimpath -ldflags='-s -w' $(LEAN)
GOSRC := app problems solver

# How many problems the long run of make bench draws, works and marks.
SOAK ?= 20000

.PHONY: help serve site build desk go chromium npm test check test-unit test-wasm test-browser bench clean

help:
	@echo 'make serve    build the page and serve it at http://$(ADDR)/ (ADDR=host:port for another)'
	@echo 'make site     build the page into $(SITE), which any host of files can hand out'
	@echo 'make test     every check and test'
	@echo 'make bench    sizes and benchmarks'
	@echo 'make clean    remove what was built'
	@echo 'SOAK=1000000 with bench draws, works and marks so many problems'
	@echo 'QUICK=1 with serve, site or test-browser leaves the files uncompressed, for a faster turn'

serve: build
	@exec ./$(DESK) serve -addr $(ADDR) -dir $(SITE)

site: build
	@echo 'The site is the folder $(SITE): copy it to a host, at the top or under a prefix.'

build: desk
	@mkdir -p $(SITE)
	@$(WASMBUILD) -o $(SITE)/app.wasm ./app
	@cp "$$(go env GOROOT)/lib/wasm/wasm_exec.js" $(SITE)/wasm_exec.js
	@./$(DESK) build -dir web $(if $(QUICK),-quick)

desk: go
	@go build -trimpath -o $(DESK) ./app

# One sentence in place of what an older Go says about go.mod.
go:
	@want=$$(sed -n 's/^go //p' go.mod); \
	have=$$(go version 2>/dev/null) || { echo "Go was not found on the path, expected Go $$want or newer." >&2; exit 1; }; \
	go list -m >/dev/null 2>&1 || { echo "Go was \"$$have\", expected Go $$want or newer." >&2; exit 1; }

test: check test-unit
	@if command -v node >/dev/null; then $(MAKE) --no-print-directory test-wasm; \
	else echo 'node is not on the path: the sums are not tested under WebAssembly'; fi
	@$(MAKE) --no-print-directory test-browser

check: go
	@echo '== gofmt, vet, staticcheck'
	@unformatted=$$(gofmt -l $(GOSRC)); [ -z "$$unformatted" ] || { echo "not as gofmt writes it: $$unformatted" >&2; exit 1; }
	@go vet ./...
	@go vet -tags browser ./app/browsertest/
	@$(WASM) go vet ./app/...
	@go build -o .bin/staticcheck honnef.co/go/tools/cmd/staticcheck
	@.bin/staticcheck -tags browser ./...
	@$(WASM) .bin/staticcheck ./app/...

# The race detector makes tests ten times as long, so it gets the short runs.
# It needs a C compiler.
test-unit: go npm
	@echo '== unit tests'
	@go test -timeout 30m ./...
	@if [ "$$(go env CGO_ENABLED)" = 1 ]; then echo '== short runs under the race detector'; go test -race -short -timeout 30m ./...; \
	else echo 'no C compiler: nothing is tested under the race detector'; fi

# Programs of others that some tests compare with; without them those tests
# say so and compare nothing.
NPM := testdata/npm
npm:
	@if ! command -v node >/dev/null || ! command -v npm >/dev/null; then \
		echo 'node and npm are not both on the path: what is compared with programs of others is left out'; \
	elif [ ! $(NPM)/node_modules/.package-lock.json -nt $(NPM)/package-lock.json ]; then \
		npm ci --prefix $(NPM) --silent --no-audit --no-fund >/dev/null 2>&1 || \
		echo 'npm could not install what $(NPM)/package.json names: what is compared with it is left out'; \
	fi

# The sums must come out the same where the learner runs them.
test-wasm: go
	@echo '== unit tests under WebAssembly'
	@$(WASM) go test -short -timeout 30m -exec "$$(go env GOROOT)/lib/wasm/go_js_wasm_exec" ./solver/... ./problems/...

# The browser reads the built site, which the test cache does not see.
test-browser: build chromium npm
	@echo '== browser tests'
	@go test -count=1 -tags browser -timeout 40m ./app/browsertest/

chromium:
	@for name in chromium chromium-browser google-chrome chrome; do \
		if command -v $$name >/dev/null; then exit 0; fi; \
	done; \
	if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
		apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core >/dev/null; \
	else \
		echo 'Chromium was not found on the path, and the browser tests need it: install the package chromium (on Debian: apt-get install chromium).' >&2; exit 1; \
	fi

bench: build chromium
	@GODEBUG=inittrace=1 ./$(DESK) skills 2>&1 >/dev/null | awk '/^init riserwork\/(solver|problems)/ { ms += $$5 } \
		END { printf "start of the catalogue: %.1f ms here, %.1f ms at a fourth of the speed (aim 20)\n", ms, 4 * ms }'
	@$(WASMBUILD) -o .bin/counter.wasm ./app/browsertest/counter
	@$(WASM) go test -c -trimpath -ldflags='-s -w' -o .bin/marking.wasm ./problems/marking
	@./$(DESK) size $(SITE)/app.wasm .bin/counter.wasm
	@go test -run '^$$' -bench . -benchmem ./solver/... ./problems/... ./app/record/ ./app/desk/
	@go test -run '^$$' -bench Soak -benchtime $(SOAK)x -timeout 0 ./problems/marking/
	@go test -tags browser -run '^$$' -bench Start -benchtime 3x -timeout 30m ./app/browsertest/
	@go test -tags browser -run '^$$' -bench 'Marking|Verdict' -benchtime 1x -timeout 30m ./app/browsertest/

clean:
	rm -rf $(SITE) .bin $(MATHJS)/node_modules
