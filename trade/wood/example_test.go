package wood_test

import (
	"fmt"

	"rodwright/length"
	"rodwright/trade/wood"
)

// A flat-sawn white oak board of 14 1/2 in, made at 8 % MC, in a damp greenhouse.
func Example() {
	oak, err := wood.Lookup("white-oak")
	if err != nil {
		fmt.Println(err)
		return
	}
	wet, err := wood.EMC(22.5, 85)
	if err != nil {
		fmt.Println(err)
		return
	}
	grows, err := wood.Change(oak, wood.Flat, 29*length.Inch/2, 8, wet.Value)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("comes to %s\n", wet.Show(length.Sixteenth))
	fmt.Printf("grows %.3f in, %s\n", grows.Value/25.4, grows.Formula.Text)
	// Output:
	// comes to 17.9 %
	// grows 0.544 in, ΔD = D·(MC2 − MC1)/(100·F/S − F + MC1)
}
