package table_test

import (
	"fmt"

	"rodwright/length"
	"rodwright/trade/table"
)

func Example() {
	const text = `id,od_in,source,how
3/4,1.050,B36.10,read
1,1.315,B36.10,memory
`
	for _, r := range table.Read(text) {
		fmt.Println(r.Text("id"), length.SixtyFourth.Show(r.Inches("od_in")), "by", r.Source())
	}
	fmt.Println(table.Unknown("pipe size", "3/5", []string{"1", "3/4"}))
	// Output:
	// 3/4 ≈ 1 3/64 in by ASME B36.10M Welded and Seamless Wrought Steel Pipe
	// 1 ≈ 1 5/16 in by ASME B36.10M Welded and Seamless Wrought Steel Pipe, from memory
	// unknown pipe size "3/5"; near: 3/4, 1
}
