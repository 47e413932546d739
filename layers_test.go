package rodwright_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const module = "rodwright"

// rooms lists every room from the top of the house to its foundation. A room imports only rooms further
// down; a room's subfolders belong to it and may import each other.
var rooms = []struct{ name, holds string }{
	{"cmd/rodwright", "the command line: flags, wiring, exit codes"},
	{"bench", "programs that measure the layouts on open data"},
	{"examples", "pieces to begin from, embedded"},
	{"internal/server", "the HTTP interface of one shop"},
	{"internal/web", "the page in the browser, built and embedded"},
	{"internal/store", "the shop's database"},
	{"book", "the plan as a document value and its renderers"},
	{"change", "what a change does"},
	{"build", "Derive: wiring and memo; owns no rule of the trade"},
	{"fate", "what becomes of a part already made"},
	{"draw", "drawings as a value, their dimensions and exchange files"},
	{"money", "price"},
	{"steps", "ordered work and its time"},
	{"layout", "parts and rack turned into cutting problems, and the answers turned back"},
	{"cut", "cutting: plain numbers, knows nothing of furniture"},
	{"check", "findings: one file a check"},
	{"part", "take-off"},
	{"journal", "the numbered entries of a piece and their replay"},
	{"piece", "the document and its exact geometry"},
	{"shop", "stock, tools, prices, measured fittings"},
	{"trade", "what the trade knows: tables with sources, formulas on them"},
	{"mechanics", "plates and frames of beams: plain numbers"},
	{"solid", "shapes and their overlap"},
	{"finding", "a verdict with its reason"},
	{"figure", "a number that remembers its formula"},
	{"length", "exact lengths"},
}

// forbidden lists what the order of the rooms alone does not say. "*" stands for every other room.
var forbidden = []struct{ from, to, because string }{
	{"cut", "*", "the algorithms work on plain lengths, so that they can be measured on open data"},
	{"solid", "*", "shapes know nothing of furniture"},
	{"mechanics", "*", "mechanics knows nothing of furniture"},
	{"trade", "piece", "a quick answer needs no piece"},
	{"trade", "shop", "what the trade knows does not depend on one shop"},
	{"cut/verify", "cut/stick", "the verifier shares no algorithm with what it verifies"},
	{"cut/verify", "cut/panel", "the verifier shares no algorithm with what it verifies"},
	{"cut/verify", "cut/sheet", "the verifier shares no algorithm with what it verifies"},
	{"cut/verify", "cut/sawing", "the verifier shares no algorithm with what it verifies"},
	{"build", "draw", "what is derived does not depend on how it is shown"},
	{"draw/svg", "piece", "a renderer draws marks and knows no furniture"},
	{"draw/dxf", "piece", "a renderer draws marks and knows no furniture"},
	{"draw/plot", "piece", "a plot draws what a finding found and knows no furniture"},
	{"draw/plot", "check", "a plot draws what a finding found and judges nothing"},
	{"book/pdf", "build", "a renderer sets a document and computes nothing of a piece"},
	{"book/html", "build", "a renderer sets a document and computes nothing of a piece"},
	{"internal/store", "build", "the database keeps what was written, never what was derived"},
	{"internal/web", "*", "the page speaks to the server through its interface alone"},
}

// allowed are the exceptions to forbidden: the foundation that even plain rooms stand on.
var allowed = map[string]bool{"length": true}

func TestImportsPointDownTheHouse(t *testing.T) {
	for _, im := range imports(t) {
		from, to := roomOf(im.from), roomOf(im.to)
		switch {
		case from < 0:
			t.Errorf("%s: package %s belongs to no room of the list", im.file, im.from)
		case to < 0:
			t.Errorf("%s imports %s, which belongs to no room of the list", im.file, im.to)
		case to < from:
			t.Errorf("%s imports %s: %s stands above %s in the house", im.file, im.to, rooms[to].name, rooms[from].name)
		}
		for _, rule := range forbidden {
			if breaks(im.from, im.to, rule.from, rule.to) {
				t.Errorf("%s imports %s: %s", im.file, im.to, rule.because)
			}
		}
	}
}

func breaks(from, to, ruleFrom, ruleTo string) bool {
	if !under(from, ruleFrom) {
		return false
	}
	if ruleTo == "*" {
		return !under(to, ruleFrom) && !allowed[to]
	}
	return under(to, ruleTo)
}

// roomOf returns the index of the room that the package belongs to, or -1.
func roomOf(pkg string) int {
	for i, r := range rooms {
		if under(pkg, r.name) {
			return i
		}
	}
	return -1
}

func under(p, dir string) bool { return p == dir || strings.HasPrefix(p, dir+"/") }

type edge struct{ file, from, to string }

// imports returns every import of one package of this module by another, tests left out.
func imports(t *testing.T) (out []edge) {
	t.Helper()
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && p != "." && (d.Name()[0] == '.' || d.Name() == "testdata" || d.Name() == "node_modules") {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		from := filepath.ToSlash(filepath.Dir(p))
		for _, im := range f.Imports {
			path, err := strconv.Unquote(im.Path.Value)
			if err != nil {
				return err
			}
			if to, ok := strings.CutPrefix(path, module+"/"); ok {
				out = append(out, edge{p, from, to})
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestAnImportThatPointsUpIsCaught(t *testing.T) {
	for _, c := range []struct {
		from, to, ruleFrom, ruleTo string
		want                       bool
	}{
		{"cut/stick", "part", "cut", "*", true},
		{"cut/stick", "length", "cut", "*", false},
		{"cut/stick", "cut/verify", "cut", "*", false},
		{"trade/answer", "piece/formula", "trade", "piece", true},
		{"part", "piece", "trade", "piece", false},
	} {
		if got := breaks(c.from, c.to, c.ruleFrom, c.ruleTo); got != c.want {
			t.Errorf("%s imports %s against rule %s→%s: %v, want %v", c.from, c.to, c.ruleFrom, c.ruleTo, got, c.want)
		}
	}
	if roomOf("length") < roomOf("build") || roomOf("elsewhere") != -1 {
		t.Error("rooms are not in their order")
	}
}
