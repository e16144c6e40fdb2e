// Package help tells the keys of a screen and what every figure means.
package help

import (
	"cmp"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/figure"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Screen tells the keys of the screen it was opened from, then what every figure
// means and what it rests on.
type Screen struct{ scroll screen.Scroll }

// New is the help from its top.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Help }
func (Screen) Keys() screen.KeyMap { return screen.Move }

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoHelp }

// Entered begins at the top.
func (Screen) Entered(*screen.Shared, any) (screen.Screen, screen.Effect) { return New(), nil }

// Hints are how to scroll.
func (Screen) Hints(*screen.Shared) []draw.KeyHint {
	return screen.Hints(screen.Move.PageDown, screen.Move.PageUp, screen.Move.Down, screen.Move.Up, screen.Global.Back)
}

// Update scrolls.
func (h Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	room := bodyOf(sh.W, sh.H)
	if to, ok := h.scroll.Moved(p.Key, text(sh, room), room.W, room.H); ok {
		return Screen{to}, nil
	}
	return h, screen.Refuse(words.NoAct(screen.KeyLabel(p.Key.String())))
}

// Paint shows what fits of it.
func (h Screen) Paint(g cell.Grid, sh *screen.Shared) {
	title := ""
	if sh.Behind != nil {
		title = nameOf(sh.Behind, sh)
	}
	screen.Top(g, sh, words.DoHelp, title)
	room := bodyOf(sh.W, sh.H)
	g.Sub(room).Lay(h.scroll.Shows(text(sh, room), room.W, room.H), sh.Theme.Style(theme.Text))
}

// bodyOf is where the help stands in a window.
func bodyOf(w, h int) cell.Rect {
	return cell.Rect{X: 2, Y: draw.TopRows, W: w - 3, H: max(1, h-draw.TopRows-draw.FootRows)}
}

// nameOf is the name of a screen as the list of screens has it, without what it adds.
func nameOf(s screen.Screen, sh *screen.Shared) string {
	name, _, _ := strings.Cut(s.Listed(sh), ":")
	if s.ID() == screen.Light { // which is reached from the start, and not listed
		name = words.DoSmelt
	}
	return cmp.Or(name, string(s.ID()))
}

// line is a line of the help: a heading, or a key, name or number and what it does or
// means.
type line struct {
	heading, name, text string
	column              int // of the name; 0 for as wide as most
}

// lines is all of the help of a screen.
func lines(sh *screen.Shared) []line {
	behind := sh.Behind
	ls := []line{{heading: words.HelpDay}}
	for i, t := range words.HelpOfDay {
		ls = append(ls, line{name: strconv.Itoa(i + 1), text: t, column: numbers})
	}
	if behind != nil {
		id := behind.ID()
		ls = append(ls, line{heading: words.HelpKeysOf(nameOf(behind, sh), id == screen.Fire || id == screen.Replay)})
	} else {
		ls = append(ls, line{heading: words.HelpKeysOf("", false)})
	}
	add := func(bs []key.Binding) {
		for _, b := range bs {
			ls = append(ls, line{name: screen.AllKeys(b), text: b.Help().Desc})
		}
	}
	if behind != nil {
		add(behind.Keys().All())
	}
	add(screen.Global.All())
	if more, ok := behind.(screen.Explained); ok {
		heading, keys := more.Explains()
		ls = append(ls, line{heading: heading})
		add(keys)
	}
	ls = append(ls, line{heading: words.HelpTyping})
	for _, t := range words.HelpAboutKeys {
		ls = append(ls, line{text: t})
	}
	ls = append(ls, line{heading: words.HelpCautions})
	for _, c := range rule.Cautions {
		title, fact, care := modelwords.Caution(c.ID)
		ls = append(ls, line{name: title, text: fact + "; " + care})
	}
	ls = append(ls, line{text: modelwords.LocalRules})
	ls = append(ls, line{heading: words.HelpFigures})
	for _, d := range figure.Table {
		ls = append(ls, line{name: strings.ReplaceAll(d.Key, "_", " "), text: words.Meaning(d)})
	}
	ls = append(ls, line{heading: words.HelpBasis})
	for b := figure.Measured; b <= figure.Unknown; b++ {
		ls = append(ls, line{name: modelwords.Basis(b), text: words.BasisMeans(b)})
	}
	for _, t := range append(words.HelpEstimates, words.HelpChemistry) {
		ls = append(ls, line{text: t})
	}
	return ls
}
