package rodwright_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// relation is one figure.Formula as it stands in the code.
type relation struct{ file, text, source, holds string }

func TestEveryFormulaStandsInTheTradePaper(t *testing.T) {
	paper, err := os.ReadFile("docs/trade.md")
	if err != nil {
		t.Fatal(err)
	}
	all := relations(t)
	if len(all) < 100 {
		t.Fatalf("only %d formulas found in the code", len(all))
	}
	for _, r := range all {
		if r.text == "" || r.source == "" {
			t.Errorf("%s: a formula without text or source: %+v", r.file, r)
			continue
		}
		for _, want := range []string{r.text, r.source, r.holds} {
			if !strings.Contains(string(paper), cell(want)) {
				t.Errorf("docs/trade.md lacks %q of %s", want, r.file)
			}
		}
	}
}

// cell is text as it stands in a table of the paper.
func cell(text string) string { return strings.ReplaceAll(text, "|", `\|`) }

// relations returns every figure.Formula literal of the code, tests left out.
func relations(t *testing.T) (out []relation) {
	t.Helper()
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() || p != "." && (d.Name()[0] == '.' || d.Name() == "testdata") {
			return skipHidden(p, d, err)
		}
		pkgs, err := filepath.Glob(filepath.Join(p, "*.go"))
		if err != nil {
			return err
		}
		var files []*ast.File
		fset := token.NewFileSet()
		for _, f := range pkgs {
			if strings.HasSuffix(f, "_test.go") {
				continue
			}
			parsed, err := parser.ParseFile(fset, f, nil, 0)
			if err != nil {
				return err
			}
			files = append(files, parsed)
		}
		words := constants(files)
		for _, f := range files {
			ast.Inspect(f, func(n ast.Node) bool {
				if lit, ok := n.(*ast.CompositeLit); ok && isFormula(lit.Type) {
					r := relation{file: fset.Position(lit.Pos()).String()}
					r.fill(lit, words)
					out = append(out, r)
				}
				return true
			})
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func skipHidden(p string, d fs.DirEntry, err error) error {
	if err == nil && d.IsDir() && p != "." {
		return fs.SkipDir
	}
	return err
}

func isFormula(e ast.Expr) bool {
	s, ok := e.(*ast.SelectorExpr)
	return ok && s.Sel.Name == "Formula"
}

func (r *relation) fill(lit *ast.CompositeLit, words map[string]string) {
	for _, e := range lit.Elts {
		kv, ok := e.(*ast.KeyValueExpr)
		if !ok {
			continue
		}
		text := said(kv.Value, words)
		switch kv.Key.(*ast.Ident).Name {
		case "Text":
			r.text = text
		case "Source":
			r.source = text
		case "Range":
			r.holds = text
		}
	}
}

// constants returns the package's constants that are text.
func constants(files []*ast.File) map[string]string {
	out := map[string]string{}
	for _, f := range files {
		for _, d := range f.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.CONST {
				continue
			}
			for _, s := range g.Specs {
				v := s.(*ast.ValueSpec)
				for i, name := range v.Names {
					if i < len(v.Values) {
						out[name.Name] = said(v.Values[i], out)
					}
				}
			}
		}
	}
	return out
}

// said returns the text of an expression of literals and constants; empty for any other.
func said(e ast.Expr, words map[string]string) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		if err != nil {
			return ""
		}
		return text
	case *ast.Ident:
		return words[e.Name]
	case *ast.BinaryExpr:
		return said(e.X, words) + said(e.Y, words)
	}
	return ""
}
