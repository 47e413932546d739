package journal

import (
	"slices"
	"strings"

	"rodwright/length"
)

const wantPush = "pushed 20 lb on high board to the left moved 1/4 in; the push in N, lbf, lb or kg"

// sayPushed reads a push test: how hard, on which panel, towards which side, and how far it moved there.
func sayPushed(p phrase, unit length.Unit) (Happened, error) {
	on, moved := p.index("on"), p.lastIndex("moved")
	switch {
	case on < 1:
		return Happened{}, p.wrong(0, "how hard it was pushed, and on what, is missing", wantPush)
	case moved < 0:
		return Happened{}, p.wrong(len(p.words), "how far it moved is missing", wantPush)
	case moved-on < 5 || p.words[moved-3].text != "to" || p.words[moved-2].text != "the" || !slices.Contains(pushSides, p.words[moved-1].text):
		return Happened{}, p.wrong(max(on+1, moved-1), "which panel was pushed, and to the front, back, left or right, is missing", wantPush)
	}
	push := &Push{On: p.from(on + 1).upto(moved - 3 - on - 1).String(), Towards: p.words[moved-1].text}
	v, rest, why := length.ScanNumber(p.upto(on).String())
	if push.Unit = strings.TrimSpace(rest); why == "" {
		push.Force, _ = v.Float64()
	}
	if _, known := push.Newtons(); why != "" || !known {
		return Happened{}, p.wrong(0, "this is no push with its unit", wantPush)
	}
	var err error
	push.Moved, err = p.from(moved + 1).measure(unit)
	return Happened{What: Pushed, Push: push}, err
}
