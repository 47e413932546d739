package journal

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rodwright/length"
)

// The greatest sizes of what a fact holds.
const (
	mostThings = 200       // openings, profiles and defects of one thing
	mostHours  = 10_000    // hours with hands
	mostCount  = 1_000_000 // pieces, and hundredths by as many
)

// The words of the trade that a fact uses for itself.
var (
	openingKinds = []string{"notch", "hole", "slot", "cut-out", "relief"}
	sides        = []string{"start end", "far end", "near edge", "far edge"}
	defectKinds  = []string{"knot", "split", "wane", "sap", "void"}
	defectFaces  = []string{"both", "good", "back"}
)

// Check reports the first value of the fact that can't be, as an *EntryError.
func (h Happened) Check() error {
	for _, check := range []func() error{h.checkWhat, h.checkMembers, h.checkTexts} {
		if err := check(); err != nil {
			return err
		}
	}
	switch h.What {
	case Made:
		return h.checkMade()
	case Wrong:
		return h.checkWrong()
	case Spoiled, Meant:
		return h.checkThing()
	case Bought:
		return h.Goods.check()
	case Measured:
		return h.Distance.check()
	case Pushed:
		return h.Push.check()
	}
	return nil
}

func (h Happened) checkWhat() error {
	switch h.What {
	case Bought, Made, Measured, Pushed, Wrong, Spoiled, Meant, Finished, Delivered:
		return nil
	}
	return &EntryError{"fact.what", fmt.Sprintf("is %q: it must be bought, made, measured, pushed, wrong, spoiled, meant, finished or delivered", string(h.What))}
}

// checkMembers reports a member that is lacking, or that belongs to another fact.
func (h Happened) checkMembers() error {
	made := h.What == Made
	shape := made || h.What == Wrong
	part := shape || h.What == Spoiled || h.What == Meant
	for _, m := range []struct {
		field   string
		there   bool
		belongs bool
		to      string
	}{
		{"thing", h.Thing != "", part, "a part"},
		{"part", h.Part != "", part, "a part"},
		{"place", h.Place != "", part, "a part"},
		{"work", h.Work != "", made, "what is made"},
		{"shape", h.Shape != nil, shape, "what is made, or what went wrong with it"},
		{"hands_h", h.HandsH != 0, made, "what is made"},
		{"plan_h", h.PlanH != 0, made, "what is made"},
		{"again", h.Again, made, "what is made"},
		{"from", h.From != "", shape, "what is made, or stock that went wrong"},
		{"took", h.Took != 0, shape, "what is made, or stock that went wrong"},
		{"goods", h.Goods != nil, h.What == Bought, "what is bought"},
		{"distance", h.Distance != nil, h.What == Measured, "what is measured"},
		{"push", h.Push != nil, h.What == Pushed, "what is pushed"},
	} {
		if m.there && !m.belongs {
			return &EntryError{"fact." + m.field, "belongs to " + m.to}
		}
	}
	switch {
	case h.What == Bought && h.Goods == nil:
		return &EntryError{"fact.goods", "must tell what was bought"}
	case h.What == Measured && h.Distance == nil:
		return &EntryError{"fact.distance", "must tell what was measured"}
	case h.What == Pushed && h.Push == nil:
		return &EntryError{"fact.push", "must tell how hard it was pushed and how far it moved"}
	}
	return nil
}

func (h Happened) checkTexts() error {
	for _, t := range []struct{ field, text string }{{"part", h.Part}, {"place", h.Place}, {"work", h.Work}, {"from", h.From}, {"why", h.Why}} {
		if !oneLine(t.text, MostPath) {
			return &EntryError{"fact." + t.field, fmt.Sprintf("must be one line of at most %d letters", MostPath)}
		}
	}
	if h.Thing != "" && !isID(h.Thing) {
		return &EntryError{"fact.thing", "must be the id of the entry that first told of the part"}
	}
	return nil
}

// checkWrong reports what of a part on which something went wrong is not told: what it is like is told whole.
func (h Happened) checkWrong() error {
	if h.From != "" {
		return h.checkLost()
	}
	if err := h.checkThing(); err != nil {
		return err
	}
	if h.Shape == nil {
		return &EntryError{"fact.shape", "must tell what the part is like now"}
	}
	return h.Shape.check()
}

// checkLost reports what is not told of stock on which something went wrong: how much of its length is lost, and why.
func (h Happened) checkLost() error {
	switch {
	case h.Took <= 0 || !isSpan(h.Took):
		return &EntryError{"fact.took", "must tell how much of its length is lost"}
	case strings.TrimSpace(h.Why) == "":
		return &EntryError{"fact.why", "must say what went wrong"}
	case h.Thing != "" || h.Shape != nil || h.Part != "" || h.Place != "":
		return &EntryError{"fact.from", "is stock, which is no part"}
	}
	return nil
}

func (h Happened) checkThing() error {
	if h.Thing == "" {
		return &EntryError{"fact.thing", "must be the id of the entry that first told of the part"}
	}
	if h.What != Meant && strings.TrimSpace(h.Why) == "" {
		return &EntryError{"fact.why", "must say what went wrong"}
	}
	return nil
}

func (h Happened) checkMade() error {
	switch {
	case strings.TrimSpace(h.Place) == "":
		return &EntryError{"fact.place", "must name what the part is for"}
	case h.Shape == nil:
		return &EntryError{"fact.shape", "must tell what the part is like now"}
	case !(h.PlanH >= 0 && h.PlanH <= mostHours):
		return &EntryError{"fact.plan_h", fmt.Sprintf("must be hours from 0 to %d", mostHours)}
	case !(h.HandsH >= 0 && h.HandsH <= mostHours):
		return &EntryError{"fact.hands_h", fmt.Sprintf("must be hours from 0 to %d", mostHours)}
	case !isSpan(h.Took):
		return &EntryError{"fact.took", "must be a length from nothing to 1 km"}
	case h.Took > 0 && h.From == "":
		return &EntryError{"fact.from", "must name the board, stick or sheet of which length was used up"}
	}
	if _, ok := AfterWork(h.Work); !ok {
		return &EntryError{"fact.work", fmt.Sprintf("is %q: it must be one of %s, or the word of a state", h.Work, strings.Join(Works(), ", "))}
	}
	return h.Shape.check()
}

func (s *Shape) check() error {
	switch {
	case s.Kind != KindPanel && s.Kind != KindPipe:
		return &EntryError{"fact.shape.kind", "must be panel or pipe"}
	case strings.TrimSpace(s.Material) == "" || !oneLine(s.Material, MostActor):
		return &EntryError{"fact.shape.material", fmt.Sprintf("must name the wood, the sheet or the size of the pipe, in one line of at most %d letters", MostActor)}
	case len(s.Openings) > mostThings:
		return &EntryError{"fact.shape.openings", fmt.Sprintf("must be at most %d", mostThings)}
	case len(s.Profiles) > mostThings:
		return &EntryError{"fact.shape.profiles", fmt.Sprintf("must be at most %d", mostThings)}
	}
	least := map[string]int{KindPanel: 3, KindPipe: 1}[s.Kind]
	if !areSizes(s.Size, least) {
		return &EntryError{"fact.shape.size", fmt.Sprintf("must have %d measures of a %s, each more than nothing and at most 1 km", least, s.Kind)}
	}
	if !areSizes(s.Drawn, 0) {
		return &EntryError{"fact.shape.drawn", "must be what the plan said, or nothing where the part missed it"}
	}
	for _, o := range s.Openings {
		if err := o.check(); err != nil {
			return err
		}
	}
	for _, p := range s.Profiles {
		if err := p.check(); err != nil {
			return err
		}
	}
	return nil
}

func (o Opening) check() error {
	switch {
	case !slices.Contains(openingKinds, o.Kind):
		return &EntryError{"fact.shape.openings.kind", "must be one of " + strings.Join(openingKinds, ", ")}
	case o.Opens != "" && !slices.Contains(sides, o.Opens):
		return &EntryError{"fact.shape.openings.opens", "must be one of " + strings.Join(sides, ", ")}
	case !isSpan(o.Size[0]) || !isSpan(o.Size[1]) || o.Size[0] == 0 || o.Size[1] == 0:
		return &EntryError{"fact.shape.openings.size", "must be more than nothing and at most 1 km"}
	case !isSpan(abs(o.At[0])) || !isSpan(abs(o.At[1])):
		return &EntryError{"fact.shape.openings.at", "must lie within 1 km"}
	case !isSpan(o.Radius):
		return &EntryError{"fact.shape.openings.radius", "must be a length from nothing to 1 km"}
	case !isSpan(o.Depth):
		return &EntryError{"fact.shape.openings.depth", "must be a length from nothing, which is through, to 1 km"}
	}
	return nil
}

func (p Profile) check() error {
	switch {
	case !slices.Contains(sides, p.Side):
		return &EntryError{"fact.shape.profiles.side", "must be one of " + strings.Join(sides, ", ")}
	case strings.TrimSpace(p.Profile) == "" || !oneLine(p.Profile, MostActor):
		return &EntryError{"fact.shape.profiles.profile", fmt.Sprintf("must name the shape of the edge in one line of at most %d letters", MostActor)}
	case !isSpan(p.Size) || p.Size == 0:
		return &EntryError{"fact.shape.profiles.size", "must be more than nothing and at most 1 km"}
	}
	return nil
}

func (d *Distance) check() error {
	switch {
	case strings.TrimSpace(d.From) == "" || !oneLine(d.From, MostPath):
		return &EntryError{"fact.distance.from", fmt.Sprintf("must name the thing that stays where it is, in one line of at most %d letters", MostPath)}
	case strings.TrimSpace(d.To) == "" || !oneLine(d.To, MostPath):
		return &EntryError{"fact.distance.to", fmt.Sprintf("must name the thing that is moved, in one line of at most %d letters", MostPath)}
	case d.From == d.To:
		return &EntryError{"fact.distance.to", "is the thing itself: a distance lies between two"}
	case !isSpan(d.Value) || d.Value == 0:
		return &EntryError{"fact.distance.value", "must be more than nothing and at most 1 km"}
	case d.Over != OverCentres && d.Over != OverOutside && d.Over != OverInside:
		return &EntryError{"fact.distance.over", "must be outside or inside, or empty: between centres"}
	}
	return nil
}

// areSizes reports whether the first measures are there, and none is less than nothing or more than is kept.
func areSizes(size [3]MM, least int) bool {
	for i, v := range size {
		if !isSpan(v) || i < least && v == 0 {
			return false
		}
	}
	return true
}

// isSpan reports whether v is a length from nothing to the longest that is kept.
func isSpan(v MM) bool { return v >= 0 && v <= MM(length.Max) }

// abs is v without its sign; the least number, which has no opposite, is made the greatest.
func abs(v MM) MM {
	if v == math.MinInt64 {
		return math.MaxInt64
	}
	return max(v, -v)
}
