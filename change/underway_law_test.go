package change_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rodwright/build"
	"rodwright/change"
	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// randomStory is a random piece some of whose parts are made, some to another size than drawn.
func randomStory(t *rapid.T) (change.Log, *change.Truth) {
	l := change.Log{Name: "piece", Start: random.Document(rapid.Uint64Range(0, 1<<20).Draw(t, "piece")), Shop: shop.Sample(), Memo: memo}
	l = told(t, l, truth(t, l))
	now := truth(t, l)
	needs := fate.Needs(now.Build.Resolved, now.Build.Parts)
	for i, n := range needs {
		works := map[part.Kind][]string{
			part.Panel: {"glue", "size", "notch", "shaped", "sand", "coat", "lay"}, part.Pipe: {"cut-pipe", "thread", "coat-pipe", "frame"},
		}[n.Part.Kind]
		upto := rapid.IntRange(0, len(works)).Draw(t, "done to "+n.Tag)
		if upto > 0 {
			work := works[upto-1]
			h := journal.Happened{What: journal.Made, Part: n.Tag, Work: work}
			if rapid.IntRange(0, 4).Draw(t, "measured") == 0 {
				off := length.Length(rapid.IntRange(-4, 4).Draw(t, "off")) * length.Inch / 64
				h.Shape = &journal.Shape{Size: [3]journal.MM{journal.MM(size(n.Part) + off)}}
			}
			h, err := now.Complete(h)
			if err != nil {
				t.Fatal(err)
			}
			l = write(l, journal.Entry{Kind: journal.Fact, Fact: &h})
		}
		if i == len(needs)/2 {
			now = truth(t, l) // the others are told by how it stands then
		}
	}
	return l, truth(t, l)
}

// told adds to the log that a stick was bought and that two posts were measured, up to 1/4 in off what is drawn.
func told(t *rapid.T, l change.Log, now *change.Truth) change.Log {
	r := now.Build.Resolved
	if rapid.Bool().Draw(t, "bought") && len(r.Sticks) > 0 {
		h := journal.Happened{What: journal.Bought, Goods: &journal.Goods{
			Kind: journal.StickGoods, Tag: "S1", Material: r.Nodes[r.Sticks[0].A].Size.ID, Size: [3]journal.MM{journal.MM(6 * length.Metre)},
		}}
		l = write(l, journal.Entry{Kind: journal.Fact, Fact: &h})
	}
	var posts []piece.Stick
	for _, s := range r.Sticks {
		if s.Role == piece.PostRole {
			posts = append(posts, s)
		}
	}
	if !rapid.Bool().Draw(t, "measured posts") || len(posts) < 2 {
		return l
	}
	a, b := posts[0], rapid.SampledFrom(posts[1:]).Draw(t, "other post")
	dx, dy := (r.Nodes[a.A].At.X - r.Nodes[b.A].At.X).Abs(), (r.Nodes[a.A].At.Y - r.Nodes[b.A].At.Y).Abs()
	h := journal.Happened{What: journal.Measured, Distance: &journal.Distance{
		From: runOf(a.Name), To: runOf(b.Name), Value: journal.MM(max(dx, dy) + length.Length(rapid.IntRange(-16, 16).Draw(t, "off"))*length.Inch/64),
	}}
	if h, err := now.Complete(h); err == nil && h.Check() == nil {
		l = write(l, journal.Entry{Kind: journal.Fact, Fact: &h})
	}
	return l
}

// runOf is the name of the whole post that a stick of it is numbered in.
func runOf(name string) string { return strings.TrimRight(strings.TrimRight(name, "0123456789"), " ") }

// memo is shared by all tries, as a shop's is by all its pieces.
var memo = build.NewMemo(256)

func size(p *part.Part) length.Length {
	if p.Kind == part.Pipe {
		return p.Cut
	}
	return p.Finished[0]
}

func truth(t *rapid.T, l change.Log) *change.Truth {
	now, err := l.Now()
	if err != nil {
		t.Fatal(err)
	}
	return now
}

func write(l change.Log, es ...journal.Entry) change.Log {
	l.Entries = l.Entries[:len(l.Entries):len(l.Entries)]
	for _, e := range es {
		n := len(l.Entries) + 1
		e.Number, e.Base, e.Actor, e.At = int64(n), int64(n-1), "maker", time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC)
		if e.ID == "" {
			e.ID = fmt.Sprintf("01890000-0000-7000-8000-%012x", n)
		}
		l.Entries = append(l.Entries, e)
	}
	return l
}

// randomEdit changes a size of the document that is written as a length, by up to 4 in.
func randomEdit(t *rapid.T, now *change.Truth) (out []journal.Put) {
	for _, s := range now.Build.Doc.Sizes {
		if len(s.Uses) > 0 || s.OnSite != nil || rapid.IntRange(0, 2).Draw(t, "edit "+s.Name) > 0 {
			continue
		}
		by := length.Length(rapid.IntRange(-16, 16).Draw(t, "by")) * length.Inch / 4
		out = append(out, journal.Put{Path: "sizes/" + s.Name, New: length.SixtyFourth.Text(max(s.Formed+by, length.Inch))})
	}
	return out
}

func jsonOf(t *rapid.T, b *build.Build) []byte {
	text, err := b.JSON()
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// hashLine is the hash of the input, which tells two logs apart that say the same.
var hashLine = regexp.MustCompile(`"input_hash": "[^"]*"`)

func TestWhatIsWeighedIsWhatIsTakenAndUndoneAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, now := randomStory(t)
		if !bytes.Equal(jsonOf(t, now.Build), jsonOf(t, truth(t, l).Build)) {
			t.Fatal("a replay gives other bytes")
		}
		w, err := change.Weigh(now, randomEdit(t, now)...)
		if err != nil {
			return // the piece does not go that way
		}
		taken := l
		for _, e := range w.Edits {
			taken = write(taken, journal.Entry{Kind: journal.Edit, Path: e.Path, New: e.New})
		}
		for i := range w.Meant {
			taken = write(taken, journal.Entry{Kind: journal.Fact, Fact: &w.Meant[i]})
		}
		after := truth(t, taken)
		if a, b := jsonOf(t, after.Build), jsonOf(t, w.After.Build); !bytes.Equal(a, b) {
			t.Fatalf("taken:\n%s\nweighed:\n%s", a, b)
		}
		holds(t, now, w)
		undone := taken
		for i := len(taken.Entries) - 1; i >= len(l.Entries); i-- {
			kind := journal.Undo
			if taken.Entries[i].Kind == journal.Fact {
				kind = journal.Withdrawn
			}
			undone = write(undone, journal.Entry{Kind: kind, Names: taken.Entries[i].ID})
		}
		back := hashLine.ReplaceAll(jsonOf(t, truth(t, undone).Build), nil)
		if before := hashLine.ReplaceAll(jsonOf(t, now.Build), nil); !bytes.Equal(before, back) {
			t.Fatalf("before:\n%s\nundone:\n%s", before, back)
		}
	})
}

// holds are the laws of one weighed change: no part serves twice, and nothing grows but by a way that adds to it.
func holds(t *rapid.T, now *change.Truth, w *change.Weighed) {
	used := map[string]string{}
	for _, f := range w.Fates {
		if other, twice := used[f.To]; twice && f.To != "" {
			t.Fatalf("%s is made of %s and of %s", f.To, other, f.Label)
		}
		used[f.To] = f.Label
	}
	if len(w.Fates) != len(now.Record.Things) {
		t.Fatalf("%d things, of %d is told", len(now.Record.Things), len(w.Fates))
	}
	if w.After.Build.Under == nil {
		return
	}
	for _, s := range w.After.Build.Under.Settled {
		if s.Need == nil || s.Way.Kind == fate.AddTo || s.Thing.State < journal.Sized {
			continue
		}
		sizes := s.Need.Part.Finished
		if s.Need.Part.Kind == part.Pipe {
			sizes = [3]length.Length{s.Need.Part.Cut}
		}
		for k, want := range sizes {
			has := length.Length(s.Thing.Shape.Size[k])
			if want > has+takes(s) && length.Length(s.Thing.Shape.Drawn[k]) != want {
				t.Fatalf("%s is %d and becomes %d: %s", s.Thing.Label, has, want, s.Way.Words)
			}
		}
	}
}

// takes is by how much a thing may be less than it should be and is used as it is: what a stock nipple may miss, and of a
// pipe that is fitted a pitch of its thread, which its joints take.
func takes(s fate.Settled) length.Length {
	if size, err := pipe.Lookup(s.Thing.Shape.Material); err == nil && s.Thing.State >= journal.Fitted {
		return max(size.Pitch, part.NippleReach)
	}
	return part.NippleReach
}

// The same edit weighed when it is already taken changes nothing.
func TestAWeighedChangeThatIsTakenChangesNothingMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, now := randomStory(t)
		w, err := change.Weigh(now, randomEdit(t, now)...)
		if err != nil {
			return
		}
		for _, e := range w.Edits {
			l = write(l, journal.Entry{Kind: journal.Edit, Path: e.Path, New: e.New})
		}
		for i := range w.Meant {
			l = write(l, journal.Entry{Kind: journal.Fact, Fact: &w.Meant[i]})
		}
		again, err := change.Weigh(truth(t, l))
		if err != nil {
			t.Fatal(err)
		}
		if !again.Nothing {
			t.Fatalf("%v\n%+v", again.Words, again.Meant)
		}
	})
}
