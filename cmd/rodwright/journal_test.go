package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"rodwright/internal/store/beside"
	"rodwright/journal"
)

// aTable puts the packing table into a folder of its own.
func aTable(t *testing.T) (file string) {
	t.Helper()
	text, err := os.ReadFile("../../examples/packing-table.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	file = filepath.Join(t.TempDir(), "table.piece.yaml")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// says runs a verb of the journal that must end with the code.
func says(t *testing.T, code int, words ...string) (out, errs string) {
	t.Helper()
	got, out, errs := run("", append([]string{"journal"}, words...)...)
	if got != code {
		t.Fatalf("%q: exit %d, want %d: %s%s", words, got, code, out, errs)
	}
	return out, errs
}

func TestEveryVerbOfAJournalHasHelpWithAnExample(t *testing.T) {
	for _, verb := range []string{"list", "add", "weigh", "compare", "undo"} {
		if out, errs := says(t, exitDone, verb, "--help"); !strings.Contains(out, "Example: ") || errs != "" {
			t.Errorf("%s --help: %q, %q", verb, out, errs)
		}
	}
}

func TestTheExitOfAJournalSaysWhatHappened(t *testing.T) {
	file := aTable(t)
	says(t, exitDone, "add", file, "made", "C2.1", "thread")
	says(t, exitDone, "weigh", file, "sizes/low level=10 in")
	says(t, exitFails, "weigh", file, "sizes/low level=3 in")
	says(t, exitFails, "weigh", file, "sizes/low level=3 in", "--json")
	says(t, exitInput, "add", file, "made", "C2.1", "polish")
	says(t, exitInput, "add", file, "edit", "sizes/hight", "3 in")
	says(t, exitInput, "compare", file, "7")
	says(t, exitInput, "undo", file, "7")
	says(t, exitInput, "list", "nowhere.piece.yaml")
	if _, errs := says(t, exitInput, "add", file, "--actor", strings.Repeat("a", 101), "finished"); !strings.Contains(errs, "actor") {
		t.Error(errs)
	}
}

// A folder that stands where the journal should be can't be read: that is no fault of the words.
func TestAJournalThatCannotBeReadIsNoFaultOfTheWords(t *testing.T) {
	file := aTable(t)
	if err := os.Mkdir(beside.Name(file), 0o755); err != nil {
		t.Fatal(err)
	}
	says(t, exitOther, "list", file)
	says(t, exitOther, "add", file, "finished")
}

// The value can be put into the text, and what comes of it can't be built: nothing is written.
func TestWhatCannotBeDerivedIsNotWritten(t *testing.T) {
	file := aTable(t)
	for _, value := range []string{"three cubits", "low level + nothing"} {
		if _, errs := says(t, exitInput, "add", file, "edit", "sizes/height", value); !strings.Contains(errs, "table.piece.yaml:") {
			t.Error(errs)
		}
	}
	if es, err := beside.Load(beside.Name(file)); err != nil || len(es) != 0 {
		t.Errorf("%v, %d entries", err, len(es))
	}
}

// The beginning was changed by hand so that nothing can be derived: what was written is shown still, with the mistake.
func TestAJournalIsShownWhereItsDocumentCannotBeRead(t *testing.T) {
	file := aTable(t)
	says(t, exitDone, "add", file, "edit", "sizes/height", "36 in")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(strings.Replace(string(text), "inset:  3 in", "inset:  300 in", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, form := range [][]string{{"list", file}, {"list", file, "--json"}} {
		if out, errs := says(t, exitInput, form...); !strings.Contains(out, "36 in") || !strings.Contains(errs, "table.piece.yaml:") {
			t.Errorf("%q, %q", out, errs)
		}
	}
}

// A later edit of the value by somebody else stands: taking the earlier one back would not be seen.
func TestAnEditThatSomebodyChangedSinceIsNotUndone(t *testing.T) {
	file := aTable(t)
	says(t, exitDone, "add", file, "--actor", "maker", "edit", "sizes/height", "36 in")
	says(t, exitDone, "add", file, "--actor", "helper", "edit", "sizes/height", "37 in")
	if _, errs := says(t, exitInput, "undo", file, "--actor", "maker"); !strings.Contains(errs, "entry 2 of helper changed sizes/height since") {
		t.Error(errs)
	}
	says(t, exitDone, "undo", file, "--actor", "helper")
	says(t, exitDone, "undo", file, "3", "--actor", "helper") // and again: the undo is taken back
	if out, _ := says(t, exitDone, "list", file); !strings.Contains(out, "undo of entry 2  (taken back)") {
		t.Error(out)
	}
}

// The client was told a price for the table as it was: once the same value is another, it is asked for again.
func TestAYesHoldsOnlyForWhatWasAsked(t *testing.T) {
	file := aTable(t)
	says(t, exitDone, "add", file, "asked", "a deeper top", "sizes/depth=34 in")
	says(t, exitDone, "add", file, "edit", "sizes/depth", "32 in")
	if _, errs := says(t, exitInput, "add", file, "yes", "1"); !strings.Contains(errs, "ask again") {
		t.Error(errs)
	}
	says(t, exitDone, "undo", file)
	if _, errs := says(t, exitInput, "add", file, "yes", "1"); !strings.Contains(errs, "ask again") {
		t.Error(errs)
	}
	says(t, exitDone, "add", file, "no", "1")
	says(t, exitDone, "add", file, "asked", "a deeper top", "sizes/depth=34 in")
	says(t, exitDone, "add", file, "yes", "2")
	says(t, exitDone, "add", file, "edit", "sizes/depth", "35 in")
	yes := 0
	es, err := beside.Load(beside.Name(file))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if e.Yes {
			yes = int(e.Number)
		}
	}
	if _, errs := says(t, exitInput, "undo", file, fmt.Sprint(yes)); !strings.Contains(errs, "take that back first") {
		t.Error(errs)
	}
}

// Two programs write facts into one journal at once, each five: all ten are there, numbered without a gap.
func TestTwoMakersWritingAtOnceLoseNothing(t *testing.T) {
	file := aTable(t)
	const each = 5
	var both sync.WaitGroup
	var failed sync.Map
	for _, actor := range []string{"maker", "helper"} {
		both.Go(func() {
			for i := range each {
				out, err := exec.Command("rodwright", "journal", "add", file, "--actor", actor, fmt.Sprintf("bought %d × tee 1", i+1)).CombinedOutput()
				if err != nil {
					failed.Store(actor, string(out))
				}
			}
		})
	}
	both.Wait()
	failed.Range(func(actor, out any) bool { t.Errorf("%s: %s", actor, out); return true })
	es, err := beside.Load(beside.Name(file))
	if err != nil || len(es) != 2*each {
		t.Fatalf("%v, %d entries", err, len(es))
	}
	count := map[string]float64{}
	for i, e := range es {
		count[e.Actor] += e.Fact.Goods.Count
		if e.Number != int64(i)+1 || e.Base != int64(i) {
			t.Errorf("entry %d has the number %d and the base %d", i+1, e.Number, e.Base)
		}
	}
	if count["maker"] != 15 || count["helper"] != 15 { // 1 + 2 + … + 5
		t.Errorf("%v", count)
	}
}

// The same verbs write to a piece of a shop.
func TestThePieceOfAShopHasItsJournalInTheDatabase(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "shop.db")
	p := begin(t, "serve", "--shop", file, "--port", "0", "../../examples/packing-table.piece.yaml", "../../examples/under-way/packing-table.piece.yaml")
	if got := p.pieces(t); len(got) != 1 {
		t.Errorf("%q", got)
	}
	says(t, exitDone, "list", "packing table", "--shop", file) // while it is served
	p.ends(t, os.Interrupt)
	first, _ := says(t, exitDone, "list", "packing table", "--shop", file)
	beside, _ := says(t, exitDone, "list", "../../examples/under-way/packing-table.piece.yaml")
	if _, a, _ := strings.Cut(first, "\n"); !strings.HasSuffix(beside, a) || !strings.Contains(a, "plug its 3/4 in hole") {
		t.Error("the journal beside the file is not in the shop")
	}
	at := []string{"packing table", "--shop", file, "--actor", "maker"}
	out, _ := says(t, exitDone, append([]string{"add"}, append(at, "yes", "2")...)...)
	if !strings.Contains(out, "yes to change 2") {
		t.Error(out)
	}
	says(t, exitFails, append([]string{"weigh"}, append(at, "sizes/low level=3 in")...)...)
	says(t, exitDone, append([]string{"add"}, append(at, "edit", "holds/parcels/weight", "30 lb")...)...)
	says(t, exitDone, append([]string{"undo"}, at...)...)
	out, _ = says(t, exitDone, append([]string{"compare"}, append(at, "0", "--json")...)...)
	var c comparison
	if err := json.Unmarshal([]byte(out), &c); err != nil || c.From != 0 || len(c.Words) == 0 {
		t.Errorf("%v, %+v", err, c)
	}
	if _, errs := says(t, exitInput, "list", "kitchen table", "--shop", file); !strings.Contains(errs, "there are packing table") {
		t.Error(errs)
	}
}

// The demonstration shows the table under way beside the one on paper, once however often it is begun.
func TestTheDemonstrationShowsATableUnderWay(t *testing.T) {
	dir := t.TempDir()
	var lists []string
	for range 2 {
		begin(t, "demo", "--port", "0", "--dir", dir, "--no-open").ends(t, os.Interrupt)
		out, _ := says(t, exitDone, "list", "packing table under way", "--shop", filepath.Join(dir, "demo.db"), "--json")
		lists = append(lists, out)
	}
	var list listJSON
	if err := json.Unmarshal([]byte(lists[1]), &list); err != nil || lists[0] != lists[1] {
		t.Fatalf("%v; the second is another", err)
	}
	if len(list.Entries) < 50 || list.Entries[0].What != journal.Bought || len(list.Orders) != 2 || len(list.Things) < 15 {
		t.Errorf("%d entries, %d orders, %d things", len(list.Entries), len(list.Orders), len(list.Things))
	}
	if out, _ := says(t, exitDone, "list", "packing table", "--shop", filepath.Join(dir, "demo.db")); !strings.Contains(out, "0 entries") {
		t.Error(out)
	}
}
