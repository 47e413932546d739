package check

import (
	"math"

	"rodwright/finding"
	"rodwright/trade/stability"
)

// rayStep is the angle in degrees between two rays of the picture of tilts.
const rayStep = 10

// tiltPicture shows the tilt at which the piece goes over in every direction. Tilted towards a direction u its centre moves
// along u by h·tan α as seen from above, and reaches a side whose outward direction is n when h·tan α·(u·n) = d. So each
// side is reached at atan(tan αs ÷ (u·n)), αs its own tilt with its worst combination, and the first that is reached counts.
func tiltPicture(leans []lean, centre stability.Mass, limit float64) *finding.Tilt {
	t := &finding.Tilt{Limit: limit, Base: corners(leans), Centre: [2]float64{centre.X.MM(), centre.Y.MM()}}
	for deg := 0; deg < 360; deg += rayStep {
		t.Rays = append(t.Rays, finding.Ray{Towards: float64(deg), Tilt: tiltTowards(leans, float64(deg))})
	}
	return t
}

// tiltTowards returns the tilt in degrees that the piece bears towards a direction in plan; zero where it falls by
// itself.
func tiltTowards(leans []lean, towards float64) float64 {
	y, x := math.Sincos(towards * math.Pi / 180)
	least := math.Pi / 2
	for _, l := range leans {
		if along := x*l.out[0] + y*l.out[1]; along > 1e-9 {
			least = min(least, math.Atan2(math.Tan(l.angle.Value*math.Pi/180), along))
		}
	}
	return max(0, least*180/math.Pi)
}

// corners returns where neighbouring sides of the base meet, in mm. Sides that hardly turn meet at their common foot.
func corners(leans []lean) (out [][2]float64) {
	for i, b := range leans {
		a := leans[(i+len(leans)-1)%len(leans)]
		det := a.out[0]*b.out[1] - a.out[1]*b.out[0]
		if math.Abs(det) < 1e-6 {
			out = append(out, b.at)
			continue
		}
		u, v := a.reach(), b.reach()
		out = append(out, [2]float64{(u*b.out[1] - v*a.out[1]) / det, (a.out[0]*v - b.out[0]*u) / det})
	}
	return out
}

// reach is how far, in mm, the side's line lies from the piece's left front corner, along its outward direction.
func (s side) reach() float64 { return s.at[0]*s.out[0] + s.at[1]*s.out[1] - s.in.MM() }

// leastDepth returns the least distance, in mm, from a side of the base to the corner farthest from it.
func leastDepth(leans []lean) float64 {
	least := math.Inf(1)
	at := corners(leans)
	for _, l := range leans {
		far := 0.0
		for _, c := range at {
			far = math.Max(far, l.side.inside(c[0], c[1]))
		}
		least = math.Min(least, far)
	}
	return least
}
