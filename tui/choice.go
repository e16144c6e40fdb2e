package tui

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

// option is one line of a list: a key and what it leads to.
type option struct {
	key.Binding
	then func(shared) step
}

func opt(k, word string, then func(shared) step) option { return option{bind(word, k), then} }

// lettered makes options whose keys are letters of their own words, the first
// that is free and is not the one to avoid: the key that opened the list, which
// pressed again at once would be taken for a leaning glove.
func lettered(avoid rune, n int, line func(i int) (word string, then func(shared) step)) []option {
	taken := map[rune]bool{avoid: true}
	var list []option
	for i := range n {
		word, then := line(i)
		letter := '?'
		for _, c := range strings.ToLower(word) + "abcdefghijklmnopqrstuvwxyz" {
			if c >= 'a' && c <= 'z' && !taken[c] {
				letter = c
				break
			}
		}
		taken[letter] = true
		list = append(list, opt(string(letter), word, then))
	}
	return list
}

// choice is a list of which one key chooses: the letter, or the number of the
// line, so that a number pad is enough. A question is a short choice.
type choice struct {
	title    string
	options  []option
	question bool // a yes or no, asked in the foot alone
	page     int  // of a list that is longer than the window
}

// question asks once before something that is hard to take back. Enter is no
// yes: it ends fields and would be pressed once too often.
func question(title string, yes func(shared) step) choice {
	return choice{title: title, question: true, options: []option{
		{bind(words.DoYes, "y"), yes},
		{bind(words.DoNo, "n"), func(shared) step { return said(words.NothingDone) }},
	}}
}

// choose is a step that opens a list.
func choose(title string, options ...option) step {
	return step{ask: choice{title: title, options: options}}
}

func (c choice) typing() bool { return false }

func (c choice) update(sh shared, k Pressed) (dialog, step) {
	t := typedOf(k.Key)
	if key.Matches(t, global.Back) {
		return nil, said(words.NothingDone)
	}
	switch {
	case key.Matches(t, move.Down):
		c.page = min(c.page+1, c.pages(sh)-1)
		return c, step{}
	case key.Matches(t, move.Up):
		c.page = max(c.page-1, 0)
		return c, step{}
	}
	for i, o := range c.options {
		if key.Matches(t, o.Binding) || (!c.question && i < 9 && digit(t) == strconv.Itoa(i+1)) {
			return nil, o.then(sh)
		}
	}
	return c, refused(words.NotInList(keyLabel(string(t))))
}

func (c choice) ask(shared) *paint.Ask {
	if !c.question {
		return &paint.Ask{Label: c.title, Hint: words.EscCloses}
	}
	return &paint.Ask{Label: c.title, Hint: words.YesNo}
}

// hints are for questions; a list shows its own keys.
func (c choice) hints() []paint.KeyHint {
	if !c.question {
		return []paint.KeyHint{hint(global.Back)}
	}
	hs := make([]paint.KeyHint, len(c.options))
	for i, o := range c.options {
		hs[i] = hint(o.Binding)
	}
	return hs
}

// shape is how a list stands in so many columns and rows of cells: how wide a
// column is, how many there are, and how many rows they have.
func (c choice) shape(w, h int) (column, columns, rows int) {
	for _, o := range c.options {
		column = max(column, cell.Width(o.Help().Key)+cell.Width(o.Help().Desc)+7)
	}
	columns = max(1, (w-1)/column)
	rows = (len(c.options) + columns - 1) / columns
	return column, columns, max(1, min(rows, h-1))
}

// listRows is how many rows of a window a list may take.
func listRows(h int) int { return h - paint.TopRows - paint.FootRows }

// pages is how many windows full the list is.
func (c choice) pages(sh shared) int {
	_, columns, rows := c.shape(sh.w, listRows(sh.h))
	return (len(c.options) + columns*rows - 1) / (columns * rows)
}

// paint draws the list in columns, as many as fit, at the lower end of the
// grid: a rule, then the options down each column.
func (c choice) paint(g cell.Grid, sh shared) {
	if c.question {
		return
	}
	w, h := g.Size()
	column, columns, rows := c.shape(w, h)
	th := sh.theme
	band := cell.Rect{X: 0, Y: h - rows - 1, W: w, H: rows + 1}
	g.Fill(band, ' ', th.Style(theme.Text))
	g.Fill(cell.Rect{X: 0, Y: band.Y, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	first := min(c.page*columns*rows, len(c.options)-1)
	for i, o := range c.options[first:min(first+columns*rows, len(c.options))] {
		x, y := 1+i/rows*column, band.Y+1+i%rows
		if first+i < 9 {
			g.Text(x, y, strconv.Itoa(first+i+1), th.Style(theme.Quiet))
		}
		x += 2
		x += g.Text(x, y, o.Help().Key, th.Style(theme.Now)) + 1
		g.Text(x, y, o.Help().Desc, th.Style(theme.Text))
	}
	if n := c.pages(sh); n > 1 {
		g.TextRight(w-1, band.Y, words.PageOf(c.page+1, n), th.Style(theme.Quiet))
	}
}

// hint is a binding as the keys line shows it.
func hint(b key.Binding) paint.KeyHint {
	return paint.KeyHint{Key: b.Help().Key, Does: b.Help().Desc}
}

func hints(bs ...key.Binding) []paint.KeyHint {
	hs := make([]paint.KeyHint, len(bs))
	for i, b := range bs {
		hs[i] = hint(b)
	}
	return hs
}
