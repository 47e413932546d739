package cutting

import (
	"context"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

var sheets = []draw.Style{
	{Fineness: length.Sixteenth, Width: 180, Height: 230},
	{Fineness: length.WholeMM, Width: 160, Height: 150},
}

// laid lays out a random piece with little searching.
func laid(t testing.TB, seed uint64, s *shop.Shop) (*part.List, *layout.Result) {
	t.Helper()
	doc, err := piece.Read(fmt.Sprintf("random %d", seed), random.Document(seed))
	if err != nil {
		t.Fatal(err)
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		t.Fatal(err)
	}
	list, err := part.TakeOff(r, s)
	if err != nil {
		t.Fatal(err)
	}
	lay, err := layout.Lay(context.Background(), r, list, s, cut.Limits{Nodes: 2000})
	if err != nil {
		t.Fatal(err)
	}
	return list, lay
}

// Each law is a statement about all drawings of one layout; the error says what breaks it.
var laws = []struct {
	says  string
	holds func(layout.Layout, []*draw.Drawing, draw.Style) error
}{
	{"no words stand on other words", wordsKeepApart},
	{"drawings keep within the room of the sheet", keepsWithin},
	{"every part is drawn once", partsOnce},
	{"parts, what is kept and waste come to the stock", areasAddUp},
	{"ids are each their own", idsDiffer},
}

func TestTheLawsOfCuttingHoldOnRandomPieces(t *testing.T) {
	s := shop.Sample()
	kinds := map[layout.Kind]int{}
	for seed := range uint64(60) {
		list, lay := laid(t, seed, s)
		for _, l := range lay.All() {
			kinds[l.Kind]++
			for _, st := range sheets {
				ds := Of(l, st)
				for _, law := range laws {
					if err := law.holds(l, ds, st); err != nil {
						t.Errorf("random %d %s to %s: %s: %v", seed, l.Material, st.Fineness, law.says, err)
					}
				}
				if went := Went(l, st); went != nil {
					for _, holds := range []func(layout.Layout, []*draw.Drawing, draw.Style) error{wordsKeepApart, keepsWithin, idsDiffer, barAddsUp} {
						if err := holds(l, []*draw.Drawing{went}, st); err != nil {
							t.Errorf("random %d %s to %s, where it went: %v", seed, l.Material, st.Fineness, err)
						}
					}
				}
				glue := GlueUp(l, list, st)
				for _, holds := range []func(layout.Layout, []*draw.Drawing, draw.Style) error{wordsKeepApart, keepsWithin, idsDiffer, gluedOnce} {
					if err := holds(l, glue, st); err != nil {
						t.Errorf("random %d %s to %s, glued: %v", seed, l.Material, st.Fineness, err)
					}
				}
			}
		}
	}
	for _, k := range []layout.Kind{layout.OfSticks, layout.OfBoards, layout.OfSheets} {
		if kinds[k] < 3 {
			t.Errorf("%d layouts of kind %s, too few to say much", kinds[k], k)
		}
	}
}

func wordsKeepApart(_ layout.Layout, ds []*draw.Drawing, _ draw.Style) error {
	for _, d := range ds {
		boxes := draw.Boxes(d)
		for i, a := range boxes {
			for _, b := range boxes[:i] {
				if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
					return fmt.Errorf("%s: boxes %v and %v; words %q", d.ID, a, b, wordsOf(d))
				}
			}
		}
	}
	return nil
}

func keepsWithin(_ layout.Layout, ds []*draw.Drawing, st draw.Style) error {
	for _, d := range ds {
		b := d.Bounds()
		w, h := (b.Max.X-b.Min.X).MM()/float64(d.Per), (b.Max.Y-b.Min.Y).MM()/float64(d.Per)
		if w > st.Width+1e-6 || h > st.Height+1e-6 {
			return fmt.Errorf("%s: %.1f × %.1f mm on paper", d.ID, w, h)
		}
	}
	return nil
}

func idsDiffer(_ layout.Layout, ds []*draw.Drawing, _ draw.Style) error {
	seen := map[string]bool{}
	for _, d := range ds {
		if seen[d.ID] || !regexp.MustCompile(`^(cut|glue)-[a-z0-9]+(-[a-z0-9]+)*$`).MatchString(d.ID) {
			return fmt.Errorf("id %q", d.ID)
		}
		seen[d.ID] = true
	}
	return nil
}

func wordsOf(d *draw.Drawing) (out []string) {
	for _, m := range d.Marks {
		if t, ok := m.(draw.Text); ok {
			out = append(out, t.Words)
		}
	}
	return out
}

// partsOnce reads the captions: a kind's count, each times the pieces of stock cut alike, is what the answer
// places.
func partsOnce(l layout.Layout, ds []*draw.Drawing, st draw.Style) error {
	want, got := map[string]int{}, map[string]int{}
	for _, u := range l.Answer.Used {
		for _, p := range u.Parts {
			want[kindOf(p.Tag)]++
		}
	}
	for _, d := range ds {
		times := 1
		for _, w := range wordsOf(d) {
			if m := regexp.MustCompile(`^(?:Sticks) .*, (\d+) alike`).FindStringSubmatch(w); m != nil {
				fmt.Sscan(m[1], &times)
			}
		}
		if m := regexp.MustCompile(`, (\d+) alike`).FindStringSubmatch(d.Title); m != nil {
			fmt.Sscan(m[1], &times)
		}
		if l.Kind == layout.OfSticks { // several in one drawing: the heading of each stands after its captions
			countSticks(d, got)
			continue
		}
		for _, w := range wordsOf(d) {
			for _, m := range regexp.MustCompile(`^([ACFH]\d+)\b`).FindAllStringSubmatch(w, -1) {
				got[m[1]] += times
			}
		}
	}
	for k := range want {
		if want[k] != got[k] {
			return fmt.Errorf("%d of %s are placed, %d drawn: %v", want[k], k, got[k], ds)
		}
	}
	return nil
}

var (
	aTag  = regexp.MustCompile(`\b(C\d+)(?:\.(\d+))?\b`)
	aSpan = regexp.MustCompile(`\b(C\d+)\.(\d+) to C\d+\.(\d+)\b`)
	aRun  = regexp.MustCompile(`\b(\d+) × (C\d+)\b`)
)

func countSticks(d *draw.Drawing, got map[string]int) {
	here := map[string]int{}
	for _, w := range wordsOf(d) {
		if strings.HasPrefix(w, "Stick") {
			times := 1
			if m := regexp.MustCompile(`, (\d+) alike`).FindStringSubmatch(w); m != nil {
				fmt.Sscan(m[1], &times)
			}
			for k, n := range here {
				got[k] += n * times
			}
			here = map[string]int{}
			continue
		}
		for _, m := range aSpan.FindAllStringSubmatch(w, -1) {
			var from, to int
			fmt.Sscan(m[2], &from)
			fmt.Sscan(m[3], &to)
			here[m[1]] += to - from + 1
		}
		w = aSpan.ReplaceAllString(w, "")
		for _, m := range aRun.FindAllStringSubmatch(w, -1) {
			n := 0
			fmt.Sscan(m[1], &n)
			here[m[2]] += n
		}
		for _, m := range aTag.FindAllStringSubmatch(aRun.ReplaceAllString(w, ""), -1) {
			here[m[1]]++
		}
	}
}

// areasAddUp measures what is white and what is hatched in each picture: the hatched stock less the white is
// what the answer calls waste that is not kept.
func areasAddUp(l layout.Layout, ds []*draw.Drawing, _ draw.Style) error {
	var stock, white float64
	times := pictures(l)
	i := 0
	for _, d := range ds {
		for _, m := range d.Marks {
			a, ok := m.(draw.Area)
			switch {
			case !ok || a.Pen != draw.Outline:
			case a.Fill == draw.Waste:
				i++
				stock += times[i-1] * extentOf(l, d, a.Outer)
			case a.Fill == draw.Paper:
				white += times[i-1] * extentOf(l, d, a.Outer)
			}
		}
	}
	w := l.Answer.Waste
	if lost := w.Kerf + w.Trim + w.Defect + w.LeftoverLost; math.Abs(stock-white-lost) > 1e-6*stock {
		return fmt.Errorf("stock %.3f, white %.3f, lost by the answer %.3f", stock, white, lost)
	}
	return nil
}

// pictures is how many pieces of stock each picture stands for, in their order.
func pictures(l layout.Layout) (times []float64) {
	b := &bench{l: l}
	for _, s := range b.alike() {
		times = append(times, float64(len(s.of)))
	}
	return times
}

// extentOf is the length of a bar in mm, else the area of a rectangle in mm².
func extentOf(l layout.Layout, _ *draw.Drawing, p draw.Path) float64 {
	lo, hi := p[0].Point, p[0].Point
	for _, v := range p {
		lo.X, lo.Y, hi.X, hi.Y = min(lo.X, v.X), min(lo.Y, v.Y), max(hi.X, v.X), max(hi.Y, v.Y)
	}
	if l.Kind == layout.OfSticks {
		return (hi.X - lo.X).MM()
	}
	return (hi.X - lo.X).MM() * (hi.Y - lo.Y).MM()
}

// gluedOnce: one drawing a panel, a caption a strip.
func gluedOnce(l layout.Layout, ds []*draw.Drawing, _ draw.Style) error {
	if l.Kind != layout.OfBoards {
		if len(ds) > 0 {
			return fmt.Errorf("%d glued panels of a layout of %s", len(ds), l.Kind)
		}
		return nil
	}
	if len(ds) != len(l.Answer.Panels) {
		return fmt.Errorf("%d drawings of %d panels", len(ds), len(l.Answer.Panels))
	}
	for i, g := range l.Answer.Panels {
		for k := range g.Strips {
			n := 0
			for _, w := range wordsOf(ds[i]) {
				if strings.HasPrefix(w, fmt.Sprintf("strip %d,", k+1)) {
					n++
				}
			}
			if n != 1 {
				return fmt.Errorf("%s: strip %d is written %d times", ds[i].ID, k+1, n)
			}
		}
	}
	return nil
}

// barAddsUp: the parts of the bar stand side by side from end to end, as wide as their shares of what was opened.
func barAddsUp(l layout.Layout, ds []*draw.Drawing, st draw.Style) error {
	var x length.Length
	long := full(st.Width-40, 1)
	w := l.Answer.Waste
	lost := map[draw.Fill]float64{draw.Steel: w.Kerf, draw.LongWood: w.Trim, draw.EndWood: w.Defect, draw.Waste: w.LeftoverLost}
	opened := l.Problem().Opened(l.Answer)
	for _, m := range ds[0].Marks {
		a, ok := m.(draw.Area)
		if !ok {
			continue
		}
		from, to := a.Outer[0].X, a.Outer[2].X
		if from != x || to < from {
			return fmt.Errorf("a part from %v to %v, the one before ends at %v", from, to, x)
		}
		x = to
		if want, ok := lost[a.Fill]; ok && math.Abs((to-from).MM()/long.MM()-want/opened) > 1e-6 {
			return fmt.Errorf("fill %d takes %v of the bar, of what was opened %v", a.Fill, (to-from).MM()/long.MM(), want/opened)
		}
	}
	if math.Abs((long - x).MM()) > 1e-3 {
		return fmt.Errorf("the bar ends at %v, not %v", x, long)
	}
	return nil
}
