package portal

import (
	"fmt"
	"math"

	"rodwright/mechanics/frame"
)

// The holds of a frame in the plane of x and z: nothing leaves it.
var (
	inPlane    = [6]float64{frame.AlongY: frame.Rigid, frame.AboutX: frame.Rigid, frame.AboutZ: frame.Rigid}
	hingedFoot = [6]float64{frame.Rigid, frame.Rigid, frame.Rigid, frame.Rigid, 0, frame.Rigid}
)

// thick is how many times the area that gives as much lengthwise as in bending a section has that is to give by bending
// alone. More would cost the stiffness matrix its digits.
const thick = 1e7

// shape is how the frame stands under its push.
type shape struct{ sway, moment float64 }

func (p Portal) solve(push float64, section func(Stick, float64) frame.Section) (shape, error) {
	m, err := frame.New(p.frame(section))
	if err != nil {
		return shape{}, fmt.Errorf("the portal: %w", err)
	}
	answers, err := m.Solve(frame.Case{Name: "push", Pushes: []frame.Push{{Node: "left corner", Force: frame.Vec{push, 0, 0}}}})
	if err != nil {
		return shape{}, fmt.Errorf("the portal: %w", err)
	}
	a := answers[0]
	var out shape
	out.sway, _ = a.Sway("left corner")
	for _, s := range a.Members {
		out.moment = max(out.moment, math.Abs(s.Start[frame.AboutY]), math.Abs(s.End[frame.AboutY]))
	}
	return out, nil
}

// frame builds the portal: x along its width, z up, the left foot at the origin.
func (p Portal) frame(section func(Stick, float64) frame.Section) frame.Frame {
	h, w := p.Height.MM(), p.Width.MM()
	least := min(h, w)
	area := thick * p.Column.Inertia / (least * least)
	foot := hingedFoot
	if p.Feet == Fixed {
		foot = frame.Clamped
	}
	stick := func(name, from, to string, s Stick) frame.Member {
		rigid := frame.End{Springs: frame.Stiff}
		return frame.Member{Name: name, From: from, To: to, Section: section(s, area), Start: rigid, End: rigid}
	}
	return frame.Frame{
		Nodes: []frame.Node{
			{Name: "left foot", Hold: foot}, {Name: "left corner", At: frame.Vec{0, 0, h}, Hold: inPlane},
			{Name: "right corner", At: frame.Vec{w, 0, h}, Hold: inPlane}, {Name: "right foot", At: frame.Vec{w, 0, 0}, Hold: foot},
		},
		Members: []frame.Member{
			stick("left column", "left foot", "left corner", p.Column), stick("beam", "left corner", "right corner", p.Beam),
			stick("right column", "right foot", "right corner", p.Column),
		},
	}
}
