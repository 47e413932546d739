package wood

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"rodwright/figure"
	"rodwright/trade/table"
)

//go:embed cities.csv
var citiesCSV string

// MonthNames are the months as they head a table, January first.
func MonthNames() [12]string { return monthNames }

var monthNames = [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// City is a place whose air outdoors is known by month.
type City struct {
	ID         string // country, state and name: us-ak-juneau
	Name       string
	EMC        [12]float64 // percent MC that wood comes to outdoors under a roof, January first
	JanC, JulC float64     // °C, the mean temperatures of the two months
	Source     table.Source
}

type cityRows struct {
	cities []City
	known  []string         // what may be written, sorted
	byName map[string][]int // an id, a city, a city and its state: more than one where cities share it
}

var cityTable = sync.OnceValue(func() cityRows {
	t := cityRows{byName: map[string][]int{}}
	for i, r := range table.Read(citiesCSV) {
		c := City{
			Name: r.Text("city"), Source: r.Source(),
			JanC: centigrade(r.Float("jan_f")), JulC: centigrade(r.Float("jul_f")),
		}
		for m, name := range monthNames {
			c.EMC[m] = r.Float(strings.ToLower(name) + "_emc_pct")
		}
		name, state := normal(c.Name), normal(r.Text("state"))
		c.ID = normal(r.Text("country")) + "-" + state + "-" + name
		t.cities = append(t.cities, c)
		for _, written := range []string{c.ID, name, name + "-" + state, state + "-" + name} {
			t.byName[written] = append(t.byName[written], i)
		}
	}
	for written := range t.byName {
		t.known = append(t.known, written)
	}
	slices.Sort(t.known)
	return t
})

func centigrade(f float64) float64 { return (f - 32) / 1.8 }

// LookupCity returns the city with the given id, or of that name, with its state where two share a name: Juneau,
// us-ak-juneau, Portland ME. A name that several cities share is an error that names their ids; one that none
// has is a *table.UnknownError.
func LookupCity(name string) (City, error) {
	t := cityTable()
	switch found := t.byName[normal(name)]; len(found) {
	case 0:
		return City{}, table.Unknown("city", name, t.known)
	case 1:
		return t.cities[found[0]], nil
	default:
		var ids []string
		for _, i := range found {
			ids = append(ids, t.cities[i].ID)
		}
		return City{}, fmt.Errorf("several cities are called %s; write %s", t.cities[found[0]].Name, strings.Join(ids, " or "))
	}
}

// Cities returns the id of every city, in the order of their states.
func Cities() (ids []string) {
	for _, c := range cityTable().cities {
		ids = append(ids, c.ID)
	}
	return ids
}

// OutdoorC returns the mean temperature outdoors in °C in a month, 0 for January: a cosine between the means of
// January and July, the coldest and the warmest month inland in the north.
//
//	T = (T_Jan + T_Jul) ÷ 2 + (T_Jan − T_Jul) ÷ 2 · cos(30° · month)
func (c City) OutdoorC(month int) float64 {
	return (c.JanC+c.JulC)/2 + (c.JanC-c.JulC)/2*math.Cos(math.Pi/6*float64(month))
}

var outdoorFormula = figure.Formula{
	Text:   "RH_out: EMC(T_out, RH_out) = EMC of the month",
	Source: "Wood Handbook FPL-GTR-282 (2021) eq. 4-5, solved for H; T_out a cosine between the means of January and July",
	Range:  "colder than 30 °F it is solved at 30 °F",
}

// OutdoorRH returns the relative humidity outdoors in percent that belongs to the city's moisture content in a
// month, 0 for January: eq. 4-5 solved for H by halving, at the month's temperature or 30 °F where it is colder.
func (c City) OutdoorRH(month int) figure.Figure {
	out := c.OutdoorC(month)
	f := max(out, LowestEMCTemp)*1.8 + 32
	low, high := 0.0, 1.0
	for range 40 {
		if mid := (low + high) / 2; emc(f, mid) < c.EMC[month] {
			low = mid
		} else {
			high = mid
		}
	}
	return figure.Of("relative humidity outdoors", low*100, figure.Percent, &outdoorFormula,
		figure.In("EMC", c.EMC[month], figure.Percent), figure.In("T_out", out, figure.Celsius)).From(c.Source.String())
}
