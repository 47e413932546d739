package pipe

import (
	_ "embed"
	"fmt"
	"math/big"
	"strings"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

//go:embed pipe.csv
var nptCSV string

//go:embed pipe_iso.csv
var isoCSV string

// sizeTable is every size by id, and the ids in order.
type sizeTable struct {
	ids  []string
	byID map[string]Size
}

var sizes = sync.OnceValue(func() sizeTable {
	t := sizeTable{byID: map[string]Size{}}
	add := func(s Size) {
		t.ids = append(t.ids, s.ID)
		t.byID[normal(s.ID)] = s
	}
	for _, r := range table.Read(nptCSV) {
		add(nptSize(r))
	}
	for _, r := range table.Read(isoCSV) {
		add(isoSize(r, t.byID[r.Text("thread_size")]))
	}
	return t
})

// normal brings the ways an id is written to one: 1 1/4 to 1-1/4, DN 20 to dn20.
func normal(id string) string {
	words := strings.Fields(strings.ToLower(id))
	if len(words) == 2 && words[0] != "dn" {
		return words[0] + "-" + words[1]
	}
	return strings.Join(words, "")
}

// poundPerFoot is 1 lb/ft in kg/m: 0.45359237 kg ÷ 0.3048 m, both exact.
const poundPerFoot = 0.45359237 / 0.3048

func nptSize(r table.Row) Size {
	s := Size{
		ID: r.Text("nps"), Standard: NPT, Nominal: r.Text("nps"),
		OD: r.Inches("od_in"), Wall: r.Inches("wall_sch40_in"),
		ThreadsPerInch: r.Float("threads_per_in"), Pitch: pitch(r, "threads_per_in"),
		Engagement:   r.Inches("normal_engagement_tight_joint_in"),
		HandTight:    r.Inches("handtight_engagement_l1_in"),
		MassPerMetre: r.Float("weight_sch40_plain_lb_per_ft") * poundPerFoot,
		Source:       r.SourceIn("B36.10", "od_in", "wall_sch40_in", "weight_sch40_plain_lb_per_ft"),
		ThreadSource: r.SourceIn("B1.20.1+ENG-HB", "handtight_engagement_l1_in", "normal_engagement_tight_joint_in"),
	}
	s.Bore = s.OD - 2*s.Wall
	s.CloseNipple, _ = nippleTable().closeNipple(s.Nominal)
	s.Root = r.Inches("pitch_dia_small_end_e0_in") + taper(s.Engagement) - r.Inches("thread_height_max_in")
	s.Assumed = fmt.Sprintf("make-up %s in: the fitters' normal engagement, from memory", decimalInches(s.Engagement))
	return s
}

// isoSize reads a DN size. What EN tables lack is taken from the NPT size of the same nominal size.
func isoSize(r table.Row, npt Size) Size {
	s := Size{
		ID: "DN" + r.Text("dn"), Standard: ISO7, Nominal: r.Text("thread_size"),
		OD: r.MM("tube_od_en10255_mm"), Wall: r.MM("wall_medium_mm"),
		ThreadsPerInch: r.Float("threads_per_25_4mm"), Pitch: pitch(r, "threads_per_25_4mm"),
		HandTight:    r.MM("gauge_length_nominal_mm"),
		CloseNipple:  npt.CloseNipple,
		MassPerMetre: r.Float("mass_medium_kg_per_m"),
		Source:       r.SourceIn("EN10255", "tube_od_en10255_mm", "wall_medium_mm", "mass_medium_kg_per_m"),
		ThreadSource: r.SourceIn("ISO7-1", "gauge_length_nominal_mm", "threads_per_25_4mm"),
	}
	s.Bore = s.OD - 2*s.Wall
	var made string
	s.Engagement, made = isoEngagement(s.Nominal, npt)
	s.Root = r.MM("minor_dia_gauge_plane_mm") + taper(s.Engagement-s.HandTight)
	s.Assumed = made + fmt.Sprintf("; close nipple %s mm: no EN row, length of the NPT part of the same size", millimetres(s.CloseNipple))
	return s
}

// isoEngagement is a − z of EN 10242, the same for every kind of one size; for a size that table lacks, the NPT
// engagement of the same nominal size.
func isoEngagement(nominal string, npt Size) (length.Length, string) {
	rows := fittingTable().iso
	a, okA := rows[dimension{Elbow90, nominal, "a"}]
	z, okZ := rows[dimension{Elbow90, nominal, "z"}]
	if okA && okZ {
		e := a.MM("value_mm") - z.MM("value_mm")
		return e, fmt.Sprintf("make-up %s mm: a − z of EN 10242, from memory", millimetres(e))
	}
	return npt.Engagement, fmt.Sprintf("make-up %s mm: no EN 10242 row, that of the NPT thread of the same size", millimetres(npt.Engagement))
}

// taper is how much the thread's diameter grows over a length: one in sixteen in both standards.
func taper(l length.Length) length.Length { return l.Scale(1, 16) }

// pitch is one inch divided by the threads per inch, which may be 11.5, rounded to the nanometre.
func pitch(r table.Row, column string) length.Length {
	n, ok := r.Rat(column)
	if !ok || n.Sign() <= 0 {
		return 0
	}
	p, _ := length.FromRat(new(big.Rat).Quo(length.Inch.Rat(), n))
	return p
}
