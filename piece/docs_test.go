package piece_test

import (
	"os"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/piece/formula"
	"rodwright/shop"
)

// grammarPage returns the blocks of docs/piece.md that are fenced with the given word.
func grammarPage(t *testing.T, word string) (page string, blocks []string) {
	t.Helper()
	text, err := os.ReadFile("../docs/piece.md")
	if err != nil {
		t.Fatal(err)
	}
	page = string(text)
	for rest := page; ; {
		_, after, ok := strings.Cut(rest, "```"+word+"\n")
		if !ok {
			return page, blocks
		}
		block, tail, ok := strings.Cut(after, "```\n")
		if !ok {
			t.Fatal("a block of docs/piece.md is not closed")
		}
		blocks, rest = append(blocks, block), tail
	}
}

// sections cuts a document into its sections, in order, each with its lines.
func sections(text string) (names []string, lines map[string][]string) {
	lines = map[string][]string{}
	name := ""
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		if line != "" && line[0] != ' ' && line[0] != '#' {
			name, _, _ = strings.Cut(line, ":")
			names = append(names, name)
		}
		lines[name] = append(lines[name], line)
	}
	return names, lines
}

// entry returns the name of the entry that a line of a section begins; empty for other lines.
func entry(line string) string {
	if !strings.HasPrefix(line, "  ") || strings.HasPrefix(line, "   ") || strings.HasPrefix(line, "  -") {
		return ""
	}
	name, _, _ := strings.Cut(strings.TrimSpace(line), ":")
	return name
}

// overlaid puts the entries of an example into a document in place of its own of the same names.
func overlaid(document, example string) string {
	names, into := sections(document)
	more, from := sections(example)
	for _, section := range more {
		lines, ok := into[section]
		if !ok {
			names = append(names, section)
		}
		if !ok || len(from[section]) == 1 || section == "feet" { // a section in one line, or of one kind
			into[section] = from[section]
			continue
		}
		replaced := map[string]bool{}
		for _, line := range from[section] {
			replaced[entry(line)] = entry(line) != ""
		}
		var kept []string
		skip := false
		for _, line := range lines {
			if e := entry(line); e != "" {
				skip = replaced[e]
			}
			if !skip {
				kept = append(kept, line)
			}
		}
		into[section] = append(kept, from[section][1:]...)
	}
	var out []string
	for _, name := range names {
		out = append(out, into[name]...)
	}
	return strings.Join(out, "\n") + "\n"
}

func TestTheCompleteExampleOfTheGrammarPageIsTheSteppedStand(t *testing.T) {
	_, blocks := grammarPage(t, "yaml")
	text, err := os.ReadFile("../examples/stepped-stand.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, body, _ := strings.Cut(string(text), "rodwright: 1\n")
	if blocks[0] != "rodwright: 1\n"+body {
		t.Error("docs/piece.md and examples/stepped-stand.piece.yaml are no longer the same")
	}
}

func TestEveryExampleOfTheGrammarPageIsRead(t *testing.T) {
	_, blocks := grammarPage(t, "yaml")
	if len(blocks) < 12 {
		t.Fatalf("only %d examples", len(blocks))
	}
	for _, block := range blocks[1:] {
		text := overlaid(blocks[0], block)
		if _, err := piece.Read("docs.piece.yaml", []byte(text)); err != nil {
			t.Errorf("%v\nin\n%s", err, block)
		}
	}
	doc, err := piece.Read("docs.piece.yaml", []byte(blocks[0]))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := piece.Resolve(doc, shop.Sample()); err != nil {
		t.Error(err)
	}
}

func TestTheFormulasOfTheGrammarPageGiveWhatItSays(t *testing.T) {
	_, yaml := grammarPage(t, "yaml")
	doc, err := piece.Read("docs.piece.yaml", []byte(yaml[0]))
	if err != nil {
		t.Fatal(err)
	}
	sizes := map[string]length.Length{}
	for _, s := range doc.Sizes {
		sizes[s.Name] = s.Value
	}
	declared := func(name string) bool { _, ok := sizes[name]; return ok }
	_, blocks := grammarPage(t, "formula")
	for _, line := range strings.Split(strings.TrimSpace(blocks[0]), "\n") {
		text, want, _ := strings.Cut(line, " = ")
		f, err := formula.Parse(text, doc.Unit, declared)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		got, err := f.Length(func(name string) length.Length { return sizes[name] })
		say, err2 := length.Parse(want, length.In)
		if err != nil || err2 != nil || got != say {
			t.Errorf("%s is %d nm, %v; the page says %s, %v", text, got, err, want, err2)
		}
	}
}

func TestTheErrorOfTheGrammarPageIsWhatIsTold(t *testing.T) {
	page, blocks := grammarPage(t, "yaml")
	text := strings.Replace(blocks[0], "low level + 21 in", "low levl + 21 in", 1)
	_, err := piece.Read("stand.piece.yaml", []byte(text))
	if err == nil || !strings.Contains(page, "    "+err.Error()+"\n") {
		t.Errorf("the page does not say: %v", err)
	}
}

// Every entry that is read is explained on the page, by its name in code style.
func TestTheGrammarPageExplainsEveryEntry(t *testing.T) {
	page, _ := grammarPage(t, "yaml")
	for _, key := range strings.Split("room humidity temperature doors ceiling wall slope threshold species cut moisture standard size is origin measured note "+
		"name on weight count at inset from to end joins level under bands share union reach length width thickness grain turned sits straps wood sheet "+
		"corners opens gap show stock kind fixed wheel height offset rated locks in along diameter radius depth passes screw slotted hole", " ") {
		if !strings.Contains(page, "`"+key+"`") && !strings.Contains(page, "`"+key+":") {
			t.Errorf("docs/piece.md says nothing of %s:", key)
		}
	}
}
