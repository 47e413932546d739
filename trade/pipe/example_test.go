package pipe_test

import (
	"fmt"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// A rail of 3/4 pipe between two tees whose centres stand 14 in apart.
func Example() {
	size, err := pipe.Lookup("3/4")
	if err != nil {
		fmt.Println(err)
		return
	}
	tee, err := size.Fitting(pipe.Tee)
	if err != nil {
		fmt.Println(err)
		return
	}
	cut, err := pipe.CutLength(14*length.Inch, tee, tee)
	if err != nil {
		fmt.Println(err)
		return
	}
	tape := length.SixtyFourth
	fmt.Printf("cut %.3f in, %s on the tape\n", cut.Cut.Inches(), tape.Show(cut.Cut))
	fmt.Printf("built %.3f to %.3f in\n", cut.Tightest.Inches(), cut.Loosest.Inches())
	fmt.Println("least distance", tape.Show(pipe.LeastBetween(tee, tee)))
	// Output:
	// cut 12.505 in, ≈ 12 1/2 in on the tape
	// built 13.857 to 14.143 in
	// least distance ≈ 2 7/8 in
}
