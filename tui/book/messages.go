package book

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

var messageHints = append(screen.Hints(screen.Move.Up, screen.Move.Down, screen.Move.PageUp, screen.Move.PageDown),
	screen.Short(Map.Messages, words.DoBook), screen.Hint(screen.Global.Back))

// reads tells whether it shows the page of messages. Without a smelt there is
// nothing else.
func (j Screen) reads(sh *screen.Shared) bool {
	return j.messages || !sh.Smelt.Is() && len(sh.Messages) > 0
}

// scrolled takes a key on that page.
func (j Screen) scrolled(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	w, h := messageRoom(sh.W, sh.H)
	to, ok := j.scroll.Moved(p.Key, messageRows(sh, w), w, h)
	switch {
	case ok:
		j.scroll = to
	case key.Matches(screen.TypedOf(p.Key), Map.Messages):
		return Screen{filter: j.filter}, nil
	default:
		return j, screen.Refuse(words.NoAct(screen.KeyLabel(p.Key.String())))
	}
	return j, nil
}

// messageRoom is how large the page is in a window.
func messageRoom(w, h int) (int, int) { return w - 3, max(1, h-draw.TopRows-draw.FootRows) }

// messageRows are the messages in rows of a width, the newest last, with a blank
// row between two.
func messageRows(sh *screen.Shared, w int) (rows []string) {
	g := cell.New(0, 0, sh.Theme.ASCII)
	number := sh.Theme.Component(theme.Now)
	for i, m := range sh.Messages {
		if i > 0 {
			rows = append(rows, "")
		}
		mark := number.Render(sh.Spelled(words.MessageNumber(i + 1)))
		indent := sh.Width(words.MessageNumber(i + 1))
		for rest := m; rest != ""; {
			var row string
			row, rest = g.Break(rest, max(w-indent, 1))
			for g.Width(row) > w-indent { // a path longer than a row
				cut := []rune(row)
				n := len(cut)
				for n > 1 && g.Width(string(cut[:n])) > w-indent {
					n--
				}
				row, rest = string(cut[:n]), string(cut[n:])+" "+rest
			}
			rows = append(rows, mark+sh.Spelled(row))
			mark = strings.Repeat(" ", indent)
		}
	}
	return rows
}

// paintMessages shows what fits of the page.
func (j Screen) paintMessages(g cell.Grid, sh *screen.Shared) {
	screen.Top(g, sh, words.DoBook, words.MessagesOf(len(sh.Messages)))
	body := screen.Body(g)
	if len(sh.Messages) == 0 {
		g.Text(2, body.Y+1, words.NoMessages, sh.Theme.Style(theme.Text))
		return
	}
	w, h := messageRoom(sh.W, sh.H)
	g.Sub(cell.Rect{X: 2, Y: body.Y, W: w, H: h}).Lay(j.scroll.Shows(messageRows(sh, w), w, h), sh.Theme.Style(theme.Text))
}
