package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/shop"
)

// stool is a small document of a panel on posts, a rail under another, of any sizes.
const stool = `
rodwright: 1
piece: stool
unit: mm
fineness: 1 mm
place: {room: studio}
wood: {species: white-oak, cut: flat}
pipe: {standard: npt, size: 3/4}
posts:
  legs: {at: [%s], from: feet, to: top}
panels:
  top: {length: %d, width: %d, thickness: %d, grain: along %s, level: 500, at: [0, 0], sits: on legs posts}
feet: caps
holds:
  - {name: load, on: top, size: %d × %d × 100 mm, weight: %d kg}
`

// judgedAtTheEdge judges a document if it is one, and says whether it was.
func judgedAtTheEdge(t *testing.T, text string) ([]finding.Finding, bool) {
	t.Helper()
	p, err := tryDerive(shop.Sample(), []byte(text))
	if err != nil {
		return nil, false
	}
	fs := Sag(p)
	for _, f := range fs {
		wholesome(t, text, f)
	}
	if len(fs) == 0 {
		t.Errorf("a panel of which nothing is said:\n%s", text)
	}
	return fs, true
}

func TestAPanelOnOneOrNoSupportIsAFinding(t *testing.T) {
	for name, c := range map[string]struct{ posts, says string }{
		"one post in the middle":  {"[400, 150]", ""},
		"one post under a corner": {"[30, 30]", ""},
		"two posts on one line":   {"[60, 150], [740, 150]", "in one line"},
		"two posts at one end":    {"[60, 60], [60, 240]", "in one line"},
		"three posts":             {"[60, 60], [60, 240], [740, 150]", "3 flanges"},
	} {
		fs, ok := judgedAtTheEdge(t, fmt.Sprintf(stool, c.posts, 800, 300, 20, "length", 100, 100, 3))
		if !ok {
			t.Fatalf("%s: no document", name)
		}
		if f := fs[0]; f.Verdict == finding.Unknown && f.Missing == "" || !strings.Contains(assumedOf(f), c.says) {
			t.Errorf("%s: %v, %q\n%s", name, f.Verdict, f.Missing, assumedOf(f))
		}
	}
}

// A longer panel on posts in its corners sags more, on any small document.
func TestALongerPanelSagsMore(t *testing.T) {
	last := 0.0
	for long := 300; long <= 1500; long += 300 {
		text := fmt.Sprintf(stool, fmt.Sprintf("[40, 40], [%d, 40], [40, 260], [%d, 260]", long-40, long-40), long, 300, 20, "length", long, 300, long/20)
		fs, ok := judgedAtTheEdge(t, text)
		if !ok || len(fs) != 3 || fs[0].Figure.Value <= last {
			t.Fatalf("%d mm: %v mm, one shorter %v", long, fs[0].Figure.Value, last)
		}
		last = fs[0].Figure.Value
	}
}

// FuzzSag judges panels of any size on one to four posts anywhere: a finding or no document, never no number.
func FuzzSag(f *testing.F) {
	f.Add(800, 300, 20, 40, 40, 5, byte(4), false)
	f.Add(10, 3000, 1, 5, 2900, 1, byte(1), true)
	f.Add(2400, 25, 300, 12, 12, 500, byte(2), false)
	f.Fuzz(func(t *testing.T, long, wide, thick, x, y, kg int, posts byte, turned bool) {
		at := []string{fmt.Sprintf("[%d, %d]", x, y), fmt.Sprintf("[%d, %d]", long-x, y), fmt.Sprintf("[%d, %d]", x, wide-y), fmt.Sprintf("[%d, %d]", long-x, wide-y)}
		grain := "length"
		if turned {
			grain = "width"
		}
		text := fmt.Sprintf(stool, strings.Join(at[:1+int(posts)%4], ", "), long, wide, thick, grain, max(1, long/3), max(1, wide/3), kg)
		fs, _ := judgedAtTheEdge(t, text)
		for _, f := range fs {
			if f.Picture.Bent != nil && len(f.Picture.Bent.Supports) == 0 || math.IsNaN(f.Figure.Value) && f.Verdict != finding.Unknown {
				t.Errorf("%+v", f)
			}
		}
	})
}
