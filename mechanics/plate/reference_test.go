package plate

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
)

// navier sums the double series of a simply supported plate at its middle (S. Timoshenko, S.
// Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959: chapter 5 for the even plate, chapter 11 for
// the orthotropic one) under an even pressure q and a force at its middle.
func navier(s Stiffness, a, b, q, force float64) float64 {
	w := 0.0
	for m := 1; m < 600; m += 2 {
		for n := 1; n < 600; n += 2 {
			x, y := math.Pi*float64(m)/a, math.Pi*float64(n)/b
			stiff := s.Dx*x*x*x*x + 2*(s.Dxy+2*s.Dk)*x*x*y*y + s.Dy*y*y*y*y
			// At the middle the sines are +1 or −1; their product times that of the load's sines is 1 for the
			// force, and alternates for the pressure.
			sign := float64(1 - (m+n)/2%2*2)
			w += (-sign*16*q/(math.Pi*math.Pi*float64(m*n)) + 4*force/(a*b)) / stiff
		}
	}
	return w
}

// trial is a function of one variable on −1 to 1 with its first two derivatives.
type trial func(x float64) [3]float64

// legendre returns the Legendre polynomial of degree n with its derivatives, by their recurrences.
func legendre(n int) trial {
	return func(x float64) [3]float64 {
		p, q := [3]float64{1}, [3]float64{}
		for k := range n {
			a, b := float64(2*k+1)/float64(k+1), float64(k)/float64(k+1)
			p, q = [3]float64{
				a*x*p[0] - b*q[0], a*(p[0]+x*p[1]) - b*q[1], a*(2*p[1]+x*p[2]) - b*q[2],
			}, p
		}
		return p
	}
}

// clamped is zero with its slope at both ends: the Legendre polynomial of degree n + 2, integrated twice, so
// that its second derivative is that polynomial.
func clamped(n int) trial {
	d := float64(2*n + 5)
	over, same, under := legendre(n+4), legendre(n+2), legendre(n)
	return func(x float64) (out [3]float64) {
		o, s, u := over(x), same(x), under(x)
		for k := range out {
			out[k] = o[k]/(d*(d+2)) - 2*s[k]/((d-2)*(d+2)) + u[k]/((d-2)*d)
		}
		return out
	}
}

// products holds the integrals over −1 to 1 of products of derivatives of the trials, [d][e][m][n], and of the
// trials themselves.
func products(ts []trial) (out [3][3][][]float64, sum []float64) {
	const points = 80 // exact up to degree 159
	x, w := make([]float64, points), make([]float64, points)
	quad.Legendre{}.FixedLocations(x, w, -1, 1)
	sum = make([]float64, len(ts))
	values := make([][][3]float64, len(ts))
	for m, f := range ts {
		for k := range x {
			values[m] = append(values[m], f(x[k]))
			sum[m] += w[k] * values[m][k][0]
		}
	}
	for d := range 3 {
		for e := range 3 {
			out[d][e] = make([][]float64, len(ts))
			for m := range ts {
				out[d][e][m] = make([]float64, len(ts))
				for n := range ts {
					for k := range x {
						out[d][e][m][n] += w[k] * values[m][k][d] * values[n][k][e]
					}
				}
			}
		}
	}
	return out, sum
}

// ritz returns the sag at the middle of an a × b plate under an even pressure and a force at its middle, by
// Ritz' method with all products of the trials. Each product is lessened by less, so that it is zero where
// the plate is supported; products that are nothing but a constant are left out.
func ritz(s Stiffness, a, b, q, force float64, ts []trial, less float64) float64 {
	i, sum := products(ts)
	n := len(ts)
	var at [][2]int
	for k := range n * n {
		if less == 0 || k > 0 {
			at = append(at, [2]int{k / n, k % n})
		}
	}
	// x = a/2·ξ and y = b/2·η.
	fx, fy := 2/a, 2/b
	stiff, load, middle := mat.NewSymDense(len(at), nil), mat.NewVecDense(len(at), nil), make([]float64, len(at))
	for r, p := range at {
		for c := r; c < len(at); c++ {
			m, o := at[c][0], at[c][1]
			v := s.Dx*math.Pow(fx, 4)*i[2][2][p[0]][m]*i[0][0][p[1]][o] + s.Dy*math.Pow(fy, 4)*i[0][0][p[0]][m]*i[2][2][p[1]][o] +
				fx*fx*fy*fy*(s.Dxy*(i[2][0][p[0]][m]*i[0][2][p[1]][o]+i[0][2][p[0]][m]*i[2][0][p[1]][o])+4*s.Dk*i[1][1][p[0]][m]*i[1][1][p[1]][o])
			stiff.SetSym(r, c, v*a*b/4)
		}
		middle[r] = ts[p[0]](0)[0]*ts[p[1]](0)[0] - less
		load.SetVec(r, q*a*b/4*(sum[p[0]]*sum[p[1]]-4*less)+force*middle[r])
	}
	var c mat.Cholesky
	if !c.Factorize(stiff) {
		return math.NaN()
	}
	x := mat.NewVecDense(len(at), nil)
	_ = c.SolveVecTo(x, load)
	w := 0.0
	for r := range at {
		w += middle[r] * x.AtVec(r)
	}
	return w
}

// evenTrials returns the first n trials of even degree: the plates below are symmetric both ways.
func evenTrials(of func(int) trial, n int) []trial {
	out := make([]trial, n)
	for k := range out {
		out[k] = of(2 * k)
	}
	return out
}

// ritzClamped takes many trials, because under a force it nears its value slowly, from below.
func ritzClamped(s Stiffness, a, b, q, force float64) float64 {
	return ritz(s, a, b, q, force, evenTrials(clamped, 28), 0)
}

// ritzCorners uses that every Legendre polynomial of even degree is 1 at both ends: products less 1 are zero
// at the four corners and free everywhere else.
func ritzCorners(s Stiffness, a, b, q, force float64) float64 {
	return ritz(s, a, b, q, force, evenTrials(legendre, 10), 1)
}

// off returns by how much got is away from want, of 1.
func off(got, want float64) float64 { return math.Abs(got-want) / math.Abs(want) }

// within fails the test when a sag is away from a reference by more than most, and logs both.
func within(t *testing.T, what string, got, want, most float64) {
	t.Helper()
	t.Logf("%s: %.6g, reference %.6g, off by %.3f %%", what, got, want, 100*off(got, want))
	if !(off(got, want) <= most) {
		t.Errorf("%s is %v, the reference %v: off by %.2f %%, allowed %.2f %%", what, got, want, 100*off(got, want), 100*most)
	}
}

func solved(t *testing.T, p *Plate) *Result {
	t.Helper()
	r, err := p.Solve()
	if err != nil {
		t.Fatal(err)
	}
	if !r.Converged {
		t.Errorf("has not converged: the last mesh changed it by %v", r.Change)
	}
	return r
}

func stiffness(t *testing.T, p *Plate) Stiffness {
	t.Helper()
	s, err := p.Material.Stiffness(p.Thickness)
	if err != nil {
		t.Fatal(err)
	}
	if p.GrainAlongY {
		s = s.turned()
	}
	return s
}

// all returns four edges of a kind.
func all(e Edge) [4]Edge { return [4]Edge{e, e, e, e} }

// corners returns posts under the four corners.
func corners(a, b float64, twoSided bool) []Post {
	return []Post{{X: 0, Y: 0, TwoSided: twoSided}, {X: a, Y: 0, TwoSided: twoSided}, {X: 0, Y: b, TwoSided: twoSided}, {X: a, Y: b, TwoSided: twoSided}}
}

// wood is a hardwood of its class, in round figures.
var wood = Material{EL: 12000, ET: 900, NuLT: 0.35, GLT: 750}
