package store

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// ofSQLite are the files that speak to SQLite alone; all others hold statements for both databases.
var ofSQLite = map[string]bool{"sqlite.go": true, "recognise.go": true, "backup.go": true}

// statements returns every text in the sources of this package that can be part of a statement, by file: those
// of Go in back quotes, and the migrations.
func statements(t *testing.T) map[string][]string {
	t.Helper()
	found := map[string][]string{}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") || ofSQLite[file] {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING && text.Value[0] == '`' {
				found[file] = append(found[file], text.Value)
			}
			return true
		})
	}
	forms, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range forms {
		text, err := fs.ReadFile(migrations, file)
		if err != nil {
			t.Fatal(err)
		}
		found[file] = append(found[file], string(text))
	}
	return found
}

var (
	placeholder = regexp.MustCompile(`\$(\d+)`)
	verb        = regexp.MustCompile(`(?i)^"(select|insert|update|delete|create|drop|alter|vacuum|pragma) `)
	ofOneOnly   = regexp.MustCompile(`(?i)\bautoincrement\b|\bstrict\b|\bdatetime\(|\bstrftime\(|\binteger\b|\breal\b|\bblob\b|` +
		`\binsert or\b|\breplace into\b|\browid\b|\bifnull\(|\bpragma\b|\bglob\b|\bsqlite_|\bserial\b|\bjsonb\b|::|\bnow\(|\?`)
)

// fault says why a statement is not read alike by both databases. PostgreSQL numbers its parameters by $n,
// SQLite's driver binds them in the order of first use; both agree where the first uses ascend.
func fault(statement string) string {
	most := 0
	for _, m := range placeholder.FindAllStringSubmatch(statement, -1) {
		n, err := strconv.Atoi(m[1])
		if err != nil || n > most+1 {
			return "$" + m[1] + " before $" + strconv.Itoa(most+1)
		}
		most = max(most, n)
	}
	if word := ofOneOnly.FindString(statement); word != "" {
		return word + " is of one database only"
	}
	return ""
}

func TestStatementsAreReadByBothDatabases(t *testing.T) {
	count := 0
	for file, texts := range statements(t) {
		for _, text := range texts {
			count++
			if why := fault(text); why != "" {
				t.Errorf("%s: %s in %s", file, why, text)
			}
		}
	}
	if count < 20 {
		t.Errorf("only %d statements found", count)
	}
}

func TestAStatementOfOneDatabaseOnlyIsCaught(t *testing.T) {
	for _, statement := range []string{
		`select name from pieces where id = $2`, `select $1, $3, $2`, `insert or ignore into pieces values ($1)`,
		`create table a (id integer primary key AUTOINCREMENT)`, `create table a (id text) strict`, `select datetime('now')`,
		`select * from pieces where id = ?`,
	} {
		if fault(statement) == "" {
			t.Errorf("not caught: %s", statement)
		}
	}
	if why := fault(`update pieces set name = $1 where name = $1 and id = $2`); why != "" {
		t.Errorf("a statement for both: %s", why)
	}
}

// A statement in double quotes would escape the rules above.
func TestStatementsForBothStandInBackQuotes(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") || ofSQLite[file] {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING && verb.MatchString(text.Value) {
				t.Errorf("%s: %s", file, text.Value)
			}
			return true
		})
	}
}
