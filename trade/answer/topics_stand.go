package answer

import (
	"rodwright/trade/answer/quantity"
	"rodwright/trade/caster"
	"rodwright/trade/stability"
)

func centreKey() Key {
	return ask("centre_height", quantity.Length, "26 in", "centre of gravity above the floor")
}

func standTopics() []Topic {
	share := func(name, way string) Key {
		return ask(name, quantity.Ratio, "0.1", "how far the centre of gravity lies off the middle "+way+", as a share of the wheelbase that way").within(-0.5, 0.5).or("0")
	}
	return []Topic{
		{
			Name: "tip", Asks: "how far can a piece tilt, and what push or edge load tips it?",
			Keys: []Key{ask("weight", quantity.Force, "135 lb", "of the piece with what it holds"), centreKey(),
				ask("base_depth", quantity.Length, "12 in", "between caster pivots or feet, in the direction it would tip"),
				ask("caster_offset", quantity.Length, "1 3/8 in", "how far a caster's wheel stands off its pivot").zero().or("0 in"),
				ask("push_height", quantity.Length, "52 in", "height of a level push").optional(),
				ask("edge", quantity.Length, "8 in", "how far an edge that is pressed down lies outside the base").optional()},
			Answers: []string{"angle", "push", "edge_load"},
			Call:    []string{"weight=135 lb", "centre_height=26 in", "base_depth=12 in", "caster_offset=1.375 in", "push_height=52 in", "edge=8 in"}, reckon: tip,
		},
		{
			Name: "threshold", Asks: "how fast may a rolling piece be when its wheels stop dead, and what push climbs a step?",
			Keys: []Key{centreKey(), ask("centre_behind", quantity.Length, "4 5/8 in", "how far the centre of gravity lies behind the wheels that stop").zero(),
				ask("wheel", quantity.Length, "3 in", "diameter of the wheel").optional(), ask("step", quantity.Length, "1/8 in", "height of the step").zero().optional()},
			Rules: []Rule{together("wheel", "step")}, Answers: []string{"speed", "step_push"},
			Call: []string{"centre_height=26 in", "centre_behind=4.625 in", "wheel=3 in", "step=1/8 in"}, reckon: threshold,
		},
		{
			Name: "casters", Asks: "what must each caster be rated for?",
			Keys: []Key{ask("total", quantity.Mass, "225 lb", "mass of the piece with all that it holds"),
				ask("count", quantity.Count, "4", "casters: three or four; more need the statics of the whole piece").within(3, 4),
				share("ex", "lengthwise"), share("ey", "across")},
			Answers: []string{"each", "rigid"}, Call: []string{"total=225 lb", "count=4"}, reckon: casters,
		},
	}
}

func tip(in given, w *work) error {
	arm := stability.Pivot(in.length("base_depth"), in.length("caster_offset"))
	if arm <= 0 {
		return in.wrong("caster_offset", "half of base_depth or more: the wheels would stand under the middle; takes less than half of "+in.word("base_depth"))
	}
	kg := in.number("weight") / stability.Gravity
	angle, err := stability.Angle(arm, in.length("centre_height"))
	if err != nil {
		return err
	}
	w.answer("angle", angle)
	if in.has("push_height") {
		push, err := stability.Push(kg, arm, in.length("push_height"))
		if err != nil {
			return err
		}
		w.answer("push", push)
	}
	if in.has("edge") {
		load, err := stability.EdgeLoad(kg, arm, in.length("edge"))
		if err != nil {
			return err
		}
		w.answer("edge_load", load)
	}
	w.assume("the centre of gravity lies over the middle of the base; casters swung to their worst")
	if limit := stability.TiltLimit(); angle.Value < limit.Value {
		w.caution("tips before 10°, the tilt that appliances must survive: lower, heavier below, or a wider base")
	}
	w.caution("anchor tall pieces to the wall where children are; lock the wheels when it stands")
	return nil
}

func threshold(in given, w *work) error {
	speed, err := stability.GoOver(in.length("centre_height"), in.length("centre_behind"))
	if err != nil {
		return err
	}
	w.answer("speed", speed)
	if in.has("step") {
		push, err := stability.StepPush(in.length("wheel"), in.length("step"))
		if err != nil {
			return err
		}
		w.answer("step_push", push)
		small, err := stability.SmallStep(in.length("wheel"))
		if err != nil {
			return err
		}
		w.reason(small)
		if in.number("step") > small.Value {
			w.caution("the step is more than 5 % of the wheel: lift the piece over, or lay a ramp")
		}
	}
	w.caution("pull a tall piece over a threshold from below its middle, the heavy end first; walk, never run")
	return nil
}

func casters(in given, w *work) error {
	count := in.count("count")
	each, err := caster.Share(in.number("total"), count)
	if err != nil {
		return err
	}
	w.answer("each", each)
	if count == 4 {
		rigid, err := caster.Rigid(in.number("total"), in.number("ex"), in.number("ey"))
		if err != nil {
			return err
		}
		w.answer("rigid", rigid)
		if in.defaulted("ex") && in.defaulted("ey") {
			w.assume("centre of gravity over the middle of the casters")
		}
	}
	w.caution("two brakes at least, on wheels that carry; the caster's offset times its load pries at the plate's screws")
	return nil
}
