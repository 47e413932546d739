package examples_test

import (
	"fmt"
	"strings"
	"testing"

	"rodwright/examples"
	"rodwright/piece"
)

func Example() {
	for _, name := range examples.Names() {
		fmt.Println(name)
	}
	// Output:
	// large
	// low-bench
	// packing-table
	// stepped-stand
	// wall-shelf
}

func TestEveryExampleIsADocument(t *testing.T) {
	for _, name := range examples.Names() {
		text, err := examples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := piece.Read(name, text); err != nil {
			t.Error(err)
		}
	}
}

func TestAnExampleThatIsNotThereIsToldWithThoseThatAre(t *testing.T) {
	for _, name := range []string{"", "throne", "../examples/large", "large.piece.yaml"} {
		if _, err := examples.Text(name); err == nil || !strings.Contains(err.Error(), "packing-table") {
			t.Errorf("%q: %v", name, err)
		}
	}
}
