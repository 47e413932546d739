package solid

import (
	"math"

	"rodwright/length"
)

// point is a point or direction of space, in millimetres.
type point struct{ x, y, z float64 }

func (v Vec) point() point { return point{v.X.MM(), v.Y.MM(), v.Z.MM()} }

func (p point) exact() Vec {
	return Vec{length.FromMM(p.x), length.FromMM(p.y), length.FromMM(p.z)}
}

func (p point) minus(q point) point             { return point{p.x - q.x, p.y - q.y, p.z - q.z} }
func (p point) plus(q point) point              { return point{p.x + q.x, p.y + q.y, p.z + q.z} }
func (p point) times(f float64) point           { return point{p.x * f, p.y * f, p.z * f} }
func (p point) dot(q point) float64             { return p.x*q.x + p.y*q.y + p.z*q.z }
func (p point) norm() float64                   { return math.Sqrt(p.dot(p)) }
func (p point) toward(q point, t float64) point { return p.plus(q.minus(p).times(t)) }

func (p point) cross(q point) point {
	return point{p.y*q.z - p.z*q.y, p.z*q.x - p.x*q.z, p.x*q.y - p.y*q.x}
}

// frame is a right-handed set of axes: w along a shape, u and v across it.
type frame struct{ u, v, w point }

// upright is the frame of the piece itself.
var upright = frame{point{x: 1}, point{y: 1}, point{z: 1}}

// along returns a frame whose w is the given unit direction. For a direction along an axis u and v are
// axes too, so that a polygon with corners on u and v touches exactly where a circle does.
func along(w point) frame {
	switch {
	case math.Abs(w.z) > 0.99:
		return frame{point{x: 1}, point{0, w.z, 0}.unit(), w}
	default:
		u := point{z: 1}.cross(w).unit()
		return frame{u, w.cross(u), w}
	}
}

func (p point) unit() point { return p.times(1 / p.norm()) }

// from gives p in the frame's own coordinates, back undoes it.
func (f frame) from(p point) point { return point{p.dot(f.u), p.dot(f.v), p.dot(f.w)} }

func (f frame) back(p point) point {
	return f.u.times(p.x).plus(f.v.times(p.y)).plus(f.w.times(p.z))
}
