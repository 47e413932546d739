package cutting_test

import (
	"fmt"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/draw/cutting"
	"rodwright/layout"
	"rodwright/length"
)

// Two sticks cut alike are one picture.
func ExampleOf() {
	const mm = length.Millimetre
	used := func(a, b string) cut.Used {
		return cut.Used{Stock: "pipe 1 m", Parts: []cut.Placed{
			{Tag: a, Size: [2]length.Length{600 * mm}},
			{Tag: b, At: [2]length.Length{603 * mm}, Size: [2]length.Length{300 * mm}},
		}}
	}
	l := layout.Layout{
		Task: layout.Task{Kind: layout.OfSticks, Material: "3/4", Sticks: &cut.StickProblem{
			Kerf:  3 * mm,
			Stock: []cut.StickStock{{Tag: "pipe 1 m", Length: 1000 * mm, Count: cut.Any}},
			Parts: []cut.StickPart{{Tag: "C1.1"}, {Tag: "C1.2"}, {Tag: "C2.1"}, {Tag: "C2.2"}},
		}},
		Answer: &cut.Answer{Used: []cut.Used{used("C1.1", "C2.1"), used("C1.2", "C2.2")}},
	}
	for _, d := range cutting.Of(l, draw.Style{Fineness: length.WholeMM, Width: 180, Height: 230}) {
		fmt.Println(d.ID)
		fmt.Println(d.Alt)
	}
	// Output:
	// cut-3-4-1
	// pipe 3/4, how its sticks are cut; lengths to scale 1 : 10, widths not. Sticks 1 and 2, 2 alike: C1 600 mm, C2 300 mm.
}
