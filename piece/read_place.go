package piece

import (
	"errors"
	"strings"

	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/table"
	"rodwright/trade/wood"
)

// usualRoom is where a piece is taken to stand when its document has no place.
const usualRoom = "living"

// readPlace reads where the piece will live. The air that is not written comes from the kind of room, and
// the place then says that it was assumed.
func (r *reading) readPlace(n *markup.Node) {
	p := &r.doc.Place
	if n == nil {
		r.presetAir(usualRoom, Pos{})
		return
	}
	f, ok := r.fields(n, "the place", "room", "humidity", "temperature", "doors", "ceiling", "wall", "slope", "city", "threshold", "turns")
	if !ok {
		return
	}
	p.Pos = n.Pos
	room := f.scalar("room")
	switch {
	case room != nil:
		r.presetAir(room.Text, room.TextPos)
	case f.has("humidity") && f.has("temperature"):
	case !f.has("room"):
		r.presetAir(usualRoom, Pos{})
	}
	wet, warm := r.readHumidity(f), r.readTemperature(f)
	p.AirAssumed, p.HumidityAssumed = !wet || !warm, !wet
	r.readCity(f)
	r.readWay(f)
	r.readWall(f)
	p.Slope = f.slope("slope")
	p.Threshold, _ = f.length("threshold", aboveZero)
}

// presetAir takes the air of a kind of room.
func (r *reading) presetAir(id string, at Pos) {
	room, err := wood.LookupRoom(id)
	if err != nil {
		r.unknownID(at, "room", id, err)
		return
	}
	p := &r.doc.Place
	p.Room, p.AirAssumed, p.HumidityAssumed = room.ID, true, true
	p.LowRH, p.HighRH, p.LowC, p.HighC = room.LowRH, room.HighRH, room.LowC, room.HighC
}

// unknownID notes an id that a table of the trade doesn't have, with the near ones.
func (r *reading) unknownID(at Pos, what, id string, err error) {
	var u *table.UnknownError
	if errors.As(err, &u) {
		want := ""
		if len(u.Near) > 0 {
			want = "near: " + strings.Join(u.Near, ", ")
		}
		r.fail(at, want, "there is no %s %q", what, clipped(id))
		return
	}
	r.fail(at, "", "%v", err)
}

func (r *reading) readHumidity(f fields) bool {
	low, high, unit, ok := f.span("humidity", "45–75 %")
	if !ok {
		return false
	}
	if unit.text != "%" || low < 0 || high > 100 {
		r.fail(unit.at, "write for example 45–75 %, between 0 and 100 %", "humidity: is not in percent")
		return false
	}
	r.doc.Place.LowRH, r.doc.Place.HighRH = low, high
	return true
}

func (r *reading) readTemperature(f fields) bool {
	low, high, unit, ok := f.span("temperature", "10–32 C")
	if !ok {
		return false
	}
	switch strings.TrimPrefix(unit.text, "°") {
	case "C":
	case "F":
		low, high = (low-32)/1.8, (high-32)/1.8
	default:
		r.fail(unit.at, "write C or F behind the numbers, for example 10–32 C", "temperature: has no unit that is read")
		return false
	}
	if low < -60 || high > 80 {
		r.fail(f.at.Entry("temperature").Pos, "write the air of a room, between -60 and 80 C", "temperature: is from %.0f to %.0f C", low, high)
		return false
	}
	r.doc.Place.LowC, r.doc.Place.HighC = low, high
	return true
}

// readWay reads the doors, the turns and the ceiling that the piece must pass.
func (r *reading) readWay(f fields) {
	if l, ok := f.length("ceiling", aboveZero); ok {
		r.doc.Place.Ceiling = &l
	}
	r.readOnTheWay(f, "doors", "32 × 78 in", "width × height", aDoor, func(e markup.Entry, size []length.Length) {
		r.doc.Place.Doors = append(r.doc.Place.Doors, Door{e.Key, size[0], size[1], e.KeyPos})
	})
	r.readOnTheWay(f, "turns", "36 × 40 in", "widths, of the passage from and of the one to", aTurn, func(e markup.Entry, size []length.Length) {
		r.doc.Place.Turns = append(r.doc.Place.Turns, Turn{e.Key, size[0], size[1], e.KeyPos})
	})
}

// readOnTheWay reads named places to pass, each with two sizes.
func (r *reading) readOnTheWay(f fields, key, example, sizes string, what noun, take func(markup.Entry, []length.Length)) {
	for _, e := range r.entries(f.node(key), key, "hall: "+example) {
		r.checkName(e.Key, e.KeyPos, what)
		if e.Value.Kind == markup.Empty {
			r.fail(e.KeyPos, "write its "+sizes+", for example "+example, "the %s %s has no size", what, e.Key)
			continue
		}
		n := r.single(e.Value, e.Key)
		if n == nil {
			continue
		}
		if size, ok := r.dimensions(writtenAt(n), e.Key, example, 2); ok {
			take(e, size)
		}
	}
}

// readWall reads what the wall is made of: studs, studs 16 in, masonry.
func (r *reading) readWall(f fields) {
	n := f.scalar("wall")
	if n == nil {
		return
	}
	kind, spacing, _ := strings.Cut(n.Text, " ")
	if kind != "studs" && kind != "masonry" || kind == "masonry" && spacing != "" {
		r.fail(n.TextPos, "write studs, studs 16 in, or masonry", "wall: is %q", clipped(n.Text))
		return
	}
	r.doc.Place.WallKind = kind
	if spacing == "" {
		return
	}
	w, _ := writtenAt(n).after(kind)
	if l, ok := r.lengthAt(w, "the spacing of the studs", aboveZero); ok {
		r.doc.Place.StudSpacing = l
	}
}
