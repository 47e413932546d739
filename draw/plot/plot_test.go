package plot_test

import (
	"bytes"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/draw/plot"
	"rodwright/draw/svg"
	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
)

var update = flag.Bool("update", false, "write the golden files anew")

var narrow = draw.Style{Fineness: length.Sixteenth, Width: 80}
var sheetWide = draw.Style{Fineness: length.WholeMM, Width: 174, Height: 227}

// pictures are all that were made up, by name.
func pictures() map[string]finding.Finding {
	return map[string]finding.Finding{"tilt": tilts(), "year": gaps(), "seasons": seasons(), "bent": sags(), "sway": sways()}
}

func TestAPictureIsDrawnAsItWasLookedAt(t *testing.T) {
	for name, f := range pictures() {
		for width, st := range map[string]draw.Style{"narrow": narrow, "sheet": sheetWide} {
			golden := filepath.Join("testdata", name+"-"+width+".svg")
			got := svg.File(plot.Of(f, name, st))
			if *update {
				if err := os.WriteFile(golden, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("%s differs; look at what is drawn now, then run with -update", golden)
			}
		}
	}
}

// sound fails where a drawing breaks a promise: words on words, words past the width, or nothing said.
func sound(t interface{ Fatalf(string, ...any) }, d *draw.Drawing, width float64) {
	w, h := d.Size()
	if w > width+0.01 || h > 260 {
		t.Fatalf("%s takes %.1f × %.1f mm", d.ID, w, h)
	}
	boxes := draw.Boxes(d)
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
				t.Fatalf("%s: words stand on words at %v and %v", d.ID, a, b)
			}
		}
	}
	text := string(svg.Render(d))
	for _, bad := range []string{"NaN", "Inf"} {
		if strings.Contains(text, bad) {
			t.Fatalf("%s: %s is drawn: %s", d.ID, bad, text)
		}
	}
	if d.Title == "" || d.Alt == "" || d.Per != 1 {
		t.Fatalf("%s: %q, %q, 1 : %d", d.ID, d.Title, d.Alt, d.Per)
	}
}

func TestNoWordsStandOnWordsOrPastTheWidth(t *testing.T) {
	for name, f := range pictures() {
		for _, w := range []float64{70, 80, 100, 120, 130, 174} {
			for _, to := range length.Finenesses() {
				sound(t, plot.Of(f, name, draw.Style{Fineness: to, Width: w}), min(w, 130))
			}
		}
	}
}

// number is any number, and now and then one that is none.
func number(lo, hi float64) *rapid.Generator[float64] {
	return rapid.OneOf(rapid.Float64Range(lo, hi), rapid.Float64Range(lo, hi), rapid.SampledFrom([]float64{0, lo, hi, math.NaN(), math.Inf(1), -1e300}))
}

func anyFinding(t *rapid.T) finding.Finding {
	f := finding.Finding{Figure: figure.Of("gap", number(-5, 5).Draw(t, "figure"), figure.MM, nil), Limit: figure.Of("limit", number(0, 5).Draw(t, "limit"), figure.MM, nil)}
	pair := rapid.Custom(func(t *rapid.T) [2]float64 {
		return [2]float64{number(-900, 900).Draw(t, "x"), number(-900, 900).Draw(t, "y")}
	})
	place := rapid.Custom(func(t *rapid.T) [3]float64 {
		return [3]float64{number(-900, 900).Draw(t, "x"), number(-900, 900).Draw(t, "y"), number(0, 2000).Draw(t, "z")}
	})
	values := func(most int) []float64 { return rapid.SliceOfN(number(-8, 30), 0, most).Draw(t, "values") }
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		v := finding.Tilt{Limit: number(0, 40).Draw(t, "least"), Base: rapid.SliceOfN(pair, 0, 8).Draw(t, "base"), Centre: pair.Draw(t, "centre")}
		for range rapid.IntRange(0, 40).Draw(t, "rays") {
			v.Rays = append(v.Rays, finding.Ray{Towards: number(-400, 400).Draw(t, "towards"), Tilt: number(-5, 95).Draw(t, "tilt")})
		}
		f.Picture.Tilt = &v
	case 1:
		v := finding.Year{Times: rapid.SliceOfN(rapid.SampledFrom([]string{"January", "driest", "as built", "September", "x", ""}), 0, 14).Draw(t, "times"), Limit: number(-2, 9).Draw(t, "least")}
		for range rapid.IntRange(0, 9).Draw(t, "lines") {
			v.Lines = append(v.Lines, finding.Line{Name: rapid.StringMatching(`[a-h]{1,60}( [a-h]{1,20}){0,5}`).Draw(t, "name"), Values: values(14)})
		}
		f.Picture.Year = &v
	case 2:
		f.Picture.Bent = &finding.Bent{
			Width: number(-1, 3000).Draw(t, "width"), Depth: number(-1, 3000).Draw(t, "depth"), Columns: rapid.IntRange(-1, 9).Draw(t, "columns"),
			Down: values(80), Supports: rapid.SliceOfN(pair, 0, 5).Draw(t, "supports"),
		}
	default:
		v := finding.Sway{Grown: number(-1, 200).Draw(t, "grown")}
		for range rapid.IntRange(0, 8).Draw(t, "sticks") {
			v.Sticks = append(v.Sticks, finding.Moved{
				Tag: "C1.1", At: rapid.SliceOfN(place, 0, 5).Draw(t, "at"), Move: rapid.SliceOfN(place, 0, 5).Draw(t, "move"),
			})
		}
		f.Picture.Sway = &v
	}
	return f
}

func TestAnyPictureKeepsThePromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		st := draw.Style{Fineness: rapid.SampledFrom(length.Finenesses()).Draw(t, "fineness"), Width: rapid.Float64Range(70, 200).Draw(t, "width")}
		sound(t, plot.Of(anyFinding(t), "any", st), min(st.Width, 130))
	})
}
