# Everything a change must pass is `make test`; continuous integration runs the same.
GO      ?= go
VERSION ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo unversioned)
PKGS     = ./...

.PHONY: test check lint build bench fuzz soak size

test: check ## what a change must pass
	$(GO) test $(PKGS)

check: lint ## formatting, vet, static analysis
	@$(GO) build $(PKGS)

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
