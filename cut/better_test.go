package cut_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/cut"
)

func TestTheBetterOfTwoAnswersPlacesMoreThenCostsLess(t *testing.T) {
	left := []cut.NotPlaced{{Tag: "C1", Why: "no stock is left"}}
	for _, c := range []struct {
		name       string
		a, b, want *cut.Answer
	}{
		{"the only one", nil, &cut.Answer{Cost: 5, Bound: 4}, &cut.Answer{Cost: 5, Bound: 4}},
		{"the cheaper, with the closer bound of the dearer", &cut.Answer{Cost: 90, Bound: 80}, &cut.Answer{Cost: 85, Bound: 70}, &cut.Answer{Cost: 85, Bound: 80}},
		{"the earlier of two as dear, with the closer bound", &cut.Answer{Cost: 90, Bound: 80, Cuts: []cut.Setting{{N: 1}}}, &cut.Answer{Cost: 90, Bound: 88}, &cut.Answer{Cost: 90, Bound: 88, Cuts: []cut.Setting{{N: 1}}}},
		{"a bound that meets the cost proves it", &cut.Answer{Cost: 90, Bound: 80}, &cut.Answer{Cost: 95, Bound: 90}, &cut.Answer{Cost: 90, Bound: 90, Proven: true}},
		{"more placed, however dear", &cut.Answer{Cost: 50, Bound: 50, Proven: true, NotPlaced: left}, &cut.Answer{Cost: 90, Bound: 60}, &cut.Answer{Cost: 90, Bound: 60}},
		{"more placed first", &cut.Answer{Cost: 90, Bound: 60}, &cut.Answer{Cost: 50, Bound: 50, Proven: true, NotPlaced: left}, &cut.Answer{Cost: 90, Bound: 60}},
		{"what leaves something out keeps its own bound", &cut.Answer{Cost: 50, Bound: 40, NotPlaced: left}, &cut.Answer{Cost: 55, Bound: 45, NotPlaced: left}, &cut.Answer{Cost: 50, Bound: 40, NotPlaced: left}},
		{"a bound of other layouts is not taken over", &cut.Answer{Cost: 90, Bound: 70}, &cut.Answer{Cost: 95, Bound: 85, Of: cut.WithoutRecut}, &cut.Answer{Cost: 90, Bound: 70}},
		{"filled for value, the dearer with the lesser bound", &cut.Answer{Cost: 50, Bound: 70}, &cut.Answer{Cost: 55, Bound: 80}, &cut.Answer{Cost: 55, Bound: 70}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, cut.Better(c.a, c.b)); diff != "" {
				t.Error(diff)
			}
		})
	}
}
