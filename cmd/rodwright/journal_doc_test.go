package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"rodwright/build"
	"rodwright/change"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/shop"
)

// journalPage returns the blocks of docs/journal.md that are fenced with the given word.
func journalPage(t *testing.T, word string) (blocks []string) {
	t.Helper()
	text, err := os.ReadFile("../../docs/journal.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile("(?s)```"+word+"\n(.*?)```\n").FindAllStringSubmatch(string(text), -1) {
		blocks = append(blocks, m[1])
	}
	if len(blocks) == 0 {
		t.Fatalf("the page has no block of %s", word)
	}
	return blocks
}

// typed parts a command line into its words as a shell does: with spaces in quotes.
func typed(line string) (words []string) {
	for _, m := range regexp.MustCompile(`"([^"]*)"|\S+`).FindAllStringSubmatch(line, -1) {
		if m[0][0] == '"' {
			words = append(words, m[1])
		} else {
			words = append(words, m[0])
		}
	}
	return words
}

// matches reports whether a text is as the page has it, where … stands for anything.
func matches(page, text string) bool {
	parts := strings.Split(page, "…")
	for i, p := range parts {
		parts[i] = regexp.QuoteMeta(p)
	}
	return regexp.MustCompile("(?s)^" + strings.Join(parts, ".*") + "$").MatchString(text)
}

// The sessions of the page are one, on the packing table.
func TestTheSessionsOfTheJournalPageGoAsItSays(t *testing.T) {
	sessions := journalSessions(t)
	t.Chdir(filepath.Dir(aTable(t)))
	defer func(zone *time.Location) { time.Local = zone }(time.Local)
	time.Local = time.UTC
	for _, block := range sessions {
		line, want, _ := strings.Cut(block, "\n")
		words := typed(line)
		if words[0] != "rodwright" || words[1] != "journal" {
			t.Fatalf("%q is no verb of a journal", line)
		}
		out, errs := says(t, exitDone, words[2:]...)
		if errs != "" || !matches(want, out) {
			t.Errorf("%s\nsays\n%s%s\nthe page says\n%s", line, out, errs, want)
		}
	}
}

// journalSessions are the command lines of the page, each with what it prints.
func journalSessions(t *testing.T) (out []string) {
	pages := journalPage(t, "session")
	for _, block := range pages {
		out = append(out, strings.Split(strings.TrimPrefix(block, "$ "), "\n$ ")...)
	}
	for i := range out { // what was cut off between two of them
		out[i] = strings.TrimSuffix(out[i], "\n") + "\n"
	}
	return out
}

// Every fact of the page is understood of the packing table, in the order it stands there.
func TestTheFactsOfTheJournalPageAreUnderstood(t *testing.T) {
	text, err := os.ReadFile("../../examples/packing-table.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	log := change.Log{Name: "table", Start: text, Shop: shop.Sample(), Memo: build.NewMemo(64)}
	p := &pen{actor: "maker"}
	for _, line := range strings.Split(strings.TrimSpace(journalPage(t, "fact")[0]), "\n") {
		es, err := said(log, line)
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		e, err := p.settle(text, log.Entries, es[0], int64(len(log.Entries)))
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		log.Entries = append(log.Entries, e)
	}
}

// Each line of the grammar begins as one of the facts of the page does.
func TestTheGrammarOfTheJournalPageHasAnExampleOfEachFact(t *testing.T) {
	facts := journalPage(t, "fact")[0]
	for _, line := range strings.Split(strings.TrimSpace(journalPage(t, "grammar")[0]), "\n") {
		word, rest, _ := strings.Cut(line, " ")
		if second, _, _ := strings.Cut(rest, " "); second != "" && second == strings.ToLower(second) {
			word += " " + second
		}
		if !strings.Contains("\n"+facts, "\n"+word) {
			t.Errorf("no example of %q", word)
		}
		first, _, _ := strings.Cut(word, " ")
		if _, err := journal.Say(first, length.In); err != nil && strings.Contains(err.Error(), "tells of nothing that is known") {
			t.Errorf("%q is no fact", first)
		}
	}
}

// The lines of the page that show the file are a journal, of each kind.
func TestTheFileOfTheJournalPageIsOne(t *testing.T) {
	es, err := journal.Read(strings.NewReader(journalPage(t, "jsonl")[0]))
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[journal.Kind]bool{}
	for _, e := range es {
		kinds[e.Kind] = true
	}
	if len(kinds) != 7 {
		t.Errorf("%v", kinds)
	}
	text, err := os.ReadFile("../../examples/packing-table.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := journal.Replay(text, es); err != nil {
		t.Error(err)
	}
}
