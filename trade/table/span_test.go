package table_test

import (
	"math"
	"testing"

	"rodwright/trade/table"
)

func TestASpanIsReadInTheUnitThatIsWanted(t *testing.T) {
	rows := table.Read("low,high,note,source,how\n15,30,from wiping on,TRADE,memory\n,,nothing said,TRADE,memory\n")
	s := rows[0].Span(1.0 / 60)
	if s.Low != 0.25 || s.High != 0.5 || s.Middle() != 0.375 || s.Note != "from wiping on" || !s.Source.Memory || !s.Known() {
		t.Errorf("%+v", s)
	}
	if empty := rows[1].Span(1); !math.IsNaN(empty.Low) {
		t.Errorf("an empty cell is no number: %+v", empty)
	}
	if (table.Span{}).Known() {
		t.Error("a span that nothing was read into is not known")
	}
}
