package forge

import (
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/house"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// way is the way to the picked piece beside the list: what is left of the ore with bars at
// one scale, what the forge took for a kilogram, and the tests at their place.
// It gives how many rows that took.
func way(g cell.Grid, sh *screen.Shared, b forge.Bench, i int) (y int) {
	th := sh.Theme
	_, h := g.Size()
	y = chain(g, sh, b, i)
	if rows := sh.Units.PieceTook(b, i); y+2 < h {
		y++
		g.Text(0, y, words.ForOneKg, th.Style(theme.Quiet))
		y++
		y += took(g, sh, rows, y)
	}
	if p := b.Pieces[i]; len(p.Tested) > 0 && y+5 < h {
		y++
		g.Text(0, y, words.TestsAt, th.Style(theme.Quiet))
		bar(g.Sub(cell.Rect{Y: y + 1, W: g.Bounds().W, H: 3}), sh, p)
		y += 4
		if y < h {
			g.Text(0, y, modelwords.MetalFound(forge.FoundIn(p)), th.Style(theme.Strong))
			y++
		}
		if len(p.Tested) > 1 && y < h {
			g.Text(0, y, words.NoClassOfOne, th.Style(theme.Quiet))
			y++
		}
	} else if y+2 < h {
		y++
		g.Text(0, y, modelwords.MetalFound(forge.FoundIn(p)), th.Style(theme.Strong))
		y++
	}
	if low, high, known := slagOf(b.Pieces[i]); known && y < h {
		y += g.Wrap(cell.Rect{Y: y, W: g.Bounds().W, H: min(2, h-y)}, modelwords.SlagBand(low, high), th.Style(theme.Text))
	}
	return y
}

// narrow is the same without bars, under the list.
func narrow(g cell.Grid, sh *screen.Shared, b forge.Bench, i int) {
	_, h := g.Size()
	in := g.Sub(cell.Rect{X: 2, W: g.Bounds().W - 2, H: h})
	y := chain(in, sh, b, i)
	took(in, sh, sh.Units.PieceTook(b, i), y)
}

// slagOf is the share of slag by the last weighing in water.
func slagOf(p house.Piece) (low, high float64, known bool) {
	for n := len(p.Weighed) - 1; n >= 0 && !known; n-- {
		low, high, known = forge.SlagIn(p.Weighed[n])
	}
	return low, high, known
}

// chain paints the masses on the way, the newest ones kept in sight, and gives how many
// rows that took.
func chain(g cell.Grid, sh *screen.Shared, b forge.Bench, i int) int {
	th := sh.Theme
	w, h := g.Size()
	steps := b.Chain(i)
	g.Text(0, 0, words.ChainOf, th.Style(theme.Quiet))
	first := max(len(steps)-max(h/2, 4), 0)
	y := 1
	const barAt = 17
	for n := first; n < len(steps) && y < h; n++ {
		s := steps[n]
		name, of := modelwords.ChainStep(b, steps, n)
		g.TextIn(cell.Rect{Y: y, W: 10, H: 1}, name, th.Style(theme.Text))
		g.TextRight(barAt-1, y, strings.TrimSuffix(sh.Units.Kg(entry.Kilogram(s.Kg)), " "+sh.Units.Name("kg")), th.Style(theme.Strong))
		long := int(math.Round(s.Kg / steps[0].Kg * float64(w-barAt)))
		role := theme.Bar
		switch {
		case s.Form == forge.OreStep:
			role = theme.OreBar
		case n == len(steps)-1:
			role = theme.Now
		}
		long = max(min(long, w-barAt-g.Width(of)-1), 1)
		block := '▆'
		if th.ASCII {
			block = '='
		}
		g.Fill(cell.Rect{X: barAt, Y: y, W: long, H: 1}, block, th.Style(role))
		g.TextIn(cell.Rect{X: barAt + long + 1, Y: y, W: max(w-barAt-long-1, 0), H: 1}, of, th.Style(theme.Quiet))
		y++
	}
	return y
}

// took paints what the forge took for a kilogram.
func took(g cell.Grid, sh *screen.Shared, rows [][3]string, y int) int {
	th := sh.Theme
	w, h := g.Size()
	if len(rows) == 0 && y < h {
		g.Text(0, y, words.NotKeyedYet, th.Style(theme.Quiet))
		return 1
	}
	n, most := 0, 1
	if h-y >= 2*len(rows) {
		most = 2 // none is pushed out by another's second line
	}
	for _, r := range rows {
		if y+n >= h {
			break
		}
		g.TextIn(cell.Rect{Y: y + n, W: 9, H: 1}, r[0], th.Style(theme.Text))
		x := 10 + g.Text(10, y+n, r[1], th.Style(theme.Strong)) + 2
		n += max(1, g.Wrap(cell.Rect{X: x, Y: y + n, W: w - x, H: min(most, h-y-n)}, r[2], th.Style(theme.Quiet)))
	}
	return n
}

// bar is the piece to length, with a letter at the place of each test.
func bar(g cell.Grid, sh *screen.Shared, p house.Piece) {
	th := sh.Theme
	w, _ := g.Size()
	long := w - 3
	shade := '▒'
	if th.ASCII {
		shade = '-'
	}
	g.Fill(cell.Rect{W: long, H: 2}, shade, th.Style(theme.Bar))
	length := forge.LengthOf(p)
	for n, t := range p.Tested {
		if part, known := forge.PlaceOn(t.Place, length); known && t.Test != forge.Hammer {
			g.Text(min(int(math.Round(part*float64(long))), long-1), n%2, testLetter(n), th.Style(theme.Tag))
		}
	}
	if length > 0 {
		g.Text(0, 2, "0", th.Style(theme.Quiet))
		g.TextRight(long, 2, words.CentimetresLong(sh.Units, length), th.Style(theme.Quiet))
	}
}

// testLetter names a test of a piece.
func testLetter(n int) string { return string(rune('a' + n%26)) }

// tests lists the tests of a piece, the newest kept in sight: in two columns where there is
// room.
func tests(g cell.Grid, sh *screen.Shared, b forge.Bench, i int) {
	th := sh.Theme
	w, h := g.Size()
	p := b.Pieces[i]
	if h < 1 {
		return
	}
	if len(p.Tested) == 0 {
		g.TextIn(cell.Rect{X: 2, W: w - 3, H: 1}, draw.InParts(g, words.NoTestYet, w-3, 1), th.Style(theme.Quiet))
		return
	}
	columns := 1
	if w >= 100 {
		columns = 2
	}
	y0 := 0
	if columns == 1 {
		g.TextIn(cell.Rect{X: 2, W: w - 3, H: 1}, modelwords.MetalFound(forge.FoundIn(p)), th.Style(theme.Strong))
		y0 = 1
	}
	room := (h - y0) * columns
	first := max(len(p.Tested)-room, 0)
	wide := w / columns
	for n := first; n < len(p.Tested); n++ {
		t := p.Tested[n]
		x, y := (n-first)%columns*wide+2, (n-first)/columns+y0
		g.Text(x, y, testLetter(n), th.Style(theme.Strong))
		said := modelwords.Tested(entry.PieceTested{Test: t.Test, Result: t.Result, Place: t.Place, Note: t.Note})
		day := t.At.Format("2 Jan")
		if wide < 50 {
			day = ""
		}
		g.TextIn(cell.Rect{X: x + 3, Y: y, W: wide - 8 - g.Width(day), H: 1}, said, th.Style(theme.Text))
		g.TextRight(x+wide-4, y, day, th.Style(theme.Quiet))
	}
}
