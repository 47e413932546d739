package piece

import "rodwright/trade/wood"

// reckonAir finds the moisture the wood will come to: dry in the driest air at the highest temperature, wet
// in the dampest at the lowest. The two corners of the year's air are on the safe side, as the driest weeks
// need not be the warmest.
func (r *rod) reckonAir() error {
	p := &r.doc.Place
	dry, err := wood.EMC(p.HighC, p.LowRH)
	if err != nil {
		return r.fault(p.Pos, "write the year's range of humidity and temperature indoors", "the driest air: %v", err)
	}
	wet, err := wood.EMC(p.LowC, p.HighRH)
	if err != nil {
		return r.fault(p.Pos, "write the year's range of humidity and temperature indoors", "the dampest air: %v", err)
	}
	dry.Name, wet.Name = "driest moisture content", "dampest moisture content"
	air := Air{BuildMC: r.doc.Wood.Moisture, DryMC: dry.Value, WetMC: wet.Value}
	if p.AirAssumed {
		air.Assumed = append(air.Assumed, "the air of the place is that of its kind of room ("+p.Room+"), from memory")
		dry, wet = dry.Assuming(air.Assumed...), wet.Assuming(air.Assumed...)
	}
	air.Figures = append(air.Figures, dry, wet)
	r.out.Air = air
	return nil
}
