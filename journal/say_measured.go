package journal

import "rodwright/length"

const wantDistance = "measured front left post to back left post 24 3/32 in, with outside or inside behind it where the tape was not laid to the centres"

func sayMeasured(p phrase, unit length.Unit) (Happened, error) {
	d := &Distance{}
	if n := len(p.words); n > 0 && (p.words[n-1].text == OverOutside || p.words[n-1].text == OverInside) {
		d.Over, p = p.words[n-1].text, p.upto(n-1)
	}
	to := p.index("to")
	if to < 1 || to+1 >= len(p.words) {
		return Happened{}, p.wrong(max(to, 0), "the two things between which it was measured are missing", wantDistance)
	}
	at, ok := p.longest(to+2, unit)
	if !ok {
		return Happened{}, p.wrong(len(p.words), "the names do not end in a length", wantDistance)
	}
	var err error
	if d.Value, err = p.from(at).measure(unit); err != nil {
		return Happened{}, err
	}
	d.From, d.To = p.upto(to).String(), p.from(to+1).upto(at-to-1).String()
	return Happened{What: Measured, Distance: d}, nil
}
