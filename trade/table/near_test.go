package table_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/trade/table"
)

var woods = []string{"white-oak", "red-oak", "white-ash", "white-pine", "hard-maple", "teak"}

func TestNearFindsWhatWasMeant(t *testing.T) {
	for _, c := range []struct {
		id   string
		want []string
	}{
		{"whit-oak", []string{"white-oak", "red-oak", "white-ash"}}, // 1, 4 and 4 changes
		{"WHITE-OAK", []string{"white-oak", "white-ash", "white-pine"}},
		{"oak", []string{"red-oak", "white-oak", "teak"}},
		{"teek", []string{"teak", "red-oak", "white-oak"}},    // 1, 5 and 6
		{"wit-oak", []string{"white-oak", "red-oak", "teak"}}, // letters left out: 2, 3 and 4 changes
		{"tteak", []string{"teak", "red-oak", "white-oak"}},   // a letter too many
		{"", []string{"teak", "red-oak", "white-ash"}},
	} {
		t.Run(c.id, func(t *testing.T) {
			if got := table.Near(c.id, woods); !slices.Equal(got, c.want) {
				t.Errorf("%v, want %v", got, c.want)
			}
		})
	}
	if got := table.Near("oak", nil); len(got) != 0 {
		t.Errorf("out of nothing comes %v", got)
	}
}

func TestUnknownErrorReadsLikeASentence(t *testing.T) {
	for _, c := range []struct {
		err  *table.UnknownError
		want string
	}{
		{table.Unknown("species", "whit-oak", []string{"white-oak"}), `unknown species "whit-oak"; near: white-oak`},
		{table.Unknown("room", "x", nil), `unknown room "x"`},
	} {
		if got := c.err.Error(); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
	long := table.Unknown("species", strings.Repeat("ö", 5000), woods)
	if n := len([]rune(long.Error())); n > 130 {
		t.Errorf("a hostile id makes an error of %d characters", n)
	}
}

// The laws of Near: at most three, all known, the same whatever the order of the known ones, a known id first.
func TestNearKeepsItsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		known := rapid.SliceOfN(rapid.StringMatching(`[a-d]{1,6}`), 1, 12).Draw(t, "known")
		id := rapid.StringMatching(`[a-d]{0,7}`).Draw(t, "id")
		got := table.Near(id, known)
		if len(got) > 3 || len(got) == 0 {
			t.Fatalf("%d suggestions", len(got))
		}
		for _, g := range got {
			if !slices.Contains(known, g) {
				t.Fatalf("%q is not known", g)
			}
		}
		shuffled := slices.Clone(known)
		slices.Reverse(shuffled)
		if again := table.Near(id, shuffled); !slices.Equal(got, again) {
			t.Fatalf("%v or %v by the order of the known", got, again)
		}
		pick := rapid.SampledFrom(known).Draw(t, "pick")
		if first := table.Near(pick, known)[0]; first != pick {
			t.Fatalf("%q is known but %q comes first", pick, first)
		}
	})
}
