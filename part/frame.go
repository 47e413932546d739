package part

import (
	"rodwright/length"
	"rodwright/piece"
)

// frame is a panel's own coordinate system: along the grain, then across it, right-handed as seen from
// above. Where the grain runs along the piece its datum is the front left corner; where it runs from
// front to back the datum is the front right corner, so that the panel is turned and never mirrored: a
// mirrored panel would have its notches marked on the wrong face.
type frame struct {
	grainX       bool
	plan         [2]length.Length // extent along the piece and front to back
	along, cross length.Length
}

func frameOf(p *piece.FlatPanel) frame {
	plan := [2]length.Length{p.Max.X - p.Min.X, p.Max.Y - p.Min.Y}
	if p.GrainX {
		return frame{grainX: true, plan: plan, along: plan[0], cross: plan[1]}
	}
	return frame{plan: plan, along: plan[1], cross: plan[0]}
}

// datum names the corner from which own coordinates are measured.
func (f frame) datum() string {
	if f.grainX {
		return piece.FrontLeft.String()
	}
	return piece.FrontRight.String()
}

// rect turns a rectangle in plan directions, from the front left corner, into own coordinates.
func (f frame) rect(low, high [2]length.Length) (at, size [2]length.Length) {
	if f.grainX {
		return low, [2]length.Length{high[0] - low[0], high[1] - low[1]}
	}
	at = [2]length.Length{low[1], f.plan[0] - high[0]}
	return at, [2]length.Length{high[1] - low[1], high[0] - low[0]}
}

// side turns a plan edge into one of the panel's own.
func (f frame) side(s piece.PanelSide) Side {
	if s == piece.NoSide {
		return NoSide
	}
	own := map[piece.PanelSide]Side{
		piece.LeftSide: StartEnd, piece.RightSide: FarEnd, piece.FrontSide: NearEdge, piece.BackSide: FarEdge,
	}
	if !f.grainX {
		own = map[piece.PanelSide]Side{
			piece.FrontSide: StartEnd, piece.BackSide: FarEnd, piece.RightSide: NearEdge, piece.LeftSide: FarEdge,
		}
	}
	return own[s]
}

// run returns the length of one of the panel's own edges.
func (f frame) run(s Side) length.Length {
	if s == StartEnd || s == FarEnd {
		return f.cross
	}
	return f.along
}

// features turns every cut of the panel into own coordinates, in the order they were resolved in.
func (f frame) features(p *piece.FlatPanel) []Feature {
	out := make([]Feature, len(p.Features))
	for i, cut := range p.Features {
		at, size := f.rect(cut.Min, cut.Max)
		out[i] = Feature{
			Kind: cut.Kind, Name: cut.Name, At: at, Size: size, Round: cut.Round, Radius: cut.Radius,
			Depth: cut.Depth, Opens: f.side(cut.Opens), Why: cut.Why, Index: i,
		}
	}
	return out
}

// profiles turns the panel's edge profiles into own coordinates.
func (f frame) profiles(p *piece.FlatPanel) []Profile {
	out := make([]Profile, len(p.Edges))
	for i, e := range p.Edges {
		side := f.side(piece.PanelSide(e.Side))
		out[i] = Profile{Side: side, Profile: e.Profile, Size: e.Size, Run: f.run(side)}
	}
	return out
}
