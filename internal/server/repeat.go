package server

import (
	"cmp"
	"crypto/sha256"
	"net/http"
	"reflect"
	"strconv"
	"strings"

	"github.com/google/uuid"

	"rodwright/internal/store"
	"rodwright/journal"
)

// idOf returns the id of an entry as it is kept, or a new one where its writer has none.
func idOf(sent, path string) (string, error) {
	if sent == "" {
		made, err := uuid.NewV7()
		return made.String(), err
	}
	id, err := uuid.Parse(sent)
	if err != nil || id.Version() != 7 {
		p := problem(http.StatusUnprocessableEntity, quoted(sent)+" is no id of an entry", "make a UUID of version 7 (RFC 9562), or leave it out")
		p.Path = path
		return "", p
	}
	return id.String(), nil
}

// following returns the id of an entry that follows from another, counted from 0. It is made of that other's, so that
// the same sent again writes the same.
func following(id string, i int) string {
	of, err := uuid.Parse(id)
	if err != nil {
		return ""
	}
	sum := sha256.Sum256([]byte(id + "/" + strconv.Itoa(i)))
	copy(of[6:], sum[:]) // the time stays
	of[6] = of[6]&0x0F | 0x70
	of[8] = of[8]&0x3F | 0x80
	return of.String()
}

// followed returns the facts that were written after an entry because they follow from it.
func (h *history) followed(id string) (out []journal.Happened) {
	for i := 0; ; i++ {
		e, ok := h.entry(following(id, i))
		if !ok || e.Fact == nil {
			return out
		}
		out = append(out, *e.Fact)
	}
}

// toldAgain returns the fact of an entry that was sent before, where the words tell it: what was filled in from the plan
// then stays as it was, whatever the plan has become.
func (h *history) toldAgain(line string, tape TapeIn, kept journal.Entry, path string) (*journal.Happened, error) {
	now, err := h.until(kept.Number - 1).now()
	if err != nil {
		return nil, err
	}
	said, err := journal.Say(line, tape.unit(now.Build.Doc.Unit))
	if err != nil {
		return nil, saidProblem(err, path)
	}
	if kept.Fact == nil || !tells(said, *kept.Fact, now.Record) {
		return nil, &store.InputError{Field: "id", Why: "was used for another entry"}
	}
	return kept.Fact, nil
}

// tells reports whether what was said is what a fact tells, as far as it was said.
func tells(said, kept journal.Happened, rec *journal.Record) bool {
	thing, _ := rec.Thing(kept.Thing)
	part := said.Part == kept.Part || strings.HasPrefix(kept.Part, said.Part+".") || said.Part == thing.Label
	return part && said.What == kept.What && said.Work == kept.Work && said.From == kept.From && said.Took == kept.Took && said.Why == kept.Why &&
		cmp.Or(said.HandsH, kept.HandsH) == kept.HandsH && (kept.Again || !said.Again) &&
		reflect.DeepEqual(said.Goods, kept.Goods) && sameDistance(said.Distance, kept.Distance) && reflect.DeepEqual(said.Push, kept.Push) && measures(said.Shape, kept.Shape)
}

// measures reports whether a shape has the sizes that were said.
func measures(said, kept *journal.Shape) bool {
	if said == nil {
		return true
	}
	if kept == nil {
		return false
	}
	for k, v := range said.Size {
		if v > 0 && v != kept.Size[k] {
			return false
		}
	}
	return true
}

// sameDistance reports whether two distances say the same; what was drawn then is the plan's to say.
func sameDistance(said, kept *journal.Distance) bool {
	if said == nil || kept == nil {
		return said == kept
	}
	a, b := *said, *kept
	a.Drawn, b.Drawn = 0, 0
	return a == b
}
