package journal_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rodwright/journal"
	"rodwright/length"
)

// made is the fact of work as a line tells it.
func made(part, work string, size ...journal.MM) journal.Happened {
	h := journal.Happened{What: journal.Made, Part: part, Work: work}
	if len(size) > 0 {
		h.Shape = &journal.Shape{Measured: true}
		copy(h.Shape.Size[:], size)
	}
	return h
}

// with changes a fact.
func with(h journal.Happened, by func(*journal.Happened)) journal.Happened {
	by(&h)
	return h
}

// goods is the fact that something was bought for that many hundredths; less than 0: nobody said for what.
func goods(g journal.Goods, cents int64) journal.Happened {
	if cents >= 0 {
		g.Cents = &cents
	}
	return journal.Happened{What: journal.Bought, Goods: &g}
}

func between(from, to string, value journal.MM, over string) journal.Happened {
	return journal.Happened{What: journal.Measured, Distance: &journal.Distance{From: from, To: to, Value: value, Over: over}}
}

func size(v ...journal.MM) (out [3]journal.MM) {
	copy(out[:], v)
	return out
}

func says(t *testing.T, line string, unit length.Unit, want journal.Happened) {
	t.Helper()
	got, err := journal.Say(line, unit)
	if err != nil {
		t.Errorf("%s: %v", line, err)
	} else if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("%s: %s", line, diff)
	}
}

func TestAMakerSaysWhatWasMade(t *testing.T) {
	const mm = journal.MM(length.Millimetre)
	for line, want := range map[string]journal.Happened{
		"made C2.1 cut-pipe 26 1/2 in":        made("C2.1", "cut-pipe", 26*inch+inch/2),
		"made A1.1 size 42 × 18 1/4 in":       made("A1.1", "size", 42*inch, 18*inch+inch/4),
		"made A1.1 size 42x18.25x1":           made("A1.1", "size", 42*inch, 18*inch+inch/4, inch),
		`made A1.1 size 3' 6" × 18-1/4" × 1"`: made("A1.1", "size", 42*inch, 18*inch+inch/4, inch),
		"made A1.1 size 3 × 2 ft":             made("A1.1", "size", 3*foot, 2*foot),
		"made A1.1 size 400 × 8 mm × 1":       made("A1.1", "size", 400*mm, 8*mm, inch),
		"  made  A1.1   size  1067 mm ":       made("A1.1", "size", 1067*mm),
		"made A1.1 sanded":                    made("A1.1", "sanded"),
		"made A1.1 cut":                       made("A1.1", "blank cut"),
		"made A1.1 finished again":            with(made("A1.1", "finished"), func(h *journal.Happened) { h.Again = true }),
		// By hand: 25 min = 5/12 h; 1 1/2 h = 1.5 h; 20 s = 20/3600 h.
		"made C2.1 thread in 25 min":          with(made("C2.1", "thread"), func(h *journal.Happened) { h.HandsH = 25.0 / 60 }),
		"made C2.1 thread 26 1/2 in in 1.5 h": with(made("C2.1", "thread", 26*inch+inch/2), func(h *journal.Happened) { h.HandsH = 1.5 }),
		"made C2.1 thread 26 1/2 in 1 1/2h":   with(made("C2.1", "thread", 26*inch+inch/2), func(h *journal.Happened) { h.HandsH = 1.5 }),
		"made C2.1 thread in 1/3 min":         with(made("C2.1", "thread"), func(h *journal.Happened) { h.HandsH = 20.0 / 3600 }),
		"made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min again": with(made("C2.1", "cut-pipe", 26*inch+inch/2), func(h *journal.Happened) {
			h.From, h.Took, h.HandsH, h.Again = "S1", 26*inch+5*inch/8, 25.0/60, true
		}),
		"made C2.1 cut-pipe from S1 taking 675 mm": with(made("C2.1", "cut-pipe"), func(h *journal.Happened) { h.From, h.Took = "S1", 675*mm }),
		"made A1.1 crosscut from P1":               with(made("A1.1", "crosscut"), func(h *journal.Happened) { h.From = "P1" }),
		"wrong C2.1 short 1/2 in: slipped":         {What: journal.Wrong, Part: "C2.1", Why: "slipped", Shape: made("", "", -inch/2).Shape},
		"wrong A1.1 narrow 1/4: fence moved":       {What: journal.Wrong, Part: "A1.1", Why: "fence moved", Shape: made("", "", 0, -inch/4).Shape},
		// By hand: 1 in across with its centre at 6 × 3 in begins at 5 1/2 × 2 1/2 in.
		"wrong A1.1 hole 1 in at 6 × 3 in deep 1/2 in: from the wrong edge": {What: journal.Wrong, Part: "A1.1", Why: "from the wrong edge", Shape: &journal.Shape{
			Openings: []journal.Opening{{Kind: "hole", At: [2]journal.MM{5*inch + inch/2, 2*inch + inch/2}, Size: [2]journal.MM{inch, inch}, Round: true, Depth: inch / 2}},
		}},
		"meant C2.1 for back left post 1":          {What: journal.Meant, Part: "C2.1", Place: "back left post 1"},
		"meant C2.1 for the rack":                  {What: journal.Meant, Part: "C2.1"},
		"wrong C2.1 25 3/4 in: cut too short":      {What: journal.Wrong, Part: "C2.1", Why: "cut too short", Shape: made("", "", 25*inch+3*inch/4).Shape},
		"wrong A1.1: hole on the wrong side: left": {What: journal.Wrong, Part: "A1.1", Why: "hole on the wrong side: left"},
		"wrong A1.1 : split":                       {What: journal.Wrong, Part: "A1.1", Why: "split"},
		"spoiled A1.1 hole on the wrong side":      {What: journal.Spoiled, Part: "A1.1", Why: "hole on the wrong side"},
		"finished":                                 {What: journal.Finished},
		" delivered ":                              {What: journal.Delivered},
	} {
		says(t, line, length.In, want)
	}
	says(t, "made A1.1 size 1067 × 464", length.MM, made("A1.1", "size", 1067*mm, 464*mm))
	says(t, "made A1.1 size 42 × 18 1/4 in", length.MM, made("A1.1", "size", 42*inch, 18*inch+inch/4))
}

func TestAMakerSaysWhatWasMeasured(t *testing.T) {
	for line, want := range map[string]journal.Happened{
		"measured front left post to back left post 24 3/32 in":         between("front left post", "back left post", 24*inch+3*inch/32, ""),
		"measured low rail to floor 6":                                  between("low rail", "floor", 6*inch, ""),
		"measured front left post 1 to back left post 2 24 in outside":  between("front left post 1", "back left post 2", 24*inch, "outside"),
		"measured front left post 1 to back left post 2 24 1/2 inside":  between("front left post 1", "back left post 2", 24*inch+inch/2, "inside"),
		"measured rail to post 1 3/4 in":                                between("rail", "post", inch+3*inch/4, ""),
		"measured rail to post 1 0 3/4 in":                              between("rail", "post 1", 3*inch/4, ""),
		"measured rail to 1 3/4 in":                                     between("rail", "1", 3*inch/4, ""), // something must be measured to
		"measured floor to shelf to wall 2 ft":                          between("floor", "shelf to wall", 2*foot, ""),
		`measured front left post to back left post 2' 0 3/32" outside`: between("front left post", "back left post", 24*inch+3*inch/32, "outside"),
	} {
		says(t, line, length.In, want)
	}
}

func TestAMakerSaysWhatWasBought(t *testing.T) {
	oak := journal.Goods{Kind: "board", Material: "white-oak", Quarters: "5/4", Size: size(118*inch, 6*inch+3*inch/4, inch+inch/8), Tag: "P1"}
	rough := oak
	rough.Rough = 2
	plain := oak
	plain.Quarters, plain.Size = "", size(3*inch/4, 6*inch, inch)
	for line, want := range map[string]journal.Happened{
		"bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1":                         goods(oak, -1),
		"bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 2 rough edges for 38.50": goods(rough, 3850),
		"bought board white-oak 5/4 118 x 6 3/4 x 1 1/8 as P1 for 38 EUR":                 goods(oak, 3800),
		"bought board white-oak 3/4 × 6 × 1 as P1":                                        goods(plain, -1), // a measure, not quarters
		"bought stick 3/4 21 ft as S1 for 41":                                             goods(journal.Goods{Kind: "stick", Material: "3/4", Size: size(21 * foot), Tag: "S1"}, 4100),
		"bought stick 1 1/4 21 ft as S1":                                                  goods(journal.Goods{Kind: "stick", Material: "1 1/4", Size: size(21 * foot), Tag: "S1"}, -1),
		"bought stick 1 21 1/2 in as S1":                                                  goods(journal.Goods{Kind: "stick", Material: "1", Size: size(21*inch + inch/2), Tag: "S1"}, -1),
		"bought stick DN20 6 m as S1":                                                     goods(journal.Goods{Kind: "stick", Material: "DN20", Size: size(journal.MM(6 * length.Metre)), Tag: "S1"}, -1),
		"bought sheet birch-plywood-18 96 × 48 in as B1 for 60":                           goods(journal.Goods{Kind: "sheet", Material: "birch-plywood-18", Size: size(96*inch, 48*inch), Tag: "B1"}, 6000),
		"bought 8 × tee 1 for 31.20":                                                      goods(journal.Goods{Kind: "item", Item: "tee 1", Count: 8}, 3120),
		"bought 2.5x  wax for 0.05":                                                       goods(journal.Goods{Kind: "item", Item: "wax", Count: 2.5}, 5),
		"bought stick 3/4 21 ft as S×1":                                                   goods(journal.Goods{Kind: "stick", Material: "3/4", Size: size(21 * foot), Tag: "S×1"}, -1),
		"bought 2.5 x wax for 0":                                                          goods(journal.Goods{Kind: "item", Item: "wax", Count: 2.5}, 0),
		"bought 20×wood screw 10 × 1 in":                                                  goods(journal.Goods{Kind: "item", Item: "wood screw 10 × 1 in", Count: 20}, -1),
		"bought 20 × plug for 10 mm for 2.00":                                             goods(journal.Goods{Kind: "item", Item: "plug for 10 mm", Count: 20}, 200),
		"bought 20 × plug for 10 mm":                                                      goods(journal.Goods{Kind: "item", Item: "plug for 10 mm", Count: 20}, -1),
	} {
		says(t, line, length.In, want)
	}
}

func TestALineThatTellsNothingIsRefusedAtItsPlace(t *testing.T) {
	for line, c := range map[string]struct {
		at   int
		want string // what the error says, in part
	}{
		"":                                          {1, "nothing is said"},
		"found a board":                             {1, "made, measured, pushed, bought, wrong, spoiled, meant, finished or delivered"},
		"made":                                      {5, "the work is missing"},
		"made C2.1":                                 {10, "the work is missing"},
		"made C2.1 whittle":                         {11, "glued, sized, shaped, filled, sanded, finished, fitted"},
		"made C2.1 bought":                          {11, "cut-pipe"},
		"made C2.1 thread wide":                     {18, "a number is missing"},
		"made  C2.1 thread 26  1/0":                 {24, "a fraction needs whole numbers"},
		"made C2.1 thread -26 in":                   {18, "not more than nothing"},
		"made C2.1 thread 0":                        {18, "not more than nothing"},
		"made A1.1 size 1 × 2 × 3 × 4":              {28, "a fourth measure"},
		"made A1.1 size 1 ×":                        {19, "a length is missing"},
		"made A1.1 size 1 × × 3":                    {20, "a length is missing"},
		"made A1.1 size 42 in wide":                 {22, "unexpected"},
		"made A1.1 size 4 × 5y × 6":                 {21, "unexpected"},
		"made C2.1 thread from":                     {22, "the stock is missing"},
		"made C2.1 thread from S1 26 in":            {26, "taking 26 5/8 in"},
		"made C2.1 thread from S1 taking":           {32, "a length is missing"},
		"made C2.1 thread in 10001 h":               {21, "at most 10000 h"},
		"made C2.1 thread in 25 minutes":            {18, "no length"},
		"made C2.1 thread again soon":               {18, "no length"},
		"measured":                                  {9, "the two things"},
		"measured to post 24 in":                    {10, "the two things"},
		"measured rail to":                          {15, "the two things"},
		"measured rail to 24":                       {20, "do not end in a length"},
		"measured rail to post":                     {22, "do not end in a length"},
		"measured rail to post 0":                   {23, "not more than nothing"},
		"measured rail to rail 24":                  {1, "a distance lies between two"},
		"bought":                                    {7, "bought 8 × tee 1"},
		"bought oak":                                {8, "neither a board, a stick or a sheet"},
		"bought 8 tee 1":                            {10, "not followed by ×"},
		"bought 8 ×":                                {10, "not followed by ×"},
		"bought 0 × tee 1":                          {1, "how many"},
		"bought 1/3 × tee 1":                        {8, "three decimals"},
		"bought 8×for 2":                            {10, "not followed by ×"},
		"bought 8 × tee 1 for 31,20":                {22, "as 38.50"},
		"bought 8 × tee 1 for 1000001":              {22, "at most 1000000"},
		"bought board white-oak 118 × 6 in as P1":   {35, "3 measures at least"},
		"bought board white-oak 118 × 6 × 1 in":     {38, "the tag is missing"},
		"bought board white-oak 9 × 6 × 1 as":       {36, "the tag is missing"},
		"bought board as P1":                        {14, "what it is of"},
		"bought sheet ply-18 96 as B1":              {24, "2 measures at least"},
		"bought stick 3/4 as S1":                    {18, "the length of the stick"},
		"bought stick 3/4 21 ft as S1 1 rough edge": {30, "rough edges of a board"},
		"bought board oak 9 × 6 × 1 as P1 rough":    {34, "1 rough edge or 2 rough edges"},
		"wrong":                            {6, "as wrong C2.1"},
		"wrong A1.1 split":                 {17, "as wrong C2.1"},
		"wrong A1.1:":                      {12, "behind the colon"},
		"wrong : split":                    {14, "as wrong C2.1"},
		"wrong A1.1 hole 1 in: split":      {21, "as hole 1 in at 6 × 3 in"},
		"wrong A1.1 hole 1 in at 6: split": {25, "as at 6 × 3 in"},
		"wrong A1.1 short : slipped":       {18, "a length, as"},
		"meant C2.1":                       {11, "meant C2.1 for the rack"},
		"wrong A1.1 wide: split":           {12, "a number is missing"},
		"spoiled":                          {8, "what went wrong"},
		"spoiled A1.1":                     {13, "what went wrong"},
		"finished today":                   {10, "finished alone"},
		"delivered by hand":                {11, "delivered alone"},
		"finished\n":                       {1, "one line"},
		"finished \xff":                    {1, "one line"},
		"spoiled A1.1 " + strings.Repeat("o", journal.MostPath+1): {1, "the why must be one line"},
	} {
		_, err := journal.Say(line, length.In)
		var bad *journal.SayError
		if !errors.As(err, &bad) || bad.At != c.at || bad.Message == "" || bad.Want == "" || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.60q: %v", line, err)
		}
	}
}

func TestWhatALineTellsIsWhatTheLogShows(t *testing.T) {
	for _, line := range []string{
		"made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min again", "made A1.1 size 42 × 18 1/4 × 1 in in 1.5 h", "made A1.1 cut", "made A1.1 fitted in 65 min",
		"measured front left post to back left post 24 3/32 in", "measured rail to post 1 0 3/4 in inside", "pushed 20 lb on high board to the left moved 1/4 in",
		"bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 1 rough edge for 38.50", "bought board white-oak 118 × 6 3/4 × 1 1/8 in as P1 2 rough edges",
		"bought stick 1 1/4 252 in as S1 for 41.00", "bought sheet birch-plywood-18 96 × 48 in as B1", "bought 8 × tee 1 for 31.20", "bought 0.5 × wax",
		"wrong C2.1 25 3/4 in: cut too short", "wrong A1.1: hole on the wrong side", "spoiled A1.1 hole on the wrong side", "finished", "delivered",
	} {
		h, err := journal.Say(line, length.MM)
		if err != nil {
			t.Error(err)
		} else if got := h.Words(length.SixtyFourth, ""); got != line {
			t.Errorf("%s is shown as %s", line, got)
		}
	}
}

// sayable draws a fact that a line can tell, with lengths that are multiples of the fineness.
func sayable(t *rapid.T, f length.Fineness) journal.Happened {
	one := rapid.Custom(func(t *rapid.T) journal.MM {
		return journal.MM(f.Step) * journal.MM(rapid.IntRange(1, 5000).Draw(t, "steps"))
	})
	three := [3]journal.MM{one.Draw(t, "long"), one.Draw(t, "wide"), one.Draw(t, "thick")}
	tag := rapid.SampledFrom([]string{"A1.1", "C2.1", "P1", "S12"}).Draw(t, "tag")
	name := rapid.SampledFrom([]string{"front left post", "back left post 1", "rail 2", "floor", "3", "wall x 1/2"})
	cents := rapid.Int64Range(-1, 100_000_000).Draw(t, "cents")
	h := made(tag, rapid.SampledFrom(append(journal.Works(), "blank cut", "shaped", "fitted")).Draw(t, "work"), three[:rapid.IntRange(0, 3).Draw(t, "measures")]...)
	h.HandsH, h.Again = float64(rapid.IntRange(0, 36000).Draw(t, "seconds"))/3600, rapid.Bool().Draw(t, "again")
	if rapid.Bool().Draw(t, "from stock") {
		h.From, h.Took = "S1", one.Draw(t, "took")*journal.MM(rapid.IntRange(0, 1).Draw(t, "told"))
	}
	why := rapid.SampledFrom([]string{"split", "hole on the wrong side: left", "to short for 5 min"}).Draw(t, "why")
	d := between(name.Draw(t, "from"), name.Draw(t, "to"), three[0], rapid.SampledFrom([]string{"", "outside", "inside"}).Draw(t, "over"))
	if d.Distance.From == d.Distance.To {
		d.Distance.From += " top"
	}
	p := pushed(name.Draw(t, "pushed on"), rapid.SampledFrom([]string{"front", "back", "left", "right"}).Draw(t, "side"), float64(rapid.IntRange(1, 4000).Draw(t, "quarters of a pound"))/4, rapid.SampledFrom([]string{"N", "lb", "lbf", "kg"}).Draw(t, "unit of the push"), one.Draw(t, "moved"))
	return rapid.SampledFrom([]journal.Happened{h, d, p,
		goods(journal.Goods{Kind: "board", Material: "white-oak", Quarters: rapid.SampledFrom([]string{"", "5/4", "16/4"}).Draw(t, "quarters"), Size: three, Tag: tag, Rough: rapid.IntRange(0, 2).Draw(t, "rough")}, cents),
		goods(journal.Goods{Kind: "stick", Material: rapid.SampledFrom([]string{"3/4", "1", "1 1/4", "DN20"}).Draw(t, "pipe"), Size: size(three[0]), Tag: tag}, cents),
		goods(journal.Goods{Kind: "sheet", Material: "birch-plywood-18", Size: size(three[0], three[1]), Tag: tag}, cents),
		goods(journal.Goods{Kind: "item", Item: rapid.SampledFrom([]string{"tee 1", "wood screw 10 × 1 in", "plug for 10 mm"}).Draw(t, "item"), Count: float64(rapid.IntRange(1, 99_000).Draw(t, "count")) / 1000}, cents),
		{What: journal.Wrong, Part: tag, Why: why, Shape: h.Shape}, {What: journal.Spoiled, Part: tag, Why: why}, finished, {What: journal.Delivered},
	}).Draw(t, "fact")
}

func TestWhatTheLogShowsIsSaidAgainAsTheSameFact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(append(length.Finenesses(), length.Fineness{Step: length.Millimetre / 10})).Draw(t, "fineness")
		h := sayable(t, f)
		words := h.Words(f, rapid.SampledFrom([]string{"", "EUR"}).Draw(t, "currency"))
		back, err := journal.Say(words, rapid.SampledFrom([]length.Unit{length.MM, length.In, length.Ft}).Draw(t, "unit"))
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(h, back); diff != "" {
			t.Fatalf("%s\n%s", words, diff)
		}
	})
}

// FuzzSay holds that no line makes the reader panic, that an error names a place of the line, and that what is read
// is shown and read again the same.
func FuzzSay(f *testing.F) {
	for _, line := range []string{
		"made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min again", "made A1.1 size 42 × 18 1/4 in", "made a cut 1x2X3 from b in 1/3h",
		"measured front left post to back left post 24 3/32 in outside", "measured a to 1 1' 3 - 4", "measured 0 to - 1", "measured a to b to ½ 2' 3\"",
		"pushed 20 lb on high board to the left moved 1/4 in", "pushed 1/3N on on to the moved to the back moved 1 mm",
		"bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 2 rough edges for 38.50 EUR", "bought stick 1 1/4 21 ft as S1 for 41",
		"bought sheet birch-plywood-18 96 × 48 in as B1", "bought 8 × tee 1 for 2 for 31.20", "bought .125 x a for 10 mm", "bought 10×for 0", "wrong A1.1 4 × 3: a: b", "spoiled A1.1 hole", "finished", "delivered", "made\u00a0a\u2003size 3\u202fmm",
	} {
		f.Add(line, true)
		f.Add(line, false)
	}
	f.Fuzz(func(t *testing.T, line string, metric bool) {
		unit := length.In
		if metric {
			unit = length.MM
		}
		h, err := journal.Say(line, unit)
		var bad *journal.SayError
		switch {
		case errors.As(err, &bad) && (bad.At < 1 || bad.At > utf8.RuneCountInString(line)+1 || bad.Message == "" || bad.Want == ""):
			t.Fatalf("%q: %+v is no place of it", line, bad)
		case err != nil && bad == nil:
			t.Fatalf("%q: %v", line, err)
		case err != nil:
			return
		}
		words := h.Words(length.Fineness{}, "")
		back, err := journal.Say(words, unit)
		if diff := cmp.Diff(h, back); err != nil || diff != "" {
			t.Fatalf("%q is shown as %q, which is read as %v: %s", line, words, err, diff)
		}
	})
}
