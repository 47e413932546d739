package finding_test

import (
	"fmt"
	"regexp"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
)

func ExampleNames() {
	fmt.Println(finding.Names([]finding.Finding{
		{Check: "tip", Place: "to the back, with 2 watering cans"}, {Check: "fit", Place: "⌀ 3/8"}, {Check: "fit", Place: "3/8"}, {},
	}))
	// Output:
	// [tip-to-the-back-with-2-watering-cans fit-3-8 fit-3-8-2 finding]
}

func TestEveryFindingHasANameOfItsOwn(t *testing.T) {
	good := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	rapid.Check(t, func(t *rapid.T) {
		var fs []finding.Finding
		word := rapid.OneOf(rapid.SampledFrom([]string{"a", "a-2", "A 2", "", "longest-of-all-words-that-anybody-would-ever-put-into-the-name-of-a-place"}), rapid.String())
		for range rapid.IntRange(0, 12).Draw(t, "findings") {
			fs = append(fs, finding.Finding{Check: word.Draw(t, "check"), Place: word.Draw(t, "place")})
		}
		seen := map[string]bool{}
		for _, n := range finding.Names(fs) {
			if seen[n] || !good.MatchString(n) || len(n) > 70 {
				t.Fatalf("the name %q", n)
			}
			seen[n] = true
		}
	})
}
