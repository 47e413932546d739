package band

// lower is the lower triangle with the diagonal, row by row.
type lower [][]entry

// bandwidth returns the largest distance from the diagonal when unknown i stands at place[i].
func (l lower) bandwidth(place []int32) int {
	k := int32(0)
	for i, row := range l {
		for _, e := range row {
			k = max(k, place[i]-place[e.j], place[e.j]-place[i])
		}
	}
	return int(k)
}
