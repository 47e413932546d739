package shop

import (
	"encoding/json"
	"fmt"
)

// Canonical returns the whole shop as bytes that are the same for the same shop and differ for different
// ones: what the hash of a build's input covers. It is no file format.
func (s *Shop) Canonical() []byte {
	text, err := json.Marshal(struct {
		*Shop
		Prices map[string]Price // written in the order of the names
	}{s, s.prices})
	if err != nil { // a number that JSON has no word for; Go prints maps in the order of their keys too
		return fmt.Appendf(nil, "%+v", *s)
	}
	return text
}
