package journal

import "rodwright/length"

const wantWrong = "the tag, what it is now where that can be told, a colon and why, as wrong C2.1 25 3/4 in: cut too short"

// sayWrong reads what went wrong with a part, behind a colon, and before it what the part is like now: its size, by how
// much it is short or narrow, or a hole where none should be.
func sayWrong(p phrase, unit length.Unit) (Happened, error) {
	h := Happened{What: Wrong}
	now, why, ok := p.atColon()
	switch {
	case !ok || len(now.words) == 0:
		return h, p.wrong(len(p.words), "the tag, a colon and what went wrong are missing", wantWrong)
	case len(why.words) == 0:
		return h, p.wrong(len(p.words), "what went wrong is missing behind the colon", wantWrong)
	}
	h.Part, h.Why = now.words[0].text, why.String()
	if now = now.from(1); len(now.words) == 0 {
		return h, nil
	}
	h.Shape = &Shape{Measured: true}
	var err error
	switch now.words[0].text {
	case "short":
		h.Shape.Size[0], err = lacks(now.from(1), unit)
	case "narrow":
		h.Shape.Size[1], err = lacks(now.from(1), unit)
	case "hole":
		h.Shape.Measured = false
		h.Shape.Openings, err = sayHole(now.from(1), unit)
	default:
		h.Shape.Size, _, err = now.measures(unit)
	}
	return h, err
}

// lacks reads by how much a size is less than it should be: less than nothing, until the plan tells what it should be.
func lacks(p phrase, unit length.Unit) (MM, error) {
	by, err := p.measure(unit)
	return -by, err
}

// sayHole reads a hole where none should be: DIAMETER at X × Y [deep DEPTH], its centre from the part's datum, along the
// grain and across it.
func sayHole(p phrase, unit length.Unit) ([]Opening, error) {
	at := p.index("at")
	if at < 1 {
		return nil, p.wrong(len(p.words), "where the hole is is missing", "its diameter and its centre from the datum, as hole 1 in at 6 × 3 in")
	}
	across, err := p.upto(at).measure(unit)
	if err != nil {
		return nil, err
	}
	place, depth := p.from(at+1), MM(0)
	if deep := place.index("deep"); deep >= 0 {
		if depth, err = place.from(deep + 1).measure(unit); err != nil {
			return nil, err
		}
		place = place.upto(deep)
	}
	centre, n, err := place.measures(unit)
	if err == nil && n != 2 {
		err = place.wrong(0, "a place has two measures", "along the grain and across it, as at 6 × 3 in")
	}
	if err != nil {
		return nil, err
	}
	half := MM(length.Length(across).Half())
	return []Opening{{
		Kind: "hole", At: [2]MM{centre[0] - half, centre[1] - half}, Size: [2]MM{across, across}, Round: true, Depth: depth,
	}}, nil
}

// sayMeant reads what a part is for from now on.
func sayMeant(p phrase, _ length.Unit) (Happened, error) {
	const want = "the tag and its place, as meant C2.1 for back left post 1, or meant C2.1 for the rack"
	if len(p.words) < 3 || p.words[1].text != "for" {
		return Happened{}, p.wrong(min(1, len(p.words)), "what it is for is missing", want)
	}
	h := Happened{What: Meant, Part: p.words[0].text}
	if place := p.from(2).String(); place != "the rack" {
		h.Place = place
	}
	return h, nil
}
