package chart

import (
	"math"
	"strconv"

	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Bar is one charge: how many minutes it took and what ore was in it.
type Bar struct {
	Number  int
	Minutes float64
	Ore     float64 // kg; 0 for none or not known
	Slow    bool    // it took longer than this smelt's usual
	Now     bool    // it is the one that burns
}

// Strip is the day at a sample: a bar a charge, minutes up and ore down.
type Strip struct {
	Bars  []Bar
	Most  float64 // minutes at the full height
	Ore   float64 // kg at the full depth; 0 where there is none
	Usual float64 // minutes of the usual interval, drawn as a tick on each bar and ahead; 0 for none
	Ahead int     // how many charges are still to come, as ticks
	// The captions, in words.
	Minutes, Charge, OreWord, NowWord, UsualWord, OreMost string
}

// gutter is the columns of the captions.
const gutter = 12

// Draw draws the strip on all of g: bars up over a row of numbers, bars down
// under it.
func (s Strip) Draw(g cell.Grid, th theme.Theme) {
	w, h := g.Size()
	if h < 3 || w < gutter+8 {
		return
	}
	up := h / 2
	if s.Ore <= 0 {
		up = h - 1
	}
	d := drawn{Strip: s, g: g, th: th, up: up, down: h - 1 - up}
	d.room(w)
	quiet := th.Style(theme.Quiet)
	g.Text(0, 0, s.Minutes, quiet)
	g.TextRight(gutter-1, 0, strconv.Itoa(int(s.Most)), quiet)
	g.Text(0, up, s.Charge, quiet)
	if d.down > 0 {
		g.Text(0, up+1, s.OreWord, quiet)
		g.TextRight(gutter-1, h-1, s.OreMost, quiet)
	}
	for i, b := range d.shown {
		d.bar(i, b)
	}
	d.ahead(w)
}

// drawn is a strip while it is drawn.
type drawn struct {
	Strip
	g        cell.Grid
	th       theme.Theme
	up, down int
	slot     int
	shown    []Bar
	number   int // column after the last number written
}

// room chooses how wide a charge is drawn, up to six columns, and the last ones
// that fit.
func (d *drawn) room(w int) {
	room := w - gutter - 2 // the word under the last bar is wider than it
	n := len(d.Bars) + min(d.Ahead, 8)
	d.slot = min(max(room/max(n, 1), 2), 6)
	d.shown = d.Bars[max(0, len(d.Bars)-room/d.slot):]
}

func (d *drawn) bar(i int, b Bar) {
	x := gutter + i*d.slot
	style := d.th.Style(theme.Bar)
	switch {
	case b.Now:
		style = d.th.Style(theme.Now)
	case b.Slow:
		style = d.th.Style(theme.Strong)
	}
	d.rise(x, b.Minutes, style)
	if b.Ore > 0 && d.Ore > 0 {
		d.hang(x, b.Ore)
	}
	switch {
	case b.Now && d.NowWord != "":
		d.g.Text(x, d.up, d.NowWord, d.th.Style(theme.Now))
	case x >= d.number && (b.Number%5 == 0 || i == 0):
		d.number = x + d.g.Text(x, d.up, strconv.Itoa(b.Number), d.th.Style(theme.Quiet)) + 1
	}
}

// rise draws minutes upwards in eighths of a cell, with the usual as a tick over
// a shorter bar.
func (d *drawn) rise(x int, minutes float64, style cell.Style) {
	eighths := min(int(math.Round(minutes/d.Most*float64(8*d.up))), 8*d.up)
	if minutes > 0 {
		eighths = max(eighths, 1)
	}
	for row := range d.up {
		y := d.up - 1 - row
		c := eighth[min(max(eighths-8*row, 0), 8)]
		if d.th.ASCII && c != ' ' {
			c = '#'
			if eighths-8*row < 4 {
				c = '_'
			}
		}
		if c != ' ' {
			d.across(x, y, c, style)
		}
		if row == d.up-1 && minutes > d.Most {
			d.across(x, y, d.sign('▲', '^'), style)
		}
	}
	d.tick(x)
}

// eighth are the bars of a cell from the bottom.
var eighth = []rune(" ▁▂▃▄▅▆▇█")

// tick marks the usual at its height, where its row is free.
func (d *drawn) tick(x int) {
	if d.Usual <= 0 || d.Usual > d.Most {
		return
	}
	y := d.up - 1 - int(d.Usual/d.Most*float64(d.up)-1e-9)
	for i := range d.slot - 1 {
		if d.g.Blank(x+i, y) {
			d.g.Set(x+i, y, d.sign('▔', '_'), d.th.Style(theme.Strong))
		}
	}
}

// hang draws ore downwards.
func (d *drawn) hang(x int, ore float64) {
	halves := max(int(math.Round(ore/d.Ore*float64(2*d.down))), 1)
	for row := range d.down {
		if c := d.half(halves-2*row, '▀', '█'); c != ' ' {
			d.across(x, d.up+1+row, c, d.th.Style(theme.OreBar))
		}
	}
}

// half is the character for so many halves left, of which the first stands next
// to the numbers.
func (d *drawn) half(left int, one, both rune) rune {
	switch {
	case left <= 0:
		return ' '
	case d.th.ASCII:
		return '#'
	case left == 1:
		return one
	}
	return both
}

func (d *drawn) sign(c, ascii rune) rune {
	if d.th.ASCII {
		return ascii
	}
	return c
}

func (d *drawn) across(x, y int, c rune, s cell.Style) {
	for i := range d.slot - 1 {
		d.g.Set(x+i, y, c, s)
	}
}

// ahead draws the ticks of what is still to come and says what they are.
func (d *drawn) ahead(w int) {
	if d.Usual <= 0 || d.Usual > d.Most {
		return
	}
	x := gutter + len(d.shown)*d.slot
	y := d.up - 1 - int(d.Usual/d.Most*float64(d.up)-1e-9)
	end := w - len([]rune(d.UsualWord)) - 1
	for i := 0; i < d.Ahead && x+d.slot < end; i++ {
		d.across(x, y, d.sign('▔', '_'), d.th.Style(theme.Strong))
		x += d.slot
	}
	if x+1 <= end {
		d.g.Text(x+1, y, d.UsualWord, d.th.Style(theme.Quiet))
	}
}
