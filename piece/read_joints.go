package piece

import (
	"strconv"

	"rodwright/length"
	"rodwright/piece/markup"
)

// readJoints reads the screws that are chosen where the defaults are not wanted.
func (r *reading) readJoints(n *markup.Node) {
	if n == nil {
		return
	}
	f, ok := r.fields(n, "the joints", "flange", "strap", "wall flange", "caster")
	if !ok {
		return
	}
	j := &r.doc.Joints
	for _, joint := range []struct {
		key string
		to  *Fastening
	}{{"flange", &j.Flange}, {"strap", &j.Strap}, {"wall flange", &j.WallFlange}, {"caster", &j.Caster}} {
		if n := f.node(joint.key); n != nil {
			r.readFastening(n, joint.key, joint.to)
		}
	}
}

// readFastening reads a screw alone, or with the hole it goes through.
func (r *reading) readFastening(n *markup.Node, key string, to *Fastening) {
	to.Pos = n.Pos
	if n.Kind == markup.Scalar {
		if s := r.single(n, key); s != nil {
			r.readScrew(writtenAt(s), to)
		}
		return
	}
	f, ok := r.fields(n, "the joint "+key, "screw", "slotted", "hole")
	if !ok {
		return
	}
	if s := f.scalar("screw"); s != nil {
		r.readScrew(writtenAt(s), to)
	}
	to.Slotted = f.yes("slotted")
	to.Hole, _ = f.length("hole", aboveZero)
}

// largestGauge is the thickest wood screw in the trade's tables.
const largestGauge = 24

// readScrew reads a gauge, or gauge × length: 10 × 1 in.
func (r *reading) readScrew(w written, to *Fastening) {
	parts := w.split()
	gauge, err := strconv.Atoi(parts[0].text)
	if err != nil || gauge < 1 || gauge > largestGauge || len(parts) > 2 {
		r.fail(w.at, "write gauge × length, for example 10 × 1 in", "%q is no wood screw", clipped(w.text))
		return
	}
	to.Gauge = gauge
	if len(parts) == 2 {
		l, ok := r.lengthAt(parts[1], "the length of the screw", aboveZero)
		if ok && l > longestScrew {
			r.fail(parts[1].at, "write its length, for example 10 × 1 in", "a screw %s long is none", r.shown(l))
		}
		to.Length = l
	}
}

// longestScrew is a bound that catches a forgotten unit.
const longestScrew = length.Foot
