package rodwright_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// caseRow is one line of docs/cases.md: its number, and what answers it or why it waits.
var caseRow = regexp.MustCompile(`^\| (O\d\d) \| (.+?) \| (.+) \|$`)

// answeredBy is a test named in docs/cases.md: package folder and function.
var answeredBy = regexp.MustCompile("`([a-z/]+)\\.((?:Test|Example)[A-Za-z0-9_]+)`")

// askedFrom is the table behind the test that puts makers' questions to the quick answers.
const (
	askedFrom = "trade/answer/testdata/cases.csv"
	askedBy   = "TestTopicsAnswerWhatMakersAsked"
)

func TestEveryCaseIsAnsweredByATestOrSaysWhyItWaits(t *testing.T) {
	text, err := os.ReadFile("docs/cases.md")
	if err != nil {
		t.Fatal(err)
	}
	asked, err := os.ReadFile(askedFrom)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for _, line := range strings.Split(string(text), "\n") {
		m := caseRow.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		seen[m[1]]++
		tests := answeredBy.FindAllStringSubmatch(m[3], -1)
		if len(tests) == 0 && !strings.HasPrefix(m[3], "waits for ") {
			t.Errorf("%s names no test and does not say what it waits for", m[1])
		}
		for _, name := range tests {
			if !hasTest(t, name[1], name[2]) {
				t.Errorf("%s names %s in %s: there is no such test", m[1], name[2], name[1])
			}
			if name[2] == askedBy && !strings.Contains(string(asked), "\n"+m[1]) {
				t.Errorf("%s names %s: %s has no row of it", m[1], askedBy, askedFrom)
			}
		}
	}
	for i := 1; i <= 55; i++ {
		if id := fmt.Sprintf("O%02d", i); seen[id] != 1 {
			t.Errorf("%s stands %d times in docs/cases.md", id, seen[id])
		}
	}
}

// hasTest reports whether a package folder has a test function of that name.
func hasTest(t *testing.T, folder, name string) bool {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(filepath.FromSlash(folder), "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "func "+name+"(") {
			return true
		}
	}
	return false
}
