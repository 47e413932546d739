package piece_test

import (
	"slices"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/piece"
)

// Public question and answer, value recomputed: a base whose skin of 1/4 in stands on both sides and was left
// out is 1/2 in too small. A size that follows from the skin by a formula can't leave it out, and says what
// it depends on.
func TestASkinOnBothSidesIsNotLeftOutOfWhatDependsOnIt(t *testing.T) {
	const text = `rodwright: 1
piece: shelf
unit: in
wood: {species: white-oak, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
sizes:
  skin: 0 in
  base: 30 in
  over all: base + 2 * skin
panels:
  top: {length: over all, width: 12 in, thickness: 1 in, level: 10 in, at: [0, 0], sits: by place}
`
	sizes := func(skin string) (over piece.Size) {
		doc, err := piece.Read("shelf", []byte(strings.Replace(text, "skin: 0 in", "skin: "+skin, 1)))
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(doc.Sizes, func(s piece.Size) bool { return s.Name == "over all" })
		if got := doc.Panels[0].Length; got != doc.Sizes[i].Value {
			t.Errorf("the top is %v in, the size %v in", got.Inches(), doc.Sizes[i].Value.Inches())
		}
		return doc.Sizes[i]
	}
	bare, skinned := sizes("0 in"), sizes("1/4 in")
	if d := skinned.Value - bare.Value; d != length.Inch/2 {
		t.Errorf("the skin makes %v in, want 0.5", d.Inches())
	}
	if !slices.Contains(skinned.Uses, "skin") {
		t.Errorf("over all uses %q", skinned.Uses)
	}
}
