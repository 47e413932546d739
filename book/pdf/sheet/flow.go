package sheet

import (
	"math"
)

// hold says how firmly a strip stays with the strip after it.
type hold uint8

const (
	loose hold = iota
	soft       // on one sheet where the whole fits: the strips of a step
	hard       // parted only where even a whole sheet is too low: a heading and what it heads
)

// strip is a slice of the book as wide as the sheet's room, never parted itself. Its blocks are placed from
// its upper left corner.
type strip struct {
	height float64
	before float64 // clear space above; none at the top of a sheet
	after  float64 // clear space below; the greater of the two counts
	hold   hold
	fresh  bool // begins a sheet
	in     *frame
	blocks []Block
}

// frame is what strips that follow each other belong to: a paragraph, a table, a step.
type frame struct {
	in    *frame
	tag   string  // its structure type in the tagged file
	head  []strip // said again at the top of each further sheet
	paint func(p Pen, x, top, height float64)

	outline string // its name among the bookmarks; empty for none
	level   int
	anchor  string // what links lead to
	link    string // where a click leads
}

// chain returns the frames from the outermost to f.
func (f *frame) chain() []*frame {
	if f == nil {
		return nil
	}
	return append(f.in.chain(), f)
}

// placed is a strip at its distance from the top of the room.
type placed struct {
	strip
	top float64
}

// page is what stands on one sheet.
type page []placed

// pager lays strips on sheets, each with the same room.
type pager struct {
	room   float64
	sheets []page
	y      float64 // where the next strip goes
	last   strip
}

// paginate lays strips on sheets. Strips that hold together stay on one sheet where they fit; what is higher
// than a sheet is parted, first where it holds softly. No strip is higher than the room.
func paginate(strips []strip, room float64) []page {
	p := &pager{room: room, sheets: []page{nil}}
	p.place(strips, loose)
	return p.sheets
}

// place lays down strips, parted where they hold no firmer than at.
func (p *pager) place(strips []strip, at hold) {
	for i := 0; i < len(strips); {
		j := i + 1
		for j < len(strips) && strips[j-1].hold > at && !strips[j].fresh {
			j++
		}
		p.run(strips[i:j], at)
		i = j
	}
}

// run lays down strips that belong together.
func (p *pager) run(strips []strip, at hold) {
	if strips[0].fresh && p.y > 0 {
		p.turn()
	}
	if p.y+p.gap(strips[0])+height(strips) > p.room+1e-6 {
		long := p.heads(strips[0])+height(strips) > p.room+1e-6
		if long && at < hard && len(strips) > 1 {
			p.place(strips, at+1)
			return
		}
		if p.y > 0 {
			p.turn()
		}
	}
	for _, s := range strips {
		p.lay(s)
	}
}

// heads returns the height of what is said again when a sheet begins with the strip.
func (p *pager) heads(s strip) (h float64) {
	for _, f := range s.in.chain() {
		for _, head := range f.head {
			h += head.height
		}
	}
	return h
}

// lay puts one strip on the sheet, on a further one where it does not fit.
func (p *pager) lay(s strip) {
	if p.y > 0 && p.y+p.gap(s)+s.height > p.room+1e-6 {
		p.turn()
	}
	if p.y == 0 && len(p.sheets) > 1 {
		p.repeat(s)
	} else {
		p.y += p.gap(s)
	}
	p.put(s)
}

// repeat says the heads of the frames again that the strip goes on with.
func (p *pager) repeat(s strip) {
	for _, f := range s.in.chain() {
		if p.last.in.within(f) {
			for _, h := range f.head {
				p.put(h)
			}
		}
	}
}

func (f *frame) within(outer *frame) bool {
	for ; f != nil; f = f.in {
		if f == outer {
			return true
		}
	}
	return false
}

func (p *pager) put(s strip) {
	n := len(p.sheets) - 1
	p.sheets[n] = append(p.sheets[n], placed{s, p.y})
	p.y += s.height
	p.last = s
}

func (p *pager) turn() { p.sheets, p.y = append(p.sheets, nil), 0 }

// gap returns the clear space between what was laid last and the strip.
func (p *pager) gap(s strip) float64 {
	if p.y == 0 {
		return 0
	}
	return math.Max(p.last.after, s.before)
}

// height returns how high strips are from the top of the first to the foot of the last.
func height(strips []strip) (h float64) {
	for i, s := range strips {
		if i > 0 {
			h += math.Max(strips[i-1].after, s.before)
		}
		h += s.height
	}
	return h
}
