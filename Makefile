# Everything a change must pass is `make test`; continuous integration runs the same.
GO      ?= go
VERSION ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo unversioned)
PKGS     = ./...

.PHONY: test tools check lint bundle build bench fuzz soak pictures

test: tools check ## what a change must pass
	$(GO) test $(PKGS)
	npm test --prefix internal/web

tools: ## installs what the tests drive: Chromium, readers of PDF, the packages of the page
	.ci/tools

check: tools lint ## formatting, vet, static analysis, and that the built page is no older than its source
	@$(GO) build $(PKGS)
	$(GO) run ./internal/web/bundle --check

bundle: tools ## builds the page; commit what it writes
	$(GO) run ./internal/web/bundle

pictures: tools build ## the pictures of the README, taken from the demo and a book
	RODWRIGHT=$(CURDIR)/bin/rodwright node internal/web/test/pictures.mjs docs/pictures

lint:
	@unformatted=$$(gofmt -l $$(git ls-files '*.go' 2>/dev/null || find . -name '*.go')); \
	  if [ -n "$$unformatted" ]; then echo "not formatted: $$unformatted"; exit 1; fi
	$(GO) vet $(PKGS)
	$(GO) tool staticcheck $(PKGS)

build: ## one static binary
	CGO_ENABLED=0 $(GO) build -trimpath -ldflags='-s -w -X main.version=$(VERSION)' -o bin/rodwright ./cmd/rodwright

bench: build ## figures for docs/figures.md
	$(GO) test -run '^$$' -bench . -benchmem $(PKGS)
	@ls -l bin/rodwright | awk '{printf "binary: %.1f MB\n", $$5/1e6}'

FUZZTIME ?= 30s
fuzz: ## every fuzz target, FUZZTIME each
	@for p in $$($(GO) list $(PKGS)); do \
	  for f in $$($(GO) test -list '^Fuzz' $$p | grep '^Fuzz'); do \
	    echo "== $$p $$f"; $(GO) test -run '^$$' -fuzz "^$$f\$$" -fuzztime $(FUZZTIME) $$p || exit 1; \
	  done; done

soak: ## the laws on many more random pieces
	RODWRIGHT_PIECES=20000 $(GO) test -count=1 -timeout 60m ./build/...
	$(GO) test -count=1 -timeout 60m ./change ./fate -rapid.checks=2000
	RODWRIGHT_KILLS=500 $(GO) test -count=1 -run OutlivesAKill -v ./internal/store/
