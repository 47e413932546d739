package marking_test

import (
	"fmt"
	"strings"

	"rodwright/draw/marking"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// A shelf with one notch round a post: the table says where to mark it.
func ExampleFeatures() {
	shelf := part.Part{
		Kind: part.Panel, Tag: "A1", Name: "shelf", Datum: "front left",
		Finished: [3]length.Length{900 * length.Millimetre, 300 * length.Millimetre, 27 * length.Millimetre},
		Features: []part.Feature{{
			Kind: piece.NotchFeature, Opens: part.FarEdge, Radius: 6 * length.Millimetre, Why: "round back left post",
			At:   [2]length.Length{50 * length.Millimetre, 240 * length.Millimetre},
			Size: [2]length.Length{40 * length.Millimetre, 60 * length.Millimetre},
		}},
	}
	head, rows := marking.Features(shelf, length.WholeMM)
	for _, r := range append([][]string{head}, rows...) {
		fmt.Println(strings.TrimSpace(strings.Join(r, "  ")))
	}
	// Output:
	// What  Along  Across  Size  Radius  Depth  Why
	// a  notch  50 mm  240 mm  40 × 60 mm  6 mm  through  round back left post
}
