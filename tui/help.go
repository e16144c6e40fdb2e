package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

// help tells the keys of the screen it was opened from, then what every figure
// means and what it rests on.
type help struct{ top int }

func (help) name() screenID { return helpScreen }
func (help) keys() keymap   { return move }

// entered begins at the top.
func (help) entered(shared) screen { return help{} }

func (help) hints(shared) []paint.KeyHint {
	return hints(move.Up, move.Down, move.PageUp, move.PageDown, global.Back)
}

func (h help) update(sh shared, p Pressed) (screen, step) {
	body, columns := helpBody(sh.w, sh.h)
	n := len(helpRows(sh, columns))
	page := body.H * columns
	if to, ok := move.moved(typedOf(p.Key), h.top, max(1, n-page+1), page); ok {
		return help{to}, step{}
	}
	return h, refused(words.NoAct(keyLabel(p.Key.String())))
}

// helpLine is a line of the help: a heading, or a key or name and what it does
// or means.
type helpLine struct{ heading, name, text string }

// helpRow is one row on the screen, after wrapping.
type helpRow struct {
	heading, indented bool
	name, text        string
}

const nameColumn = 20

// helpBody is where the help stands, and in how many columns.
func helpBody(w, h int) (cell.Rect, int) {
	return cell.Rect{X: 2, Y: paint.TopRows, W: w - 3, H: max(1, h-paint.TopRows-paint.FootRows)}, max(1, w/56)
}

// helpLines is all of the help of a screen.
func helpLines(sh shared) []helpLine {
	ls := []helpLine{{heading: words.HelpKeysOf(string(sh.behind), sh.behind == fireScreen || sh.behind == replayScreen)}}
	add := func(bs []key.Binding) {
		for _, b := range bs {
			ls = append(ls, helpLine{name: allKeys(b), text: b.Help().Desc})
		}
	}
	if sh.behindKeys != nil {
		add(sh.behindKeys.all())
	}
	add(global.all())
	if sh.behind == fireScreen || sh.behind == bookScreen {
		ls = append(ls, helpLine{heading: words.HelpOthers(allKeys(fireMap.Rare))})
		for _, o := range otherOptions() {
			ls = append(ls, helpLine{name: allKeys(o.Binding), text: o.Help().Desc})
		}
	}
	ls = append(ls, helpLine{heading: words.HelpTyping})
	for _, t := range words.HelpAboutKeys {
		ls = append(ls, helpLine{text: t})
	}
	ls = append(ls, helpLine{heading: words.HelpCautions})
	for _, c := range rule.Cautions {
		title, fact, care := words.Caution(c.ID)
		ls = append(ls, helpLine{name: title, text: fact + "; " + care})
	}
	ls = append(ls, helpLine{text: words.LocalRules})
	ls = append(ls, helpLine{heading: words.HelpFigures})
	for _, d := range figure.Table {
		ls = append(ls, helpLine{name: strings.ReplaceAll(d.Key, "_", " "), text: words.Meaning(d)})
	}
	ls = append(ls, helpLine{heading: words.HelpBasis})
	for b := figure.Measured; b <= figure.Unknown; b++ {
		ls = append(ls, helpLine{name: words.Basis(b), text: words.BasisMeans(b)})
	}
	for _, t := range append(words.HelpEstimates, words.HelpChemistry) {
		ls = append(ls, helpLine{text: t})
	}
	return ls
}

// allKeys names every key of a binding: "c or 0".
func allKeys(b key.Binding) string {
	names := make([]string, len(b.Keys()))
	for i, k := range b.Keys() {
		names[i] = keyLabel(k)
	}
	return strings.Join(names, words.Or)
}

// helpRows wraps the help into rows of a column.
func helpRows(sh shared, columns int) []helpRow {
	body, _ := helpBody(sh.w, sh.h)
	width := body.W/columns - 2
	var rows []helpRow
	for _, l := range helpLines(sh) {
		if l.heading != "" {
			if len(rows) > 0 {
				rows = append(rows, helpRow{})
			}
			rows = append(rows, helpRow{heading: true, text: l.heading})
			continue
		}
		room := width
		if l.name != "" {
			room -= nameColumn
		}
		name := l.name
		for _, line := range wrapped(l.text, max(room, 10)) {
			rows = append(rows, helpRow{name: name, text: line, indented: l.name != ""})
			name = ""
		}
	}
	return rows
}

func (h help) paint(g cell.Grid, sh shared) {
	th := sh.theme
	top(g, sh, words.DoHelp, string(sh.behind))
	body, columns := helpBody(sh.w, sh.h)
	rows := helpRows(sh, columns)
	width := body.W / columns
	for i := range body.H * columns {
		n := min(h.top, max(0, len(rows)-1)) + i
		if n >= len(rows) {
			return
		}
		cellRect := cell.Rect{X: body.X + i/body.H*width, Y: body.Y + i%body.H, W: width - 2, H: 1}
		r := rows[n]
		switch {
		case r.heading:
			g.TextIn(cellRect, r.text, th.Style(theme.Strong))
		case r.indented:
			name, rest := cellRect.CutLeft(nameColumn)
			g.TextIn(name, r.name, th.Style(theme.Now))
			g.TextIn(rest, r.text, th.Style(theme.Text))
		default:
			g.TextIn(cellRect, r.text, th.Style(theme.Text))
		}
	}
}

// wrapped breaks a text into lines of at most so many cells, between words.
func wrapped(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case cell.Width(line)+1+cell.Width(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	return append(lines, line)
}
