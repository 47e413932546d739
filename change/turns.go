package change

import "rodwright/finding"

// spot is where a finding belongs.
type spot struct{ check, place string }

// turns lists the findings whose verdict turned, those that are new and those that are no more. Several of one
// check and place count as their worst.
func turns(from, to []finding.Finding) []Turn {
	out := []Turn{}
	before, was := spots(from)
	after, is := spots(to)
	for _, s := range is {
		old, told := before[s]
		switch now := after[s]; {
		case told && old != now:
			out = append(out, Turn{s.check, s.place, old.String(), now.String()})
		case !told && now != finding.Stands:
			out = append(out, Turn{s.check, s.place, "", now.String()})
		}
	}
	for _, s := range was {
		if _, told := after[s]; !told && before[s] != finding.Stands {
			out = append(out, Turn{s.check, s.place, before[s].String(), ""})
		}
	}
	return out
}

// spots gives the worst verdict of each spot, and the spots in the order of the findings.
func spots(fs []finding.Finding) (map[spot]finding.Verdict, []spot) {
	at := make(map[spot][]finding.Finding, len(fs))
	var order []spot
	for _, f := range fs {
		s := spot{f.Check, f.Place}
		if at[s] == nil {
			order = append(order, s)
		}
		at[s] = append(at[s], f)
	}
	worst := make(map[spot]finding.Verdict, len(at))
	for s, several := range at {
		worst[s] = finding.Worst(several)
	}
	return worst, order
}
