package lumber_test

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/lumber"
)

// Public account of a mis-cut, recomputed: 96 in board, first cut 15 in along, four of 21 in wanted, kerf
// 1/8: three, the fourth 3.4 in short.
func TestAPrettyStartCostsAPart(t *testing.T) {
	p, err := lumber.PiecesFrom(96*in, 21*in, in/8, 15*in)
	if err != nil {
		t.Fatal(err)
	}
	if p.Count != 3 {
		t.Errorf("%d parts", p.Count)
	}
	near(t, "fourth short by", p.Short.Inches(), 3.4, 0.1)
	near(t, "left", p.Left.Inches(), 81-3*21.125, 1e-9)
	if whole, err := lumber.PiecesFrom(96*in, 21*in, in/8, 0); err != nil || whole.Count != 4 {
		t.Errorf("from the end: %d, %v", whole.Count, err)
	}
}

func TestTheLastPartNeedsNoKerfBehindIt(t *testing.T) {
	p, err := lumber.PiecesFrom(in*4+3*in/8, in, in/8, 0)
	if err != nil || p.Count != 4 || p.Left != 0 {
		t.Errorf("%+v, %v", p, err)
	}
	p, err = lumber.PiecesFrom(in*4+3*in/8-1, in, in/8, 0)
	if err != nil || p.Count != 3 || p.Short != 1 {
		t.Errorf("a nanometre less: %+v, %v", p, err)
	}
	p, err = lumber.PiecesFrom(in, in, 0, in)
	if err != nil || p.Count != 0 || p.Left != 0 || p.Short != in {
		t.Errorf("start at the far end: %+v, %v", p, err)
	}
	for name, c := range map[string][4]length.Length{
		"no stock": {0, in, 0, 0}, "no part": {in, 0, 0, 0}, "kerf": {in, in, -1, 0}, "start": {in, in, 0, -1}, "start past the end": {in, in, 0, in + 1},
	} {
		if _, err := lumber.PiecesFrom(c[0], c[1], c[2], c[3]); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestEveryPieceFitsAndOneMoreDoesNot(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		stock := length.Length(rapid.Int64Range(int64(in), int64(20*foot)).Draw(r, "stock"))
		part := length.Length(rapid.Int64Range(int64(in/2), int64(4*foot)).Draw(r, "part"))
		kerf := length.Length(rapid.Int64Range(0, int64(in/4)).Draw(r, "kerf"))
		p, err := lumber.PiecesFrom(stock, part, kerf, 0)
		if err != nil {
			r.Fatal(err)
		}
		n := length.Length(p.Count)
		if n > 0 && n*part+(n-1)*kerf > stock {
			r.Fatalf("%d do not fit", n)
		}
		if p.Short <= 0 || (n+1)*part+n*kerf-p.Short != stock {
			r.Fatalf("one more is short by %v", p.Short)
		}
		if p.Left < 0 || p.Left > stock {
			r.Fatalf("left %v", p.Left)
		}
	})
}

// Public answers on wide tops, recomputed: 48 in at 3 in net: 16 staves, 15 joints.
func TestStavesOfAWideTop(t *testing.T) {
	s, err := lumber.StripsFor(48*in, 3*in, 0, in/8, 0)
	if err != nil || s.Count != 16 || s.Joints != 15 || s.Net != 3*in || s.Each != 3*in {
		t.Errorf("%+v, %v", s, err)
	}
}

// Common practice, worked by hand: a 7-1/4 in board with two rough edges, kerf 1/8, jointing 1/16: 7-1/4 −
// 2 × 1/4 − 1/8 = 6-5/8; a 20 in blank takes 4, of 5 in each.
func TestAStripLosesItsRoughEdgesAndItsJointing(t *testing.T) {
	s, err := lumber.StripsFor(20*in, inches(7.25), 2, in/8, in/16)
	if err != nil || s.Net != inches(6.625) || s.Count != 4 || s.Each != 5*in {
		t.Errorf("%+v, %v", s, err)
	}
	if s.Figure.Value != 4 || s.Figure.Formula == nil {
		t.Errorf("%+v", s.Figure)
	}
	for name, try := range map[string]func() (lumber.Strips, error){
		"three edges":     func() (lumber.Strips, error) { return lumber.StripsFor(20*in, 7*in, 3, 0, 0) },
		"nothing left":    func() (lumber.Strips, error) { return lumber.StripsFor(20*in, in/4, 2, in/8, 0) },
		"no blank":        func() (lumber.Strips, error) { return lumber.StripsFor(0, 7*in, 0, 0, 0) },
		"kerf below zero": func() (lumber.Strips, error) { return lumber.StripsFor(20*in, 7*in, 0, -1, 0) },
	} {
		if s, err := try(); err == nil {
			t.Errorf("%s: %+v", name, s)
		}
	}
}

func TestStripsCoverTheBlankAndOneLessDoesNot(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		blank := length.Length(rapid.Int64Range(int64(in), int64(60*in)).Draw(r, "blank"))
		board := length.Length(rapid.Int64Range(int64(2*in), int64(14*in)).Draw(r, "board"))
		s, err := lumber.StripsFor(blank, board, rapid.IntRange(0, 2).Draw(r, "rough"), in/8, in/16)
		if err != nil {
			r.Fatal(err)
		}
		n := length.Length(s.Count)
		if n*s.Net < blank-n || (n-1)*s.Net >= blank {
			r.Fatalf("%d strips of %v for %v", s.Count, s.Net, blank)
		}
	})
}

// One maker's written rule, told in public: 1/2 × 2 × 30 burn, 5/8 × 3 × 40 keep, 3/4 × 2 × 20 keep, 3/4 ×
// 5 × 5 burn.
func TestKeepOrBurn(t *testing.T) {
	for _, c := range []struct {
		thick, wide, long float64
		keep              bool
	}{
		{0.5, 2, 30, false}, {0.625, 3, 40, true}, {0.75, 2, 20, true}, {0.75, 5, 5, false}, {0.25, 4, 6, true}, {0.7, 1.5, 10, false},
	} {
		keep, why := lumber.KeepOffcut(inches(c.thick), inches(c.wide), inches(c.long))
		if keep != c.keep || why == "" {
			t.Errorf("%v × %v × %v: %v (%s)", c.thick, c.wide, c.long, keep, why)
		}
	}
}
