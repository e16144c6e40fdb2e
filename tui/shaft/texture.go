package shaft

import (
	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// Lumps of charcoal are drawn so many columns and half rows large.
const lumpColumns, lumpHalves = 2, 2

// lump is the shade of the lump that a column and half row of a layer belong to.
// It goes by the place in the layer, so that lumps sink with it.
func (p *painter) lump(s picture.Slice, x, h int) int {
	down := h - p.p.half(s.Top)
	row := down / lumpHalves
	x += hash(s.Charge, row, 1) % lumpColumns
	return hash(s.Charge, x/lumpColumns, row) % glow.Lumps
}

// ore is how ore looks, by its heat in Celsius.
type ore int

const (
	damp     ore = iota // damp or roasted: its own red
	black               // turned black
	iron                // some grains are iron
	dripping            // half of it has run off
)

func oreAt(celsius float64) ore {
	switch {
	case celsius < 430:
		return damp
	case celsius < 800:
		return black
	case celsius < 1100:
		return iron
	}
	return dripping
}

// grain is the character of a grain of ore in a cell, 0 for none, and whether it
// is iron.
func (o ore) grain(charge, x, down int) (c rune, metal bool) {
	n := hash(charge+101, x, down)
	share := 86
	if o == dripping {
		share = 50
	}
	if n%100 >= share {
		return 0, false
	}
	return grains[n/100%len(grains)], o >= iron && n/1000%10 < 3
}

var grains = []rune("▚▞▖▗▘▝▙▜▟▛")

// The colours of ore: its own red, turned black, and iron.
var oreInks = [...]struct {
	full  glow.Colour
	index uint8
	base  uint8
}{{glow.Colour{R: 0xb4, G: 0x66, B: 0x3f}, 130, 3}, {glow.Colour{R: 0x0d, G: 0x0b, B: 0x0b}, 232, 0}, {glow.Colour{R: 0xff, G: 0xf4, B: 0xe0}, 230, 15}}

func (p *painter) oreInk(o ore, metal bool) cell.Ink {
	c := oreInks[min(int(o), int(black))]
	if metal {
		c = oreInks[2]
	}
	switch p.th.Profile {
	case theme.True:
		return full(c.full)
	case theme.Fixed256:
		return cell.Index(c.index)
	case theme.Base16:
		return cell.Basic(c.base)
	}
	return 0
}

// oreIn tells whether the ore of a layer lies in a row.
func (p *painter) oreIn(s picture.Slice, row int) bool {
	if s.OreTop <= s.OreBottom {
		return false
	}
	cm := p.p.CM(row)
	return cm <= s.OreTop && cm > s.OreBottom || row == p.p.Row(s.OreTop-p.p.PerRow/4) // a thin one still shows
}

func full(c glow.Colour) cell.Ink { return cell.Full(c.R, c.G, c.B) }
