package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// smallPage writes a page with one script, one style and one library, and returns its folder.
func smallPage(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"ui/main.tsx":                   "import './main.css'; import { word } from 'lib'; console.log(word); void import('./later');",
		"ui/later.ts":                   "export const later = 1; console.log(later);",
		"ui/main.css":                   "@font-face { src: url('/fonts/regular.ttf') } body { margin: 0 }",
		"ui/index.html":                 "<link href=\"{{style}}\"><script src=\"{{script}}\"></script>",
		"ui/icon.svg":                   "<svg/>",
		"node_modules/lib/index.js":     "export const word = 'rod';",
		"node_modules/lib/package.json": `{"name": "lib", "version": "1.2.3", "main": "index.js"}`,
		"node_modules/lib/LICENSE":      "Use it freely.",
	} {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func built(t *testing.T, dir string) files {
	t.Helper()
	page, err := build(dir)
	if err != nil {
		t.Fatal(err)
	}
	return page
}

func TestTheSamePageComesFromEveryFolder(t *testing.T) {
	if diff := cmp.Diff(built(t, smallPage(t)), built(t, smallPage(t))); diff != "" {
		t.Error(diff)
	}
}

func TestTheIndexNamesTheScriptAndTheStyle(t *testing.T) {
	page := built(t, smallPage(t))
	index := string(page["index.html"])
	for name := range page {
		if strings.HasPrefix(name, "app-") && !strings.Contains(index, `"/`+name+`"`) {
			t.Errorf("%s is not named in %s", name, index)
		}
	}
}

func TestTheLicenceOfWhatIsBundledComesAlong(t *testing.T) {
	text := string(built(t, smallPage(t))["LICENSES.txt"])
	if !strings.Contains(text, "lib 1.2.3\n\nUse it freely.") {
		t.Errorf("got %s", text)
	}
}

func TestALibraryWithoutLicenceIsRefused(t *testing.T) {
	dir := smallPage(t)
	if err := os.Remove(filepath.Join(dir, "node_modules", "lib", "LICENSE")); err != nil {
		t.Fatal(err)
	}
	if _, err := build(dir); err == nil || !strings.Contains(err.Error(), "licence") {
		t.Errorf("got %v", err)
	}
}

func TestMissingPackagesAreNamedWithTheWayToFetchThem(t *testing.T) {
	if _, err := build(t.TempDir()); err == nil || !strings.Contains(err.Error(), "npm ci") {
		t.Errorf("got %v", err)
	}
}

func TestAWrongScriptIsToldWithItsPlace(t *testing.T) {
	dir := smallPage(t)
	if err := os.WriteFile(filepath.Join(dir, "ui", "main.tsx"), []byte("const = 1"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := build(dir); err == nil || !strings.Contains(err.Error(), "main.tsx:1:6") {
		t.Errorf("got %v", err)
	}
}

func TestAStalePageIsNoticed(t *testing.T) {
	page := built(t, smallPage(t))
	for name, spoil := range map[string]func(dist string) error{
		"changed": func(d string) error { return os.WriteFile(filepath.Join(d, "index.html"), []byte("old"), 0o644) },
		"missing": func(d string) error { return os.Remove(filepath.Join(d, "icon.svg")) },
		"left":    func(d string) error { return os.WriteFile(filepath.Join(d, "app-OLD.js"), nil, 0o644) },
		"gone":    os.RemoveAll,
	} {
		dist := filepath.Join(t.TempDir(), "dist")
		if err := write(dist, page); err != nil {
			t.Fatal(err)
		}
		if err := compare(dist, page); err != nil {
			t.Errorf("fresh, yet %v", err)
		}
		if err := spoil(dist); err != nil {
			t.Fatal(err)
		}
		if err := compare(dist, page); err == nil {
			t.Errorf("%s: not noticed", name)
		}
	}
}

func TestThePackageOfAnInput(t *testing.T) {
	for input, want := range map[string]string{
		"ui/main.tsx": "", "node_modules/preact/dist/preact.mjs": "preact", "node_modules/@preact/signals/dist/signals.mjs": "@preact/signals",
	} {
		if got := packageOf(input); got != want {
			t.Errorf("%s is of %q, want %q", input, got, want)
		}
	}
}

func TestTheReportNamesEveryFileWithItsSize(t *testing.T) {
	var out bytes.Buffer
	if err := report(&out, files{"a.js": []byte("12345")}); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(out.String(), "a.js") || !strings.Contains(out.String(), " 5 bytes") {
		t.Errorf("got %q", out.String())
	}
}
