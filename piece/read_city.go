package piece

import (
	"math"

	"rodwright/trade/wood"
)

// readCity reads the city whose air outdoors the months follow. Where no humidity is written that of the room is
// then the city's, not that of any room of its kind.
func (r *reading) readCity(f fields) {
	n := f.scalar("city")
	if n == nil {
		return
	}
	city, err := wood.LookupCity(n.Text)
	if err != nil {
		r.unknownID(n.TextPos, "city", n.Text, err)
		return
	}
	p := &r.doc.Place
	p.City = city.ID
	months, err := city.Indoors(p.kindOfRoom())
	if err != nil || !p.HumidityAssumed {
		return // an air in which wood is not known is told where its moisture is reckoned
	}
	p.LowRH, p.HighRH = 100, 0
	for _, m := range months {
		p.LowRH, p.HighRH = min(p.LowRH, math.Floor(m.RH.Value)), max(p.HighRH, math.Ceil(m.RH.Value))
	}
}

// kindOfRoom is the kind of room a piece lives in, with the air that its document writes. A place without one is
// taken for the usual.
func (p *Place) kindOfRoom() wood.Room {
	id := p.Room
	if id == "" {
		id = usualRoom
	}
	room, _ := wood.LookupRoom(id) // the reader took it from the table
	room.LowC, room.HighC = p.LowC, p.HighC
	if !p.HumidityAssumed {
		room.LowRH, room.HighRH = p.LowRH, p.HighRH
	}
	return room
}
