package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"rodwright": main})
}

func TestSessionsAtTheCommandLine(t *testing.T) {
	examples, err := filepath.Abs("../../examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", examples)
			e.Setenv("TZ", "UTC") // of the times that a journal shows
			return nil
		},
	})
}

// run runs one command line and returns its exit code and what it printed.
func run(in string, args ...string) (code int, stdout, stderr string) {
	var out, errs bytes.Buffer
	code = (&Main{strings.NewReader(in), &out, &errs}).Run(args)
	return code, out.String(), errs.String()
}

func TestAWrongDocumentIsOneClearErrorAndNothingElse(t *testing.T) {
	files, err := filepath.Glob("../../piece/testdata/wrong/*.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < 60 {
		t.Fatalf("%d wrong documents, want at least 60", len(files))
	}
	for _, f := range files {
		code, out, errs := run("", "derive", f)
		lines := strings.Split(strings.TrimSpace(errs), "\n")
		if code != exitInput || out != "" {
			t.Errorf("%s: exit %d, %d bytes on standard output", f, code, len(out))
		}
		if len(lines) != 1 || !strings.HasPrefix(lines[0], "error: "+f+":") {
			t.Errorf("%s: %q", f, errs)
		}
	}
}

func TestEveryVerbHasHelpWithAnExample(t *testing.T) {
	for _, verb := range []string{"new", "derive", "check", "book", "journal", "layout", "cut", "serve", "demo"} {
		code, out, errs := run("", verb, "--help")
		if code != exitDone || !strings.Contains(out, "Example: ") || errs != "" {
			t.Errorf("%s --help: exit %d, %q, %q", verb, code, out, errs)
		}
	}
}

func TestAPieceIsReadFromStandardInput(t *testing.T) {
	text, err := os.ReadFile("../../examples/low-bench.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	code, out, errs := run(string(text), "derive", "-")
	if code != exitDone || !strings.Contains(out, "LOW BENCH") {
		t.Errorf("exit %d, %q", code, errs)
	}
	if code, out, errs = run("nonsense: [", "derive", "-"); code != exitInput || out != "" || !strings.Contains(errs, "standard input:1:") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
}

func TestAnInputPastAllSizeIsRefused(t *testing.T) {
	code, out, errs := run(strings.Repeat("#", mostInput+1), "derive", "-")
	if code != exitInput || out != "" || !strings.Contains(errs, "more than") {
		t.Errorf("exit %d, %q", code, errs)
	}
}
