package server

import (
	"errors"
	"net/http"
	"slices"

	"rodwright/journal"
	"rodwright/piece"
)

// stands refuses facts with which the piece could not be set out any more: a distance, most likely, that can't be meant. A
// piece that can't be set out already is let be, so that what broke it can be withdrawn.
func (h *history) stands(wanted []journal.Entry) error {
	if !slices.ContainsFunc(wanted, func(e journal.Entry) bool { return e.Kind == journal.Fact }) {
		return nil
	}
	u := h.until(h.Number)
	if _, err := u.now(); err != nil {
		return nil
	}
	for _, e := range wanted {
		if _, known := h.entry(e.ID); !known {
			u.add(e)
		}
	}
	_, err := u.now()
	var wrong *piece.Error
	if !errors.As(err, &wrong) {
		return nil
	}
	p := problem(http.StatusUnprocessableEntity, "with this the piece can't be set out: "+wrong.Message, "measure again; if it is right, change the design first, so that it can stand like this")
	p.Path = "entries"
	return p
}
