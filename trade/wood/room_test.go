package wood

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"rodwright/trade/table"
)

func TestRoomsAreFoundByTheirNames(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"living", "living"},
		{"Living Room", "living"},
		{"bathroom", "bath"},
		{"greenhouse", "greenhouse"},
		{"kitchen", "kitchen"},
		{"office", "office"},
		{"workshop", "workshop"},
		{"porch", "porch"},
		{"store", "store"},
		{"garage", "garage"},
		{"print studio", "studio"},
		{"classroom", "school"},
		{"bedroom", "bedroom"},
	} {
		if got, err := LookupRoom(c.text); err != nil || got.ID != c.want {
			t.Errorf("%q is %q (%v), want %q", c.text, got.ID, err, c.want)
		}
	}
	_, err := LookupRoom("greenhuose")
	var unknown *table.UnknownError
	if !errors.As(err, &unknown) || unknown.Kind != "room" || unknown.Near[0] != "greenhouse" {
		t.Errorf("%v", err)
	}
}

func TestEveryRoomHasAirThatWoodIsKnownIn(t *testing.T) {
	var names []string
	for _, r := range table.Read(roomsCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
		for _, name := range append(r.List("aliases"), r.Text("id")) {
			names = append(names, name)
			if got, err := LookupRoom(name); err != nil || got.ID != r.Text("id") {
				t.Errorf("%q finds %q, %v", name, got.ID, err)
			}
		}
	}
	slices.Sort(names)
	if len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Error("two rooms share a name")
	}
	for _, id := range Rooms() {
		room, err := LookupRoom(id)
		if err != nil {
			t.Fatal(err)
		}
		if room.LowRH >= room.HighRH || room.LowC >= room.HighC || !room.Source.Memory || room.Name == "" {
			t.Errorf("%+v", room)
		}
		dry, errDry := EMC(room.HighC, room.LowRH)
		wet, errWet := EMC(room.LowC, room.HighRH)
		if errDry != nil || errWet != nil || !(dry.Value > 2 && dry.Value < wet.Value && wet.Value < 25) {
			t.Errorf("%s: %v to %v %%, %v, %v", id, dry.Value, wet.Value, errDry, errWet)
		}
	}
}

// Wood Handbook FPL-GTR-282 (2021) Figure 13-1 and Table 13-2: furniture indoors averages 8 % over most of the United
// States, between 6 and 10 (the range from memory).
func TestALivingRoomIsAsTheHandbookRecommends(t *testing.T) {
	room, err := LookupRoom("living")
	if err != nil {
		t.Fatal(err)
	}
	mid := emcOf(t, (room.LowC+room.HighC)/2, (room.LowRH+room.HighRH)/2)
	if mid < 7.5 || mid > 9.5 {
		t.Errorf("%.1f %% on the average", mid)
	}
	if low, high := emcOf(t, 22, room.LowRH), emcOf(t, 22, room.HighRH); low < 5.5 || high > 11.5 {
		t.Errorf("%.1f to %.1f %%", low, high)
	}
	if !slices.Contains(Rooms(), "living") || strings.Contains(strings.Join(Rooms(), " "), "lounge") {
		t.Errorf("%v", Rooms())
	}
}
