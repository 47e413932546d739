package frame

import "math"

func (a Vec) minus(b Vec) Vec           { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a Vec) plus(b Vec) Vec            { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a Vec) times(s float64) Vec       { return Vec{a[0] * s, a[1] * s, a[2] * s} }
func (a Vec) dot(b Vec) float64         { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a Vec) length() float64           { return math.Sqrt(a.dot(a)) }
func (a Vec) unit() Vec                 { return a.times(1 / a.length()) }
func (a Vec) along(axes *axes) Vec      { return Vec{axes[0].dot(a), axes[1].dot(a), axes[2].dot(a)} }
func (a Vec) part(normal Vec) Vec       { return a.minus(normal.times(a.dot(normal))) }
func three(of []float64, from int) Vec  { return Vec{of[from], of[from+1], of[from+2]} }
func (a Vec) addTo(to []float64, i int) { to[i] += a[0]; to[i+1] += a[1]; to[i+2] += a[2] }

// cross is a × b.
func (a Vec) cross(b Vec) Vec {
	return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// axes are three unit directions square to each other: the rows turn a vector of the frame into one of its own.
type axes [3]Vec

// back turns a vector given along the axes into one of the frame.
func (x *axes) back(own Vec) Vec {
	return x[0].times(own[0]).plus(x[1].times(own[1])).plus(x[2].times(own[2]))
}

// square are axes with the given third direction, the first of them near the axis of the frame it leans on least.
func square(normal Vec) axes {
	n := normal.unit()
	least := 0
	for i := range n {
		if math.Abs(n[i]) < math.Abs(n[least])-1e-9 {
			least = i
		}
	}
	var lean Vec
	lean[least] = 1
	first := lean.part(n).unit()
	return axes{first, n.cross(first), n}
}
