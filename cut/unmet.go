package cut

import (
	"fmt"

	"rodwright/length"
)

// unmet counts, by tag, the pieces of a layout that found no place.
func unmet(a *Answer) map[string]int {
	count := map[string]int{}
	for _, n := range a.NotPlaced {
		count[n.Tag]++
	}
	return count
}

// tell sets the reason of every piece that found no place, by its tag.
func (a *Answer) tell(why map[string]string) {
	for i := range a.NotPlaced {
		a.NotPlaced[i].Why = why[a.NotPlaced[i].Tag]
	}
}

// TellWhy says of every part that found no place why: no stick is long enough for it, or none is left, and how much is
// missing.
func (p *StickProblem) TellWhy(a *Answer) {
	count, why := unmet(a), map[string]string{}
	longest := -1
	for i, s := range p.Stock {
		if s.Count != 0 && p.Room(i) > 0 && (longest < 0 || p.Room(i) > p.Room(longest)) {
			longest = i
		}
	}
	for _, q := range p.Parts {
		switch n := count[q.Tag]; {
		case n == 0:
		case longest < 0:
			why[q.Tag] = "no stock is there"
		case q.Length > p.Room(longest):
			why[q.Tag] = fmt.Sprintf("longer than any stock (%s; %s gives %s)", Text(q.Length, p.Unit), p.Stock[longest].Tag, Text(p.Room(longest), p.Unit))
		default:
			why[q.Tag] = fmt.Sprintf("no stock left that takes %s: %d of %d are missing, %s in all",
				Text(q.Length, p.Unit), n, q.Count, Text(q.Length*length.Length(n), p.Unit))
		}
	}
	a.tell(why)
}

// TellWhy says of every part that found no place why: it is too long or too wide for every sheet, may not be turned as
// it would have to be, or no sheet is left, and how much is missing.
func (p *SheetProblem) TellWhy(a *Answer) {
	count, why := unmet(a), map[string]string{}
	for i, q := range p.Parts {
		n := count[q.Tag]
		if n == 0 {
			continue
		}
		if why[q.Tag] = p.neverFits(i); why[q.Tag] == "" {
			why[q.Tag] = p.noneLeft(a, i, n)
		}
	}
	a.tell(why)
}

// neverFits says why part i fits on no sheet, whatever else lies there and defects aside; nothing where it fits.
func (p *SheetProblem) neverFits(i int) string {
	q := p.Parts[i]
	size := Text(q.Length, p.Unit) + " × " + Text(q.Width, p.Unit)
	long, wide, grained, there := -1, -1, -1, false // the sheet that gives most, and one it would fit turned
	for k, s := range p.Sheets {
		in := p.Inside(k)
		if s.Count == 0 || in.Length <= 0 || in.Width <= 0 {
			continue
		}
		there = true
		turned := q.Width <= in.Length && q.Length <= in.Width
		if q.Length <= in.Length && q.Width <= in.Width || turned && q.Turn && !s.Grain {
			return ""
		}
		if turned {
			grained = k
		}
		if long < 0 || in.Length > p.Inside(long).Length {
			long = k
		}
		if wide < 0 || in.Width > p.Inside(wide).Width {
			wide = k
		}
	}
	switch {
	case !there:
		return "no sheet is there"
	case grained >= 0 && !q.Turn:
		return fmt.Sprintf("%s fits only turned on %s, and it may not be turned", size, p.Sheets[grained].Tag)
	case grained >= 0:
		return fmt.Sprintf("%s fits only turned on %s, and its grain forbids that", size, p.Sheets[grained].Tag)
	case q.Length > p.Inside(long).Length:
		return fmt.Sprintf("longer than any sheet within its trim (%s; %s gives %s)", Text(q.Length, p.Unit), p.Sheets[long].Tag, Text(p.Inside(long).Length, p.Unit))
	case q.Width > p.Inside(wide).Width:
		return fmt.Sprintf("wider than any sheet within its trim (%s; %s gives %s)", Text(q.Width, p.Unit), p.Sheets[wide].Tag, Text(p.Inside(wide).Width, p.Unit))
	}
	return fmt.Sprintf("larger than any sheet within its trim (%s)", size)
}

// noneLeft says what is missing of part i, of which n found no place.
func (p *SheetProblem) noneLeft(a *Answer, i, n int) string {
	q := p.Parts[i]
	size := Text(q.Length, p.Unit) + " × " + Text(q.Width, p.Unit)
	if p.moreThere(a, i) {
		return fmt.Sprintf("wherever a sheet takes %s it has a defect", size)
	}
	return fmt.Sprintf("no sheet left that takes %s: %d of %d are missing, %s in all", size, n, q.Count, areaText(q.Length, q.Width, n, p.Unit))
}

// areaText prints the area of n rectangles to four digits: square metres, or square inches where the unit is one of inches.
func areaText(l, w length.Length, n int, u length.Unit) string {
	if u == length.MM {
		return fmt.Sprintf("%.4g m²", l.MM()/1000*w.MM()/1000*float64(n))
	}
	return fmt.Sprintf("%.4g sq in", In(l, length.In)*In(w, length.In)*float64(n))
}

// moreThere reports whether a sheet that part i fits on is left unopened.
func (p *SheetProblem) moreThere(a *Answer, i int) bool {
	opened := map[string]int{}
	for _, u := range a.Used {
		opened[u.Stock]++
	}
	q := p.Parts[i]
	for k, s := range p.Sheets {
		in := p.Inside(k)
		fits := q.Length <= in.Length && q.Width <= in.Width || q.Turn && !s.Grain && q.Width <= in.Length && q.Length <= in.Width
		if fits && (s.Count == Any || opened[s.Tag] < int(s.Count)) {
			return true
		}
	}
	return false
}
