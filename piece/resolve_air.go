package piece

import (
	"cmp"
	"fmt"
	"slices"

	"rodwright/figure"
	"rodwright/trade/wood"
)

// reckonAir finds the moisture the wood will come to: at both ends of the year and, where the city is known, in
// every month. The ends are those of the air that is written; where no humidity is written and the city is
// known they are its driest and its dampest month; else those of the kind of room.
func (r *rod) reckonAir() error {
	p := &r.doc.Place
	r.out.Air.BuildMC = r.doc.Wood.Moisture
	if p.City == "" {
		return r.endsOfSpan()
	}
	room := p.kindOfRoom()
	city, err := wood.LookupCity(p.City)
	if err != nil {
		return r.fault(p.Pos, "", "%v", err)
	}
	months, err := city.Indoors(room)
	if err != nil {
		return r.fault(p.Pos, airWanted, "%v", err)
	}
	if p.HumidityAssumed {
		r.endsOfMonths(months, city.In(room))
		return nil
	}
	if err := r.endsOfSpan(); err != nil {
		return err
	}
	r.out.Air.Months = between(months, r.out.Air.DryMC, r.out.Air.WetMC)
	r.assumeAir("between the ends of the year that are written the months go as in this: " + city.In(room))
	return nil
}

const airWanted = "write the year's range of humidity and temperature indoors"

// endsOfSpan takes dry in the driest air at the highest temperature, wet in the dampest at the lowest. The two
// corners of the year's air are on the safe side, as the driest weeks need not be the warmest.
func (r *rod) endsOfSpan() error {
	p := &r.doc.Place
	dry, err := wood.EMC(p.HighC, p.LowRH)
	if err != nil {
		return r.fault(p.Pos, airWanted, "the driest air: %v", err)
	}
	wet, err := wood.EMC(p.LowC, p.HighRH)
	if err != nil {
		return r.fault(p.Pos, airWanted, "the dampest air: %v", err)
	}
	r.setEnds(dry, wet)
	if p.AirAssumed {
		r.assumeAir("the air of the place is that of its kind of room (" + p.Room + "), from memory")
	}
	return nil
}

// endsOfMonths takes the driest and the dampest month for the ends of the year.
func (r *rod) endsOfMonths(months [12]wood.Month, how string) {
	byMC := func(a, b wood.Month) int { return cmp.Compare(a.MC.Value, b.MC.Value) }
	dry, wet := slices.MinFunc(months[:], byMC), slices.MaxFunc(months[:], byMC)
	r.setEnds(dry.MC, wet.MC)
	r.out.Air.Figures = append(r.out.Air.Figures, dry.RH, wet.RH)
	r.out.Air.Months = between(months, dry.MC.Value, wet.MC.Value)
	r.assumeAir(how, fmt.Sprintf("driest in %s, dampest in %s; means of months: a wet or dry week goes beyond them, thick wood hardly follows it", dry.Name, wet.Name))
}

// setEnds notes the moisture at both ends of the year.
func (r *rod) setEnds(dry, wet figure.Figure) {
	dry.Name, wet.Name = "driest moisture content", "dampest moisture content"
	air := &r.out.Air
	air.DryMC, air.WetMC = dry.Value, wet.Value
	air.Figures = append(air.Figures, dry, wet)
}

// assumeAir notes what is taken for granted of the air, in words, on its figures too.
func (r *rod) assumeAir(words ...string) {
	air := &r.out.Air
	air.Assumed = append(air.Assumed, words...)
	for i := range air.Figures {
		air.Figures[i] = air.Figures[i].Assuming(words...)
	}
}

// between returns the moisture of the months, stretched to lie between two ends; in their middle where the
// months are all alike.
func between(months [12]wood.Month, dry, wet float64) []float64 {
	least, most := months[0].MC.Value, months[0].MC.Value
	for _, m := range months {
		least, most = min(least, m.MC.Value), max(most, m.MC.Value)
	}
	out := make([]float64, len(months))
	for i, m := range months {
		share := 0.5
		if most > least {
			share = (m.MC.Value - least) / (most - least)
		}
		out[i] = min(dry+share*(wet-dry), wet)
	}
	return out
}
