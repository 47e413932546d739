package rodwright_test

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// tradePaper is the paper that lists every formula, and formulaHead the head of the tables that do.
const (
	tradePaper  = "docs/trade.md"
	formulaHead = "| what | equation | holds for | source | in |"
)

// relation is one formula: a figure.Formula as the code has it, or a row of the paper.
type relation struct{ text, holds, source, in, at string }

// row is the relation as a row of the paper; what it gives is left for a person to write.
func (r relation) row() string {
	return fmt.Sprintf("| … | `%s` | %s | %s | `%s` |", cell(r.text), cell(r.holds), cell(r.source), r.in)
}

// cell is text as it stands in a table of the paper.
func cell(text string) string { return strings.ReplaceAll(text, "|", `\|`) }

// agrees reports whether code and paper say the same of a formula.
func (r relation) agrees(o relation) bool {
	return r.text == o.text && r.in == o.in && r.source == o.source && r.holds == o.holds
}

func TestThePaperOnTheTradeHoldsEveryFormulaAndNoOther(t *testing.T) {
	text, err := os.ReadFile(tradePaper)
	if err != nil {
		t.Fatal(err)
	}
	code, rows := relations(t), paperRows(string(text))
	if len(code) < 100 {
		t.Fatalf("only %d formulas were found in the code: the test has lost its way", len(code))
	}
	for _, f := range code {
		if !slices.ContainsFunc(rows, f.agrees) {
			t.Error(lacks(f, rows))
		}
	}
	for _, r := range rows {
		if !slices.ContainsFunc(code, r.agrees) {
			t.Errorf("%s:%s: no formula of %s reads %q with this range and this source: mend the row, or take it out", tradePaper, r.at, r.in, r.text)
		}
	}
}

// lacks says what the paper lacks of a formula, with the row that would be right.
func lacks(f relation, rows []relation) string {
	why := "no row of its package has its equation"
	if i := slices.IndexFunc(rows, func(r relation) bool { return r.text == f.text && r.in == f.in }); i >= 0 {
		why = "line " + rows[i].at + " gives another source or range"
	}
	return fmt.Sprintf("%s: %s does not hold this formula, %s; write\n\t%s", f.at, tradePaper, why, f.row())
}

// paperRows reads the tables of formulas; a row that names several packages is a relation for each.
func paperRows(text string) (out []relation) {
	within := false
	for i, line := range strings.Split(text, "\n") {
		switch {
		case line == formulaHead:
			within = true
		case !strings.HasPrefix(line, "|"):
			within = false
		case within && !strings.HasPrefix(line, "| ---"):
			cells := append(tableCells(line), make([]string, 5)...)
			for _, in := range strings.Split(cells[4], ", ") {
				out = append(out, relation{strings.Trim(cells[1], "`"), cells[2], cells[3], strings.Trim(in, "`"), strconv.Itoa(i + 1)})
			}
		}
	}
	return out
}

// tableCells parts a row at its bars; a bar with a backslash before it belongs to its cell.
func tableCells(line string) []string {
	const bar = "\x00"
	cells := strings.Split(strings.Trim(strings.ReplaceAll(line, `\|`, bar), "|"), "|")
	for i, c := range cells {
		cells[i] = strings.TrimSpace(strings.ReplaceAll(c, bar, "|"))
	}
	return cells
}

// relations returns every formula written in the code, tests left out; those that read alike in one package
// count once.
func relations(t *testing.T) (out []relation) {
	t.Helper()
	set := token.NewFileSet()
	packages := sources(t, set)
	for _, in := range slices.Sorted(maps.Keys(packages)) {
		found, faults := relationsOf(set, in, packages[in])
		for _, fault := range faults {
			t.Error(fault)
		}
		for _, f := range found {
			if !slices.ContainsFunc(out, f.agrees) {
				out = append(out, f)
			}
		}
	}
	return out
}

// sources reads the code, package by package, tests left out.
func sources(t *testing.T, set *token.FileSet) map[string][]*ast.File {
	t.Helper()
	packages := map[string][]*ast.File{}
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
		f, err := parser.ParseFile(set, p, nil, parser.SkipObjectResolution)
		in := filepath.ToSlash(filepath.Dir(p))
		packages[in] = append(packages[in], f)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return packages
}

// relationsOf returns the formulas of one package, and what of them can't be read.
func relationsOf(set *token.FileSet, in string, files []*ast.File) (out []relation, faults []string) {
	known := constants(files)
	for _, file := range files {
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			for _, f := range formulaLiterals(lit) {
				at := set.Position(f.Pos())
				r, err := readFormula(f, known)
				if err != nil {
					faults = append(faults, fmt.Sprintf("%s:%d: %v", at.Filename, at.Line, err))
					continue
				}
				r.in, r.at = in, fmt.Sprintf("%s:%d", at.Filename, at.Line)
				out = append(out, r)
			}
			return true
		})
	}
	return out, faults
}

// formulaLiterals returns the literal itself where it is a formula, and the elements of a list or a map of
// formulas, which leave their type out.
func formulaLiterals(lit *ast.CompositeLit) (out []*ast.CompositeLit) {
	if isFormula(lit.Type) {
		return []*ast.CompositeLit{lit}
	}
	var of ast.Expr
	switch t := lit.Type.(type) {
	case *ast.ArrayType:
		of = t.Elt
	case *ast.MapType:
		of = t.Value
	}
	if !isFormula(of) {
		return nil
	}
	for _, e := range lit.Elts {
		if pair, ok := e.(*ast.KeyValueExpr); ok {
			e = pair.Value
		}
		if f, ok := e.(*ast.CompositeLit); ok && f.Type == nil {
			out = append(out, f)
		}
	}
	return out
}

// isFormula reports whether a type is figure.Formula or a pointer to it.
func isFormula(e ast.Expr) bool {
	if star, ok := e.(*ast.StarExpr); ok {
		e = star.X
	}
	s, ok := e.(*ast.SelectorExpr)
	if !ok || s.Sel.Name != "Formula" {
		return false
	}
	x, ok := s.X.(*ast.Ident)
	return ok && x.Name == "figure"
}

var (
	errNoFields = errors.New("a formula without the names of its fields; write Text, Source and Range")
	errNoSource = errors.New("a formula without text or without source; say where it comes from, or 'common practice, no source'")
)

// readFormula reads the fields of a formula.
func readFormula(lit *ast.CompositeLit, known map[string]ast.Expr) (r relation, err error) {
	fields := map[string]*string{"Text": &r.text, "Source": &r.source, "Range": &r.holds}
	for _, e := range lit.Elts {
		pair, ok := e.(*ast.KeyValueExpr)
		if !ok {
			return r, errNoFields
		}
		name := pair.Key.(*ast.Ident).Name
		value, ok := words(pair.Value, known)
		if field := fields[name]; ok && field != nil {
			*field = value
			continue
		}
		return r, fmt.Errorf("the formula's %s is not written out; write a string or a constant, so that %s can hold it", name, tradePaper)
	}
	if r.text == "" || r.source == "" {
		return r, errNoSource
	}
	return r, nil
}

// constants returns what every constant of a package is given as, by name.
func constants(files []*ast.File) map[string]ast.Expr {
	out := map[string]ast.Expr{}
	for _, file := range files {
		ast.Inspect(file, func(n ast.Node) bool {
			if decl, ok := n.(*ast.GenDecl); ok && decl.Tok == token.CONST {
				for _, spec := range decl.Specs {
					s := spec.(*ast.ValueSpec)
					for i := range min(len(s.Names), len(s.Values)) {
						out[s.Names[i].Name] = s.Values[i]
					}
				}
			}
			return true
		})
	}
	return out
}

// words works out a constant string.
func words(e ast.Expr, known map[string]ast.Expr) (string, bool) {
	switch x := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(x.Value)
		return s, err == nil && x.Kind == token.STRING
	case *ast.Ident:
		value, ok := known[x.Name]
		if !ok {
			return "", false
		}
		return words(value, known)
	case *ast.BinaryExpr:
		a, okA := words(x.X, known)
		b, okB := words(x.Y, known)
		return a + b, okA && okB && x.Op == token.ADD
	}
	return "", false
}

func TestFormulasAreFoundHoweverTheyAreWritten(t *testing.T) {
	const source = `package p
const who = "a book"
var one = figure.Formula{Text: "a = |b|", Source: who + ", page 1", Range: "b < 1"}
var two = map[string]*figure.Formula{"x": {Text: "c = d", Source: who}}
var three = []figure.Formula{{Text: "e = f", Source: who}}
func four() *figure.Formula { return &figure.Formula{Text: "g = h", Source: who} }
var five = figure.Formula{Text: name(), Source: who}
var six = figure.Formula{Text: "i = j"}
var seven = figure.Formula{"k = l", who, ""}
`
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, "p.go", source, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	found, faults := relationsOf(set, "p", []*ast.File{file})
	if len(found) != 4 || len(faults) != 3 {
		t.Fatalf("found %v, faults %q", found, faults)
	}
	paper := formulaHead + "\n| --- | --- | --- | --- | --- |\n" + strings.Replace(found[0].row(), "…", "one", 1) +
		"\n| two | `c = d` |  | a tale | `p`, `q` |\n| short |\n\n| another | table |\n"
	rows := paperRows(paper)
	if len(rows) != 4 || !found[0].agrees(rows[0]) || rows[2].in != "q" {
		t.Fatalf("rows %v do not hold %v", rows, found[0])
	}
	if said := lacks(found[1], rows); !strings.Contains(said, "p.go:4: ") || !strings.Contains(said, "line 4 gives another source") || !strings.Contains(said, "| … | `c = d` |  | a book | `p` |") {
		t.Error(said)
	}
	if said := lacks(found[2], rows); !strings.Contains(said, "no row of its package has its equation") {
		t.Error(said)
	}
}
