package piece

import (
	"slices"
	"testing"
)

func TestMembersAreToldApartInPlan(t *testing.T) {
	for _, c := range []struct {
		at   []spot
		want []string
	}{
		{[]spot{{5, 5}}, []string{""}},
		{[]spot{{0, 5}, {9, 5}}, []string{"left", "right"}},
		{[]spot{{5, 9}, {5, 0}}, []string{"back", "front"}},
		{[]spot{{0, 0}, {9, 0}, {0, 9}, {9, 9}}, []string{"front left", "front right", "back left", "back right"}},
		{[]spot{{0, 0}, {5, 0}, {9, 0}}, []string{"left", "middle", "right"}},
		{[]spot{{0, 0}, {5, 5}, {9, 9}}, []string{"front left", "middle", "back right"}},
		{[]spot{{0, 0}, {1, 0}, {2, 0}, {3, 0}}, []string{"number 1", "number 2", "number 3", "number 4"}},
		{[]spot{{0, 0}, {0, 0}}, []string{"number 1", "number 2"}},
	} {
		if got := wordsFor(c.at); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.at, got, c.want)
		}
	}
}

func TestNamesOfMembers(t *testing.T) {
	for _, c := range []struct{ group, role, word, want string }{
		{"front", "post", "front left", "front left post"},
		{"back", "post", "back right", "back right post"},
		{"front", "post", "left", "front left post"},
		{"legs", "post", "front left", "front left leg"},
		{"side", "rail", "left", "left side rail"},
		{"back", "rail", "", "back rail"},
		{"stretcher", "rail", "", "stretcher"},
		{"low bars", "rail", "front", "front low bar"},
		{"cross", "rail", "left", "left cross rail"},
		{"bracket", "arm", "left", "left bracket"},
		{"row", "post", "number 3", "row post 3"},
		{"left", "post", "front left", "front left post"},
	} {
		if got := memberName(c.group, c.role, c.word); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.group, c.word, got, c.want)
		}
	}
}

func TestRailsOfARectangleAreNamedByTheirSide(t *testing.T) {
	r := resolved(t, boxFrame(t))
	for _, name := range []string{"front top rail 1", "back top rail", "left top rail", "right top rail"} {
		stickNamed(t, r, name)
	}
}

func TestNoTwoSticksHaveOneName(t *testing.T) {
	d := stand(t)
	d.Sticks = []FreeStick{free("back rail", 0, 40, 5, 0, 40, 20), free("back rail", 9, 40, 5, 9, 40, 20)}
	seen := map[string]bool{}
	for _, s := range resolved(t, d).Sticks {
		if seen[s.Name] {
			t.Errorf("two sticks are named %s", s.Name)
		}
		seen[s.Name] = true
	}
}
