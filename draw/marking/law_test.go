package marking

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// sheets are the rooms that drawings are asked to keep within, in inches and in millimetres.
var sheets = []draw.Style{
	{Fineness: length.Sixteenth, Width: 180, Height: 230},
	{Fineness: length.WholeMM, Width: 160, Height: 160},
}

// Each law is a statement about the drawing of one panel; the error says what breaks it.
var laws = []struct {
	says  string
	holds func(*draw.Drawing, *piece.Resolved, part.Part, draw.Style) error
}{
	{"no words stand on other words", wordsKeepApart},
	{"the drawing keeps within the room of the sheet", keepsWithin},
	{"chains add up to the whole", chainsAddUp},
	{"every feature's place from the datum is written", placesAreWritten},
	{"every feature is named once", lettersOnce},
	{"every opening is in the outline", outlineIsDrawn},
}

func TestTheLawsOfMarkingHoldOnRandomPieces(t *testing.T) {
	s := shop.Sample()
	drawn := 0
	for seed := range uint64(80) {
		r, list := takenOff(t, seed, s)
		for _, p := range list.Parts {
			if !Needed(p) {
				continue
			}
			drawn++
			for _, st := range sheets {
				d := Of(r, p, st)
				for _, law := range laws {
					if err := law.holds(d, r, p, st); err != nil {
						t.Errorf("random %d %s to %s: %s: %v", seed, p.Tag, st.Fineness, law.says, err)
					}
				}
			}
		}
	}
	if drawn < 100 {
		t.Errorf("%d panels drawn, too few to say much", drawn)
	}
}

func wordsKeepApart(d *draw.Drawing, _ *piece.Resolved, _ part.Part, _ draw.Style) error {
	boxes := draw.Boxes(d)
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
				return fmt.Errorf("boxes %v and %v; words %q", a, b, wordsOf(d))
			}
		}
	}
	return nil
}

func keepsWithin(d *draw.Drawing, _ *piece.Resolved, _ part.Part, st draw.Style) error {
	b := d.Bounds()
	w, h := (b.Max.X-b.Min.X).MM()/float64(d.Per), (b.Max.Y-b.Min.Y).MM()/float64(d.Per)
	if w > st.Width+1e-6 || h > st.Height+1e-6 {
		return fmt.Errorf("%.1f × %.1f mm on paper", w, h)
	}
	return nil
}

func chainsAddUp(d *draw.Drawing, _ *piece.Resolved, p part.Part, st draw.Style) error {
	sums := map[int]length.Length{}
	for _, m := range d.Marks {
		if v, ok := m.(draw.Dimension); ok {
			sums[v.Chain] += v.Value
		}
	}
	for k, whole := range p.Finished[:2] {
		if want := st.Fineness.Round(whole); sums[k+1] != want {
			return fmt.Errorf("chain %d comes to %s, the panel is %s", k+1, st.Fineness.Text(sums[k+1]), st.Fineness.Text(want))
		}
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

func placesAreWritten(d *draw.Drawing, _ *piece.Resolved, p part.Part, st draw.Style) error {
	all := wordsOf(d)
	for i, f := range p.Features {
		places := [][2]length.Length{f.At, {f.At[0] + f.Size[0], f.At[1] + f.Size[1]}}
		if f.Round {
			places = [][2]length.Length{f.Centre()}
		} else if f.Kind == piece.SlotFeature {
			places = centres(f)
		}
		for _, at := range places {
			for k, v := range at {
				at := func(w string) bool {
					return strings.HasSuffix(w, ": "+st.Fineness.Number(v)) && slices.Contains(unranged(w), Letter(i))
				}
				if v > 0 && v < p.Finished[k] && !slices.ContainsFunc(all, at) {
					return fmt.Errorf("%s %s: no measure %s", Letter(i), f.Name, st.Fineness.Number(v))
				}
			}
		}
	}
	return nil
}

// unranged gives the letters before a measure: a, c–e: 7 is a, c, d, e.
func unranged(w string) (out []string) {
	letters, _, _ := strings.Cut(w, ": ")
	for _, l := range strings.Split(letters, ", ") {
		from, to, ok := strings.Cut(l, "–")
		if !ok {
			out = append(out, l)
			continue
		}
		for c := from[0]; c <= to[0]; c++ {
			out = append(out, string(rune(c)))
		}
	}
	return out
}

func lettersOnce(d *draw.Drawing, _ *piece.Resolved, p part.Part, _ draw.Style) error {
	all := wordsOf(d)
	for i := range p.Features {
		n := 0
		for _, w := range all {
			if w == Letter(i) || strings.HasPrefix(w, Letter(i)+" is the ") {
				n++
			}
		}
		if n != 1 {
			return fmt.Errorf("%s is written %d times", Letter(i), n)
		}
	}
	return nil
}

func outlineIsDrawn(d *draw.Drawing, r *piece.Resolved, p part.Part, _ draw.Style) error {
	var drawn outline
	for _, m := range d.Marks {
		if a, ok := m.(draw.Area); ok && a.Fill == draw.LongWood {
			drawn.areas = append(drawn.areas, area{a.Outer, a.Holes})
		}
	}
	if want := outlineOf(p, flatOf(r, p)); !want.whole || woodArea(drawn) != woodArea(want) {
		return fmt.Errorf("%.4f mm² of wood are drawn, %.4f are left", woodArea(drawn), woodArea(want))
	}
	return nil
}

var idForm = regexp.MustCompile(`^part-a[0-9]+$`)

func TestAPanelsDrawingBearsItsTag(t *testing.T) {
	r, list := takenOff(t, 3, shop.Sample())
	for _, p := range list.Parts {
		if Needed(p) && !idForm.MatchString(Of(r, p, sheets[0]).ID) {
			t.Errorf("%s is drawn as %q", p.Tag, Of(r, p, sheets[0]).ID)
		}
	}
}
