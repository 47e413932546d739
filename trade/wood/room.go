package wood

import (
	_ "embed"
	"slices"
	"sync"

	"rodwright/trade/table"
)

//go:embed rooms.csv
var roomsCSV string

// Room is a kind of room with the air it has over the year when nobody has measured it.
type Room struct {
	ID            string
	Name          string
	LowRH, HighRH float64 // percent, in the driest and the dampest weeks
	LowC, HighC   float64 // °C
	Air           RoomAir
	AddedGrams    float64 // water that people, plants and washing add to a m³ of its air in frost
	Source        table.Source
}

// RoomAir is where the air of a room comes from.
type RoomAir string

// The ways a room gets its air.
const (
	OpenAir   RoomAir = "open"   // that outdoors, as it is
	HeatedAir RoomAir = "heated" // that outdoors, warmed when it is cold
	GroundAir RoomAir = "ground" // below ground: warmed when it is cold, cooled when it is hot
)

type roomRows struct {
	ids    []string
	names  []string // ids and aliases, sorted
	byName map[string]Room
}

var roomTable = sync.OnceValue(func() roomRows {
	t := roomRows{byName: map[string]Room{}}
	for _, r := range table.Read(roomsCSV) {
		room := Room{
			ID: r.Text("id"), Name: r.Text("name"),
			LowRH: r.Float("low_rh"), HighRH: r.Float("high_rh"), LowC: r.Float("low_c"), HighC: r.Float("high_c"),
			Air: RoomAir(r.Text("air")), AddedGrams: r.Float("added_g"), Source: r.Source(),
		}
		t.ids = append(t.ids, room.ID)
		for _, name := range append(r.List("aliases"), room.ID) {
			t.names = append(t.names, name)
			t.byName[name] = room
		}
	}
	slices.Sort(t.names)
	return t
})

// LookupRoom returns the room with the given id or alias, in any case, with spaces or hyphens: living, print
// studio. Its air is from memory and is to be shown as assumed. The error is a *table.UnknownError.
func LookupRoom(id string) (Room, error) {
	if room, ok := roomTable().byName[normal(id)]; ok {
		return room, nil
	}
	return Room{}, table.Unknown("room", id, roomTable().names)
}

// Rooms returns the id of every room, aliases apart.
func Rooms() []string { return append([]string(nil), roomTable().ids...) }
