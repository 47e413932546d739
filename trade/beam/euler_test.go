package beam_test

import (
	"testing"

	"rodwright/trade/beam"
)

// Worked by hand from Euler's load, any mechanics text: a leg of 3/4 in pipe, 30 in, ends that turn, E 29e6 psi,
// I 0.03704 in⁴: π²·29e6·0.03704/900 = 11 778 lbf. At 35 000 psi its wall of 0.333 in² yields at 11 642: yield governs.
func TestAPipeLegBucklesAtEulersLoad(t *testing.T) {
	leg := beam.Beam{Span: 30 * in, Modulus: 29_000_000 * psi, Section: tube(t, 1.05, 0.113)}
	load := must(t)(beam.BucklingLoad(leg, 1)).Value
	near(t, "Euler's load", load/lbf, 11_778, 20)
	near(t, "yield", leg.Section.Area*35_000*psi/lbf, 11_642, 20)
	near(t, "held at one end alone", must(t)(beam.BucklingLoad(leg, 2)).Value, load/4, 1e-9*load)
	near(t, "ends that can't turn", must(t)(beam.BucklingLoad(leg, 0.5)).Value, 4*load, 1e-9*load)
	for _, k := range []float64{0, 0.4, 11} {
		if _, err := beam.BucklingLoad(leg, k); err == nil {
			t.Errorf("an effective length of %v is taken", k)
		}
	}
}
