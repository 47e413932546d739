package piece

import (
	"rodwright/length"
	"rodwright/trade/sheet"
)

// sheetSlack is how far a measured sheet may be from the thickness it is sold by: more is another sheet.
const sheetSlack = length.Millimetre

// readSheet reads a panel of sheet goods. Its thickness is the sheet's nominal one unless it is written.
func (r *reading) readSheet(f fields, p *Panel) {
	n := f.scalar("sheet")
	if n == nil {
		return
	}
	s, err := sheet.Lookup(n.Text)
	if err != nil {
		r.unknownID(n.TextPos, "sheet", n.Text, err)
		return
	}
	p.Sheet = s.ID
	if !f.has("thickness") {
		p.Thickness = s.Thickness
		return
	}
	if p.Thickness != 0 && (p.Thickness-s.Thickness).Abs() > sheetSlack {
		r.fail(f.at.Entry("thickness").Pos, "leave thickness: out, or measure the sheet", "thickness: is %s, but %s is sold as %s",
			r.shown(p.Thickness), s.ID, r.shown(s.Thickness))
	}
}
