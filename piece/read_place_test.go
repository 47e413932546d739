package piece_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/wood"
)

const placeLine = "place: {room: studio, humidity: 30–60 %, temperature: 16–27 C}\n"

func TestTheAirIsTheMakersOrThatOfTheKindOfRoom(t *testing.T) {
	greenhouse, err := wood.LookupRoom("greenhouse")
	if err != nil {
		t.Fatal(err)
	}
	living, err := wood.LookupRoom("living")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		place               string
		room                string
		lowRH, highRH, low  float64
		high                float64
		assumed             bool
		lowFromRoom, noRoom bool
	}{
		{place: "place: {room: greenhouse, humidity: 45–75 %, temperature: 10–32 C}\n", room: "greenhouse", lowRH: 45, highRH: 75, low: 10, high: 32},
		{place: "place: {room: greenhouse, humidity: 45 - 75 %, temperature: -5 to 32 °C}\n", room: "greenhouse", lowRH: 45, highRH: 75, low: -5, high: 32},
		{place: "place: {humidity: 45-75%, temperature: 50–86 F}\n", lowRH: 45, highRH: 75, low: 10, high: 30},
		{place: "place: {room: greenhouse, humidity: 50 %, temperature: 20 C}\n", room: "greenhouse", lowRH: 50, highRH: 50, low: 20, high: 20},
		{place: "place: {room: glasshouse}\n", room: "greenhouse", assumed: true,
			lowRH: greenhouse.LowRH, highRH: greenhouse.HighRH, low: greenhouse.LowC, high: greenhouse.HighC},
		{place: "place: {room: greenhouse, humidity: 45–75 %}\n", room: "greenhouse", assumed: true, lowRH: 45, highRH: 75, low: greenhouse.LowC, high: greenhouse.HighC},
		{place: "", room: "living", assumed: true, lowRH: living.LowRH, highRH: living.HighRH, low: living.LowC, high: living.HighC},
	} {
		p := read(t, placeLine, c.place).Place
		near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
		if p.Room != c.room || p.AirAssumed != c.assumed || !near(p.LowRH, c.lowRH) || !near(p.HighRH, c.highRH) || !near(p.LowC, c.low) || !near(p.HighC, c.high) {
			t.Errorf("%q: read %+v", c.place, p)
		}
	}
}

func TestATurnHasTheWidthsOfItsTwoPassages(t *testing.T) {
	p := read(t, placeLine, "place: {room: studio, turns: {landing: 36 × 40 in, gallery: 900 × 1000 mm}}\n").Place
	if len(p.Turns) != 2 || p.Turns[0].Name != "landing" || p.Turns[0].From != 36*in || p.Turns[0].To != 40*in || p.Turns[1].To != length.Metre {
		t.Errorf("turns: %+v", p.Turns)
	}
	for _, wrong := range []string{"landing: 36 in", "landing: 36 × 0 in", "landing:", "landing: {from: 36}"} {
		text := changed(t, placeLine, "place: {room: studio, turns: {"+wrong+"}}\n")
		if _, err := piece.Read("bench", []byte(text)); err == nil {
			t.Errorf("%s is read", wrong)
		}
	}
}

func TestTheWayTheWallAndTheFloor(t *testing.T) {
	p := read(t, placeLine, "place: {room: studio, doors: {hall: 32 × 78 in, shop: 90 x 210 cm}, ceiling: 96 in, wall: studs 16 in, slope: 0.5 %}\n").Place
	if len(p.Doors) != 2 || p.Doors[0].Name != "hall" || p.Doors[0].Width != 32*in || p.Doors[0].Height != 78*in || p.Doors[1].Width != 900*length.Millimetre {
		t.Errorf("doors: %+v", p.Doors)
	}
	if p.Ceiling == nil || *p.Ceiling != 96*in || p.WallKind != "studs" || p.StudSpacing != 16*in {
		t.Errorf("ceiling and wall: %+v", p)
	}
	// atan(0.005) = 0.28648°, by hand
	if math.Abs(p.Slope-0.28648) > 1e-5 {
		t.Errorf("a slope of 0.5 %% is %g degrees", p.Slope)
	}
	if p := read(t, placeLine, "place: {room: studio, wall: masonry, slope: 2°}\n").Place; p.WallKind != "masonry" || p.StudSpacing != 0 || p.Slope != 2 {
		t.Errorf("read %+v", p)
	}
}

func TestWoodThatIsNotWrittenIsSaidToBeAssumed(t *testing.T) {
	const line = "wood: {species: white-oak, cut: flat, moisture: 8 %}"
	const flat, dry = "flat-sawn", "wood at 8 % moisture on the day the panels are made"
	for _, c := range []struct {
		wood     string
		species  string
		cut      wood.Cut
		moisture float64
		assumed  []string
	}{
		{"wood: {species: white-oak, cut: quarter, moisture: 9.5 %}", "white-oak", wood.Quarter, 9.5, nil},
		{"wood: {species: hard-maple, cut: mixed}", "", wood.Mixed, 8, []string{dry}},
		{"wood: {species: white-oak, moisture: 7%}", "white-oak", wood.Flat, 7, []string{flat}},
		{"wood: white-oak", "white-oak", wood.Flat, 8, []string{flat, dry}},
	} {
		w := read(t, line, c.wood).Panels[0].Wood
		if w == nil || c.species != "" && w.Species.ID != c.species || w.Cut != c.cut || w.Moisture != c.moisture || !slices.Equal(w.Assumed, c.assumed) {
			t.Errorf("%s: read %+v", c.wood, w)
		}
	}
}

func TestAPanelMayBeOfAnotherWoodOrOfSheet(t *testing.T) {
	p := read(t, "thickness: 1 1/2 in", "thickness: 1 1/2 in, wood: {species: black-walnut, moisture: 10 %}").Panels[0]
	if p.Wood.Cut != wood.Flat || p.Wood.Moisture != 10 || len(p.Wood.Assumed) != 0 || !strings.Contains(p.Wood.Species.Name, "alnut") {
		t.Errorf("read %+v", p.Wood)
	}
	p = read(t, "thickness: 1 1/2 in", "sheet: birch-plywood-18").Panels[0]
	if p.Wood != nil || p.Sheet != "birch-plywood-18" || p.Thickness != 18*length.Millimetre {
		t.Errorf("read %+v", p)
	}
	p = read(t, "thickness: 1 1/2 in", "sheet: birch-plywood-18, thickness: 17.6 mm").Panels[0]
	if p.Thickness != 17_600*length.Micrometre {
		t.Errorf("a measured sheet is %d nm thick", p.Thickness)
	}
}

func TestAPipeIsNamedByItsSizeAndStandard(t *testing.T) {
	const line = "pipe: {standard: npt, size: 3/4}"
	for _, c := range []struct{ pipe, id string }{
		{"pipe: 3/4", "3/4"},
		{"pipe: DN20", "DN20"},
		{"pipe: {size: 1-1/4}", "1-1/4"},
		{"pipe: {standard: iso7, size: DN20}", "DN20"},
		{"pipe: {standard: iso7, size: 3/4}", "DN20"}, // the size of that name in the other standard
	} {
		doc := read(t, line, c.pipe)
		if doc.Pipe.ID != c.id || doc.Posts[0].Section.Pipe.ID != c.id {
			t.Errorf("%s: read %s", c.pipe, doc.Pipe.ID)
		}
	}
	doc := read(t, "joins: end rails", "joins: end rails, pipe: 1/2")
	if doc.Rails[1].Section.Pipe.ID != "1/2" || doc.Rails[0].Section.Pipe.ID != "3/4" {
		t.Error("a group's own pipe is not read")
	}
}
