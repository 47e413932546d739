package plot_test

import (
	"math"

	"rodwright/figure"
	"rodwright/finding"
)

// tilts is a stand on a long base that goes over to the back too soon.
func tilts() finding.Finding {
	t := finding.Tilt{
		Limit: 10, Base: [][2]float64{{-450, -200}, {450, -200}, {450, 60}, {-450, 60}}, Centre: [2]float64{40, 10},
	}
	const high = 720
	for a := 0.0; a < 360; a += 5 {
		dx, dy := math.Cos(a*math.Pi/180), math.Sin(a*math.Pi/180)
		far := math.Inf(1)
		for _, e := range [][3]float64{{1, 0, 450 - 40}, {-1, 0, 450 + 40}, {0, 1, 60 - 10}, {0, -1, 200 + 10}} {
			if d := dx*e[0] + dy*e[1]; d > 1e-9 {
				far = min(far, e[2]/d)
			}
		}
		t.Rays = append(t.Rays, finding.Ray{Towards: a, Tilt: math.Atan(far/high) * 180 / math.Pi})
	}
	return finding.Finding{Check: "tip", Place: "to the back", Verdict: finding.Fails, Picture: finding.Picture{Tilt: &t}}
}

// gaps are two gaps round posts over twelve months, one of which closes in summer.
func gaps() finding.Finding {
	y := finding.Year{
		Times: []string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"},
		Lines: []finding.Line{{Name: "gap between deep board and back left post"}, {Name: "gap between deep board and back right post"}},
		Limit: 0.4,
	}
	for i := range y.Times {
		swing := math.Cos(2 * math.Pi * float64(i-1) / 12)
		y.Lines[0].Values = append(y.Lines[0].Values, 2.1+1.3*swing)
		y.Lines[1].Values = append(y.Lines[1].Values, 1.4+1.3*swing)
	}
	return finding.Finding{
		Check: "wall", Place: "deep board", Verdict: finding.Fails, Picture: finding.Picture{Year: &y},
		Figure: figure.Of("gap round the post", 0.1, figure.MM, nil), Limit: figure.Of("least", 0.4, figure.MM, nil),
	}
}

// seasons is one gap at the three moistures of a year.
func seasons() finding.Finding {
	y := finding.Year{
		Times: []string{"driest", "as built", "dampest"},
		Lines: []finding.Line{{Name: "play of the screws", Values: []float64{3.2, 4.8, 9.1}}}, Limit: 4,
	}
	return finding.Finding{Check: "movement", Place: "high board", Picture: finding.Picture{Year: &y}}
}

// sags is a board with a notch at its back left corner, borne near its ends.
func sags() finding.Finding {
	b := finding.Bent{Width: 1067, Depth: 343, Columns: 33, Supports: [][2]float64{{60, 40}, {1007, 40}, {60, 260}, {1007, 303}}}
	for j := range 13 {
		for i := range 33 {
			x, y := float64(i)/32, float64(j)/12
			v := 2.6*math.Sin(math.Pi*x)*(0.8+0.2*(1-y)) + 0.4*math.Sin(math.Pi*y)
			if i < 3 && j > 9 {
				v = math.NaN()
			}
			b.Down = append(b.Down, v)
		}
	}
	_, deepest := 0.0, math.Inf(-1)
	for _, v := range b.Down {
		if v > deepest {
			deepest = v
		}
	}
	return finding.Finding{
		Check: "sag", Place: "deep board", Verdict: finding.Tight, Picture: finding.Picture{Bent: &b},
		Figure: figure.Of("sag", deepest, figure.MM, nil), Limit: figure.Of("greatest sag", 3.2, figure.MM, nil),
	}
}

// sways is a frame of four posts with rails, pushed at the top to the right.
func sways() finding.Finding {
	w := finding.Sway{Grown: 20}
	move := func(z float64) [3]float64 { return [3]float64{6 * math.Pow(z/900, 1.5), 0.4 * z / 900, 0} }
	stick := func(tag string, a, b [3]float64) {
		m := finding.Moved{Tag: tag}
		for k := range 9 {
			t := float64(k) / 8
			var p [3]float64
			for i := range p {
				p[i] = a[i] + t*(b[i]-a[i])
			}
			m.At, m.Move = append(m.At, p), append(m.Move, move(p[2]))
		}
		w.Sticks = append(w.Sticks, m)
	}
	for i, p := range [][2]float64{{0, 0}, {1000, 0}, {0, 450}, {1000, 450}} {
		stick([]string{"C1.1", "C1.2", "C5.1", "C5.2"}[i], [3]float64{p[0], p[1], 0}, [3]float64{p[0], p[1], 900})
	}
	for _, z := range []float64{150, 850} {
		stick("C6.1", [3]float64{0, 0, z}, [3]float64{0, 450, z})
		stick("C6.2", [3]float64{1000, 0, z}, [3]float64{1000, 450, z})
		stick("C7.1", [3]float64{0, 450, z}, [3]float64{1000, 450, z})
	}
	return finding.Finding{
		Check: "sway", Place: "the frame", Picture: finding.Picture{Sway: &w},
		Figure: figure.Of("sway", 6, figure.MM, nil), Limit: figure.Of("greatest sway", 9, figure.MM, nil),
	}
}
