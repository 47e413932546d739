package wood

import (
	"fmt"

	"rodwright/figure"
)

// Month is the air of a room in one month, and what wood comes to in it.
type Month struct {
	Name string
	Temp float64       // °C in the room
	RH   figure.Figure // percent in the room
	MC   figure.Figure // percent
}

// mild is the temperature outdoors in °C from which windows stand open and a room's own water is carried off;
// cool is that up to which a room is kept as warm as in winter, summery how much warmer it is when it is mild.
const (
	cool    = 10.0 // °C
	mild    = 20.0 // °C
	summery = 5.0  // K
)

// ownWater returns what a room adds to a m³ of its air, in grams: all of it in frost, less as it gets milder
// outdoors, nothing from 20 °C on. So go the humidity classes of EN ISO 13788, from memory.
//
//	m = m_0 · (20 − T_out) ÷ 20, from 0 to m_0
func ownWater(atFrost, outC float64) float64 { return atFrost * share(mild-outC, mild) }

// temp returns how warm a room is in °C when it is outC outdoors. A heated one is kept at its LowC up to 10 °C
// outdoors and gets 5 °C warmer up to 20 °C, as the design year of EN 15026 goes, from memory, but never cooler
// than it is outdoors; one below ground stays between its LowC and HighC.
func (r Room) temp(outC float64) float64 {
	if r.Air == GroundAir {
		return max(r.LowC, min(outC, r.HighC))
	}
	return max(outC, r.LowC+min(summery, r.HighC-r.LowC)*share(outC-cool, mild-cool))
}

// share is a ÷ whole, from 0 to 1.
func share(a, whole float64) float64 { return min(max(a/whole, 0), 1) }

// Indoors returns the year of a room in the city, January first. In an open room the air is that outdoors, and
// the table holds as it is. Into any other come the outdoor air, at the room's temperature, and the room's own
// water; the room is aired before that makes it damper than its HighRH. It is not cooled by a machine, which
// would make a summer drier.
func (c City) Indoors(r Room) (months [12]Month, err error) {
	for n := range months {
		if months[n], err = c.month(n, r); err != nil {
			return months, fmt.Errorf("the air of %s in %s: %w", c.Name, monthNames[n], err)
		}
	}
	return months, nil
}

func (c City) month(n int, r Room) (m Month, err error) {
	out, outdoors := c.OutdoorC(n), c.OutdoorRH(n)
	m = Month{Name: monthNames[n], Temp: out, RH: outdoors}
	if r.Air == OpenAir {
		m.MC = figure.Of("equilibrium moisture content", c.EMC[n], figure.Percent, nil).From(c.Source.String())
		return m, nil
	}
	m.Temp = r.temp(out)
	room := max(0, r.HighRH-warmed(outdoors.Value, out, m.Temp)) // for the room's own water, percent
	if m.RH, err = IndoorRH(outdoors.Value, out, m.Temp, min(ownWater(r.AddedGrams, out), room/perGram(m.Temp))); err != nil {
		return m, err
	}
	m.RH = m.RH.From(c.Source.String())
	m.MC, err = EMC(m.Temp, m.RH.Value)
	return m, err
}

// In says in words how the air of the room was had from that of the city.
func (c City) In(r Room) string {
	from := fmt.Sprintf("the air by month is that outdoors in %s (%s)", c.Name, c.Source)
	switch r.Air {
	case OpenAir:
		return from + ": the room is open or not heated"
	case GroundAir:
		return from + ", warmed or cooled to what the ground keeps"
	}
	return fmt.Sprintf("%s, warmed to %s °C at least, with %s g/m³ of the room's own water in frost and none when it is 20 °C outdoors; no cooling in summer",
		from, figure.Digits(r.LowC, 2), figure.Digits(r.AddedGrams, 2))
}
