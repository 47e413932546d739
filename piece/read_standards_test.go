package piece_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/piece"
)

func TestTheStandardsThatAPieceIsToMeet(t *testing.T) {
	for written, want := range map[string][]string{
		"":                              nil,
		"standards: iec-60335-1-tilt\n": {"iec-60335-1-tilt"},
		"standards: [iec-62368-1-push, iec-60598-2-7-tilt]\n": {"iec-62368-1-push", "iec-60598-2-7-tilt"},
	} {
		if got := read(t, placeLine, placeLine+written).Standards; !slices.Equal(got, want) {
			t.Errorf("%q: %q", written, got)
		}
	}
}

func TestAStandardThatIsNotKnownNamesNearOnes(t *testing.T) {
	for written, want := range map[string]string{
		"standards: [iec-60335-1-tlt]\n":                "near: iec-60335-1-tilt",
		"standards: [en-1022, en-1022]\n":               "leave one of them out",
		"standards: {tilt: 10}\n":                       "write a list",
		"place: {room: studio, threshold: 0}\n":         "",
		"place: {room: studio, threshold: very low}\n":  "",
		"standards: [{iec-60335-1-tilt: 10 degrees}]\n": "write one value",
		"standards: [iec-60335-1-tilt, [en-1022]]\n":    "write one value",
		"standards: |\n  iec-60335-1-tilt\n  en-1022\n": "without |",
	} {
		text := placeLine + written
		if strings.HasPrefix(written, "place") {
			text = written
		}
		_, err := piece.Read("test.piece.yaml", []byte("rodwright: 1\npiece: x\nunit: in\n"+text+"panels:\n  top: {length: 40 in, width: 20 in, thickness: 1 in, grain: along length, level: 29 in, at: [0, 0]}\n"))
		var e *piece.Error
		if !errors.As(err, &e) || !strings.Contains(e.Want, want) || e.Pos.Line == 0 {
			t.Errorf("%q: %v", written, err)
		}
	}
}

func TestTheThresholdThatAPieceIsRolledOver(t *testing.T) {
	if p := read(t, placeLine, "place: {room: studio, threshold: 3/4 in}\n").Place; p.Threshold != 3*in/4 {
		t.Errorf("%+v", p)
	}
	if p := read(t, placeLine, "place: {room: studio, threshold: 20 mm}\n").Place; p.Threshold != 20*length.Millimetre {
		t.Errorf("%+v", p)
	}
}
