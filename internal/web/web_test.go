package web_test

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
	"testing"

	"rodwright/internal/web"
)

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := fs.ReadFile(web.Files(), name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestThePageNamesOnlyFilesThatAreBuilt(t *testing.T) {
	index := read(t, "index.html")
	named := regexp.MustCompile(`(?:src|href)="/([^"]+)"`).FindAllStringSubmatch(index, -1)
	if len(named) < 3 {
		t.Fatalf("index.html names %d files, want its script, style and icon:\n%s", len(named), index)
	}
	for _, n := range named {
		if n[1] == "drawing.css" { // the drawings' own style, which the server has from them
			continue
		}
		if read(t, n[1]) == "" {
			t.Errorf("%s is empty", n[1])
		}
	}
}

func TestThePageFetchesNothingFromElsewhere(t *testing.T) {
	files, err := fs.Glob(web.Files(), "*.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(files, "index.html") {
		if text := read(t, name); strings.Contains(text, "//") && regexp.MustCompile(`(?i)(https?:)?//[a-z]`).MatchString(text) {
			t.Errorf("%s names another host: a shop works without the internet", name)
		}
	}
}

func TestScriptsAndStylesAreNamedAfterTheirContents(t *testing.T) {
	hashed := regexp.MustCompile(`^(app|part)-[A-Z0-9]{8}\.(js|css)$`)
	all, err := fs.ReadDir(web.Files(), ".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range all {
		if n := f.Name(); (strings.HasSuffix(n, ".js") || strings.HasSuffix(n, ".css")) && !hashed.MatchString(n) {
			t.Errorf("%s: a cache would keep it for ever under this name", n)
		}
	}
}

func TestEveryBundledLibraryComesWithItsLicence(t *testing.T) {
	text := read(t, "LICENSES.txt")
	for _, name := range []string{"preact ", "@preact/signals ", "three "} {
		if !strings.Contains(text, "\n"+name) {
			t.Errorf("LICENSES.txt lacks %s", name)
		}
	}
}

func ExampleFiles() {
	index, err := fs.ReadFile(web.Files(), "index.html")
	fmt.Println(strings.HasPrefix(string(index), "<!doctype html>"), err)
	// Output: true <nil>
}
