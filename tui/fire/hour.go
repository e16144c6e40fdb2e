package fire

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/ahead"
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// hour is the next hour as it is being looked at. Nobody changes one; each answer makes another.
type hour struct {
	looking *ahead.Looking // works beside the screen, one furnace at a time
	told    ahead.Ahead
	since   entry.Stamp
}

// hourFor is how long it is shown: after that the fire has gone on without it.
const hourFor = 2 * time.Minute

// hourTold brings what one more furnace says.
type hourTold struct {
	looking *ahead.Looking
	told    ahead.Ahead
}

// ahead shows the next hour, or no more. It is a way of looking and no act: it never blocks, and any other key does what it does
// without it.
func (f Screen) ahead(sh *screen.Shared) (screen.Screen, screen.Effect) {
	if f.hour.shows(sh.Now) {
		return Screen{}, nil
	}
	if sh.Smelt.Phase().Over() {
		return f, screen.Refuse(words.HourOver)
	}
	l := ahead.Begin(sh.Smelt)
	return Screen{hour: &hour{looking: l, told: l.Ahead(), since: sh.Now}}, asks(l)
}

// nextHour is that from the list of rare acts.
func nextHour(sh *screen.Shared) screen.Effect {
	f, e := Screen{}.ahead(sh)
	return screen.Each{screen.Put{Screen: f}, e}
}

// asks asks one more furnace.
func asks(l *ahead.Looking) screen.Effect {
	if !l.More() {
		return nil
	}
	return screen.Run{Cmd: func() tea.Msg {
		l.Next()
		return hourTold{l, l.Ahead()}
	}}
}

// Receive takes what a furnace says, while that hour is still looked at.
func (f Screen) Receive(sh *screen.Shared, msg tea.Msg) (next screen.Screen, e screen.Effect, taken bool) {
	told, ok := msg.(hourTold)
	if !ok {
		return f, nil, false
	}
	if f.hour == nil || f.hour.looking != told.looking || !f.hour.shows(sh.Now) {
		return f, nil, true
	}
	h := *f.hour
	h.told = told.told
	f.hour = &h
	return f, asks(h.looking), true
}

// shows tells whether it is on the screen.
func (h *hour) shows(now entry.Stamp) bool { return h != nil && screen.Since(h.since, now) < hourFor }

// wideFrom is how many columns the heat of the hearth has room in beside its shift.
const wideFrom = 100

// paint lays it over the lower end of the grid: a rule that says of when it is, the choices, the advice.
func (h *hour) paint(g cell.Grid, sh *screen.Shared) {
	if !h.shows(sh.Now) {
		return
	}
	w, height := g.Size()
	th := sh.Theme
	lines := []string{words.HourAsking}
	if h.told.Known() {
		lines = append(modelwords.AheadTable(h.told, w >= wideFrom), modelwords.AheadAdvice(h.told.Advice))
		if h.looking.More() || h.told.Asked < ahead.Furnaces {
			lines[len(lines)-1] = words.HourAsking
		}
	} else if h.told.Lacks {
		lines = []string{modelwords.AheadAdvice(h.told.Advice)}
	}
	body := screen.Body(g)
	end := body.Y + body.H
	if notice := scene.LayoutOf(w, height).Notice; !notice.Empty() && len(sh.Smelt.Standing()) > 0 && end-len(lines)-1 < notice.Bottom() {
		end = notice.Y // what stands is read all the same
	}
	rows := min(len(lines)+1, end-body.Y)
	if rows < 2 {
		return
	}
	box := cell.Rect{X: 0, Y: end - rows, W: w, H: rows}
	g.Fill(box, ' ', th.Style(theme.Text))
	g.Fill(cell.Rect{Y: box.Y, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	head := modelwords.AheadHead(h.told, sh.Smelt.Reading().Wall(h.told.At).Format(modelwords.Clock))
	g.Text(2, box.Y, " "+draw.InParts(g, head, w-6, 1)+" ", th.Style(theme.Strong))
	for i, line := range lines[:rows-1] {
		role := theme.Text
		switch {
		case i == len(lines)-1:
			role = theme.Strong
		case i == 0 && len(lines) > 1:
			role = theme.Quiet
		}
		g.TextIn(cell.Rect{X: 1, Y: box.Y + 1 + i, W: w - 2, H: 1}, line, th.Style(role))
	}
}
