package piece_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/wood"
)

// air resolves the sample piece with another place.
func air(t *testing.T, place string) (*piece.Document, piece.Air) {
	t.Helper()
	doc := read(t, placeLine, place)
	r, err := piece.Resolve(doc, shop.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return doc, r.Air
}

func TestACityIsReadByItsNameAndAnUnknownOneNamesTheNearest(t *testing.T) {
	if got := read(t, placeLine, "place: {room: studio, city: Juneau}\n").Place.City; got != "us-ak-juneau" {
		t.Errorf("read %q", got)
	}
	if got := wrong(t, placeLine, "place: {room: studio, city: junau}\n"); !strings.Contains(got, `there is no city "junau"`) || !strings.Contains(got, "near: juneau") {
		t.Error(got)
	}
	if got := wrong(t, placeLine, "place: {room: studio, city: portland}\n"); !strings.Contains(got, "us-me-portland or us-or-portland") {
		t.Error(got)
	}
}

func TestOnAPorchTheMonthsAreThoseOfTheCity(t *testing.T) {
	c, err := wood.LookupCity("juneau")
	if err != nil {
		t.Fatal(err)
	}
	doc, a := air(t, "place: {room: porch, city: juneau}\n")
	for n, mc := range a.Months {
		if math.Abs(mc-c.EMC[n]) > 1e-9 {
			t.Errorf("month %d: %v %%, outdoors %v", n, mc, c.EMC[n])
		}
	}
	if a.DryMC != 13.6 || a.WetMC != 18.1 || len(a.Months) != 12 { // May, and September
		t.Errorf("%v to %v %%", a.DryMC, a.WetMC)
	}
	if got := strings.Join(a.Assumed, ";"); !strings.Contains(got, "driest in May") || !strings.Contains(got, "not heated") {
		t.Error(got)
	}
	if doc.Place.LowRH < 65 || doc.Place.HighRH > 95 {
		t.Errorf("the air of the place is %v to %v %%", doc.Place.LowRH, doc.Place.HighRH)
	}
}

func TestInAHeatedRoomTheTableIsNeverTakenForTheAirIndoors(t *testing.T) {
	c, _ := wood.LookupCity("fargo")
	_, a := air(t, "place: {room: living, city: fargo}\n")
	if got := slices.Index(a.Months, slices.Min(a.Months)); got != 0 {
		t.Errorf("driest in month %d", got)
	}
	if a.Months[0] > c.EMC[0]-6 {
		t.Errorf("January: %v %%, outdoors %v", a.Months[0], c.EMC[0])
	}
}

func TestTheMonthsGoBetweenTheEndsThatAreWritten(t *testing.T) {
	_, plain := air(t, placeLine)
	_, a := air(t, "place: {room: studio, humidity: 30–60 %, temperature: 16–27 C, city: fargo}\n")
	if a.DryMC != plain.DryMC || a.WetMC != plain.WetMC || plain.Months != nil {
		t.Errorf("the city moved the ends: %v to %v, %v to %v", plain.DryMC, plain.WetMC, a.DryMC, a.WetMC)
	}
	if slices.Min(a.Months) != a.DryMC || math.Abs(slices.Max(a.Months)-a.WetMC) > 1e-12 {
		t.Errorf("%v", a.Months)
	}
	if got := strings.Join(a.Assumed, ";"); !strings.Contains(got, "between the ends of the year that are written") {
		t.Error(got)
	}
}
