package rodwright_test

import (
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
)

// spaces folds a table's column widths, which other rows settle.
var spaces = regexp.MustCompile(`\s+`)

func TestTheReadmeShowsWhatTheProgramPrints(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("go", "run", "./cmd/rodwright", "derive", "examples/stepped-stand.piece.yaml").Output()
	if _, failed := err.(*exec.ExitError); err != nil && !failed {
		t.Fatal(err)
	}
	printed := spaces.ReplaceAllString(string(out), " ")
	shown := 0
	for i, block := range strings.Split(string(text), "```") {
		if i%2 == 0 || strings.HasPrefix(block, "yaml") {
			continue
		}
		for _, line := range strings.Split(strings.TrimSpace(block), "\n") {
			shown++
			if !strings.Contains(printed, strings.TrimSpace(spaces.ReplaceAllString(line, " "))) {
				t.Errorf("README.md shows a line that is not printed: %s", line)
			}
		}
	}
	if shown == 0 {
		t.Error("README.md shows nothing that is printed")
	}
}

func TestEveryPaperThatIsNamedIsThere(t *testing.T) {
	link := regexp.MustCompile(`\]\(([^)#:]+)\)`)
	for _, paper := range []string{"README.md", "CONTRIBUTING.md", "docs/architecture.md"} {
		text, err := os.ReadFile(paper)
		if err != nil {
			t.Fatal(err)
		}
		dir := ""
		if i := strings.LastIndex(paper, "/"); i >= 0 {
			dir = paper[:i+1]
		}
		for _, m := range link.FindAllStringSubmatch(string(text), -1) {
			if _, err := os.Stat(dir + m[1]); err != nil {
				t.Errorf("%s names %s: %v", paper, m[1], err)
			}
		}
	}
}

func TestTheReadmesCommandsRun(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	ran := 0
	for _, line := range strings.Split(string(text), "\n") {
		words, ok := strings.CutPrefix(line, "    go run ./cmd/rodwright ")
		if !ok || strings.HasPrefix(words, "demo") { // it serves until it is stopped: its own tests start and stop it
			continue
		}
		ran++
		words, _, _ = strings.Cut(words, "#")
		out, err := exec.Command("go", append([]string{"run", "./cmd/rodwright"}, strings.Fields(words)...)...).CombinedOutput()
		if strings.Contains(string(out), "error:") || len(out) == 0 {
			t.Errorf("%s: %v\n%s", line, err, out)
		}
	}
	if ran < 4 {
		t.Errorf("only %d commands found", ran)
	}
}
