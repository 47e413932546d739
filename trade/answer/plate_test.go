package answer

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A panel of red oak (E 12 548 MPa along the grain, by the handbook 1.82e6 psi; across 0.082 of it, ν 0.5 or nearly, which
// makes a plate stiffer by 2 %) that rests on its edges and is six or ten times as long the other way bends like a strip:
// 5qL⁴/384D. q = 0.001 MPa, t = 20 mm. Along the grain L = 500: D = 12548·8000/12/0.98 = 8.536e6 N·mm, 0.0953 mm. Across
// it L = 300: D = 0.082 · 8.536e6 = 7.0e5 N·mm, 0.1507 mm.
func TestAPanelIsStiffAlongItsGrain(t *testing.T) {
	along := asked(t, "plate", "wood=red-oak|length=500 mm|width=3 m|thickness=20 mm|pressure=0.001 MPa")
	near(t, "sag along the grain", result(t, along, "sag").Value.Number, 0.0953, 0.002)
	across := asked(t, "plate", "wood=red-oak|length=3 m|width=300 mm|thickness=20 mm|pressure=0.001 MPa")
	near(t, "sag across the grain", result(t, across, "sag").Value.Number, 0.1507, 0.0045)
}

func TestAPanelSaysHowItsEdgesAreHeld(t *testing.T) {
	for edges, part := range map[string]string{"resting": "free to turn", "held": "can't turn", "corners": "four corners alone"} {
		a := asked(t, "plate", "wood=red-oak|length=48 in|width=20 in|thickness=3/4 in|load=20 lb|edges="+edges)
		if !says(a.Assumed, part) || !says(a.Assumed, "own weight") {
			t.Errorf("%s: assumed %q", edges, a.Assumed)
		}
	}
	if a := asked(t, "plate", "wood=red-oak|length=48 in|width=20 in|thickness=3/4 in|load=20 lb|edges=held"); len(a.Cautions) > 0 {
		t.Errorf("a panel that hardly sags is warned of: %q", a.Cautions)
	}
}

// 48 by 20 in on its corners sags 3.2 mm under 80 lb, and in proportion: 1.3 mm under 32. The eye takes that over the 48 in,
// span ÷ 600 = 2.03 mm, not over the 20 in, 0.85 mm. Borne along its edges it spans the 20 in.
func TestAPanelOnItsCornersIsLookedAtAlongItsLength(t *testing.T) {
	const oak = "wood=red-oak|length=48 in|width=20 in|thickness=3/4 in|"
	a, b := asked(t, "plate", oak+"edges=corners|load=32 lb"), asked(t, "plate", oak+"edges=corners|load=55 lb")
	if says(a.Cautions, "will show") || !says(b.Cautions, "will show") {
		t.Errorf("32 lb: %q, 55 lb: %q", a.Cautions, b.Cautions)
	}
	const soft = "modulus=1 GPa|length=1 m|width=300 mm|thickness=10 mm|edges=resting|pressure="
	// 0.013 q a⁴/D, D = 10⁹/10.92: 0.58 mm by 0.0005 MPa, over 300 ÷ 600.
	if d := asked(t, "plate", soft+"0.0005 MPa"); !says(d.Cautions, "will show") {
		t.Errorf("cautions %q", d.Cautions)
	}
}

func TestAPanelPastTheTheorySaysSo(t *testing.T) {
	// A strip narrows below and widens above where it sags, so that its edges hang lower: by ν·κ·b²/8 of 5κL²/48, which is
	// 0.6·(b/L)² with ν = 0.5, less what it bends across.
	if a := asked(t, "plate", "modulus=1 GPa|poisson=0.5|length=1 m|width=300 mm|thickness=20 mm|load=10 N|edges=corners"); !says(a.Assumed, "an edge sags more") {
		t.Errorf("assumed %q", a.Assumed)
	}
	if a := asked(t, "plate", "wood=red-oak|length=300 mm|width=300 mm|thickness=40 mm|load=10 N"); !says(a.Assumed, "so thick") {
		t.Errorf("assumed %q", a.Assumed)
	}
	if a := asked(t, "plate", "wood=red-oak|length=1 m|width=1 m|thickness=3 mm|load=500 N"); !says(a.Cautions, "half its thickness") || !says(a.Cautions, "will show") {
		t.Errorf("cautions %q", a.Cautions)
	}
}

func TestAPortalSaysWhatMakesItSwayMore(t *testing.T) {
	a := asked(t, "portal", "pipe=3/4|height=30 in|width=20 in|push=20 lbf")
	if !says(a.Assumed, "taken as rigid", "sways more") || !says(a.Assumed, "turn freely") || len(a.Cautions) != 1 {
		t.Errorf("assumed %q, cautions %q", a.Assumed, a.Cautions)
	}
	// 3/4 in pipe has 0.0705 in³, half of it at the thread: at 30 000 psi it takes 1060 lbf·in, the corner of hinged feet
	// P·30/2: from 71 lbf on. 80 bends it; it sways by 4 · 0.1126 in.
	bent := asked(t, "portal", "pipe=3/4|height=30 in|width=20 in|push=80 lbf")
	if !says(bent.Cautions, "at its threads") || says(bent.Cautions, "won't stand") || says(asked(t, "portal", "pipe=3/4|height=30 in|width=20 in|push=65 lbf").Cautions, "threads") {
		t.Errorf("cautions %q", bent.Cautions)
	}
	near(t, "sway of a pipe in inches", in(result(t, bent, "sway").Value.Number, "in"), 0.4504, 0.0005)
	// 0.1117 in at 20 lbf: 3 in, a tenth of the height, from 537 lbf on.
	far := "modulus=29e6 psi|inertia=0.03704 in4|height=30 in|width=20 in|push="
	if !says(asked(t, "portal", far+"550 lbf").Cautions, "won't stand") || says(asked(t, "portal", far+"520 lbf").Cautions, "won't stand") {
		t.Error("a sway of more than a tenth of the height is not told of, or a lesser one is")
	}
}

func TestAPanelSagsMostOnItsCornersAndLeastHeld(t *testing.T) {
	woods := []string{"wood=red-oak", "wood=balsa", "wood=teak", "wood=white-pine", "modulus=1 MPa", "modulus=1000 GPa|poisson=0.5", "modulus=10 GPa|poisson=0"}
	rapid.Check(t, func(r *rapid.T) {
		long := rapid.Float64Range(1, 50_000).Draw(r, "length")
		wide := long * rapid.Float64Range(0.05, 20).Draw(r, "wide")
		call := fmt.Sprintf("length=%.4f mm|width=%.4f mm|thickness=%.4f mm|load=%.4f N", long, wide,
			min(long, wide)*rapid.Float64Range(0.001, 0.25).Draw(r, "thick"), rapid.Float64Range(0.001, 1000).Draw(r, "load"))
		call += "|" + rapid.SampledFrom(woods).Draw(r, "of")
		last := 0.0
		for _, edges := range []string{"held", "resting", "corners"} {
			words, err := Pairs(append(strings.Split(call, "|"), "edges="+edges))
			if err != nil {
				r.Fatal(err)
			}
			a, err := Ask("plate", words)
			var e *Error
			if errors.As(err, &e) && e.Key != "" {
				return
			}
			if err != nil {
				r.Fatalf("%s: the error names no key: %v", call, err)
			}
			if got := a.Answers[0].Value.Number; !(got > last) {
				r.Fatalf("%s: %v mm %s, the one before %v", call, got, edges, last)
			} else {
				last = got
			}
		}
	})
}
