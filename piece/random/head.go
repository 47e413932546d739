package random

import (
	"fmt"

	"rodwright/trade/stability"
)

// feet is what a piece stands on.
type feet struct {
	words string // the value of feet:, empty for posts that end on the floor
	under bool   // fixed under the first frame's base
}

// head writes what stands above the sections: unit, place, wood and pipe.
func (d *draft) head() {
	d.metric = d.chance(2)
	unit := "in"
	if d.metric {
		unit = "mm"
	}
	d.top = append(d.top, "rodwright: 1", fmt.Sprintf("piece: made-up piece %d", d.rng.IntN(1000)), "unit: "+unit)
	if d.chance(3) {
		fineness := map[bool][]string{false: {"1/16", "1/32", "1/64"}, true: {"1 mm", "0.5 mm"}}[d.metric]
		d.top = append(d.top, "fineness: "+d.pick(fineness...))
	}
	if !d.chance(4) {
		d.top = append(d.top, "place: {"+d.place()+"}")
	}
	if d.chance(6) {
		d.top = append(d.top, "standards: ["+d.pick(stability.RequirementIDs()...)+"]")
	}
	d.top = append(d.top, "wood: "+d.wood())
	sizes := []string{"1/2", "3/4", "1"}
	if d.chance(2) {
		sizes = []string{"DN15", "DN20", "DN25"}
	}
	d.pipe, d.other = d.pick(sizes...), d.pick(sizes...)
	d.top = append(d.top, "pipe: "+d.pipeWords())
}

// pipeWords writes the document's pipe in one of its forms.
func (d *draft) pipeWords() string {
	nominal, iso := map[string]string{"DN15": "1/2", "DN20": "3/4", "DN25": "1"}[d.pipe]
	switch {
	case !d.chance(2):
		return d.pipe
	case iso:
		return "{standard: iso7, size: " + nominal + "}"
	}
	return "{standard: npt, size: " + d.pipe + "}"
}

func (d *draft) place() string {
	out := "room: " + d.pick("living", "kitchen", "office", "greenhouse", "studio", "school", "workshop", "porch", "store")
	if d.chance(2) {
		low := 25 + d.rng.IntN(20)
		out += fmt.Sprintf(", humidity: %d–%d %%", low, low+10+d.rng.IntN(30))
	}
	if d.chance(2) {
		out += ", temperature: 12–30 C"
	}
	if d.chance(3) {
		out += ", doors: {hall: 32 × 78 in, yard: 900 × 2000 mm}, ceiling: 96 in"
	}
	if d.chance(3) {
		out += ", turns: {landing: " + d.pick("36 × 40 in", "28 × 30 in", "900 × 1000 mm") + ", gallery: 5 × 4 ft}"
	}
	if d.chance(3) {
		out += ", wall: " + d.pick("studs", "studs 16 in", "masonry")
	}
	if d.chance(5) {
		out += ", slope: " + d.pick("1°", "2 %")
	}
	if d.chance(4) {
		out += ", threshold: " + d.pick("1/8 in", "3/4 in", "20 mm", "3 in")
	}
	if d.chance(4) {
		out += ", city: " + d.pick("juneau", "us-az-phoenix", "Portland ME", "fargo")
	}
	return out
}

var species = []string{
	"white-oak", "red-oak", "hard-maple", "soft-maple", "black-walnut", "cherry", "ash", "yellow-poplar", "douglas-fir", "white-pine",
}

func (d *draft) wood() string {
	if d.chance(3) {
		return d.pick(species...)
	}
	return fmt.Sprintf("{species: %s, cut: %s, moisture: %d %%}", d.pick(species...), d.pick("flat", "quarter", "mixed"), 7+d.rng.IntN(6))
}

// chooseFeet settles what the piece stands on. Feet under a panel leave the posts of the piece to end on the
// floor.
func (d *draft) chooseFeet() {
	under := "under: " + baseName + ", inset: " + d.size(d.between(2, 3))
	d.feet = []feet{
		{},
		{words: "caps"},
		{words: "flanges"},
		{words: "bare"},
		{words: "{casters: {kind: stem, fixed: through drilled caps, wheel: 3 in, height: 4 in, offset: 1 1/8 in, rated: 110 lb, locks: 2}}"},
		{words: "{casters: {kind: stem, fixed: insert, wheel: 4 in, locks: 4}}"},
		{words: "{levelling feet: {fixed: through drilled caps, height: 40 mm}}"},
		{words: "{casters: {kind: plate, wheel: " + d.pick("2", "3", "4", "5") + " in, locks: 2, " + under + ", count: " + d.pick("4", "6") + "}}", under: true},
		{words: "{casters: {kind: stem, wheel: 3 in, " + under + "}}", under: true},
		{words: "{levelling feet: {" + under + ", count: 4}}", under: true},
	}[d.rng.IntN(10)]
	if d.feet.words != "" {
		d.top = append(d.top, "feet: "+d.feet.words)
	}
}

// foot is what a post comes from: the feet, unless there are none for posts.
func (d *draft) foot() string {
	if d.feet.words != "" && !d.feet.under {
		return "feet"
	}
	if d.chance(4) {
		return "{level: 0, end: " + d.pick("cap", "flange", "bare") + "}"
	}
	return "floor"
}
