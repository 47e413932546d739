package screw

import (
	_ "embed"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

//go:embed bolts.csv
var boltsCSV string

// Bolt is an inch bolt with its nut and washers: coarse thread, hexagon or socket head.
type Bolt struct {
	ID             string        // 1/4, 5/16, 3/8
	Diameter       length.Length // nominal
	ThreadsPerInch float64
	StressArea     float64       // tensile, mm²
	AcrossFlats    length.Length // of head and nut
	HeadHeight     length.Length
	NutHeight      length.Length
	Thread         length.Length // threaded length of bolts up to 6 in: 2 d + 1/4 in
	WasherWide     length.Length // outside diameter of a wide washer
	WasherThick    length.Length
	SocketHead     length.Length // diameter of a socket head
	SocketKey      length.Length
	Source         table.Source
}

var bolts = sync.OnceValues(func() ([]string, map[string]Bolt) {
	var ids []string
	byID := map[string]Bolt{}
	for _, r := range table.Read(boltsCSV) {
		id := r.Text("size")
		ids = append(ids, id)
		byID[id] = Bolt{
			ID: id, Diameter: r.Inches("size"), ThreadsPerInch: r.Float("threads_per_in_unc"),
			StressArea:  r.Float("tensile_stress_area_in2") * 25.4 * 25.4,
			AcrossFlats: r.Inches("hex_width_across_flats_in"), HeadHeight: r.Inches("hex_head_height_max_in"),
			NutHeight: r.Inches("nut_height_max_in"), Thread: r.Inches("thread_length_to_6in_in"),
			WasherWide: r.Inches("washer_wide_od_in"), WasherThick: r.Inches("washer_wide_thick_in"),
			SocketHead: r.Inches("socket_head_dia_in"), SocketKey: r.Inches("socket_key_in"),
			Source: r.Source(),
		}
	}
	return ids, byID
})

// LookupBolt returns the bolt of the given size: 1/4, 5/16 or 3/8. The error is a *table.UnknownError.
func LookupBolt(id string) (Bolt, error) {
	ids, byID := bolts()
	if b, ok := byID[id]; ok {
		return b, nil
	}
	return Bolt{}, table.Unknown("bolt", id, ids)
}

// Bolts returns the sizes that [LookupBolt] knows, thin before thick.
func Bolts() []string {
	ids, _ := bolts()
	return append([]string(nil), ids...)
}
