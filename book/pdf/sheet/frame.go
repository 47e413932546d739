package sheet

// nest turns the strips of a sheet into the tree of their frames, from the depth given.
func nest(strips []placed, width float64, depth int) (out []Block) {
	for i := 0; i < len(strips); {
		chain := strips[i].in.chain()
		if len(chain) <= depth {
			for _, b := range strips[i].blocks {
				b.Y += strips[i].top
				out = append(out, b)
			}
			i++
			continue
		}
		f, j := chain[depth], i+1
		for j < len(strips) && strips[j].in.within(f) {
			j++
		}
		out = append(out, framed(f, strips[i:j], width, depth))
		i = j
	}
	return out
}

// framed returns the block of a frame around its strips on one sheet.
func framed(f *frame, strips []placed, width float64, depth int) Block {
	top, last := strips[0].top, strips[len(strips)-1]
	b := Block{
		Y: top, Width: width, Height: last.top + last.height - top,
		Tag: f.tag, Outline: f.outline, Level: f.level, Anchor: f.anchor, Link: f.link,
	}
	if f.paint != nil {
		b.Draw = func(p Pen, x, y float64) { f.paint(p, x, y, b.Height) }
	}
	b.Children = nest(strips, width, depth+1)
	for i := range b.Children {
		b.Children[i].Y -= top
	}
	return b
}
