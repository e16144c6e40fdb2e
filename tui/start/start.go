// Package start is the first screen.
package start

import (
	"strings"
	"sync"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/invented"
	"chargehand/model/picture"
	"chargehand/model/session"
	"chargehand/model/shelf"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Screen is the first screen: three plain lines, and before them the smelt that
// was not finished, when there is one.
type Screen struct {
	usual screen.Starter // to practise with
	under Practice       // how practice begins; nil for its light alone
	at    int
	waits bool // for the shelf, to go on with the smelt that it says was not finished
}

// Keys are the keys of the start screen; the number of a line chooses it
// too.
type Keys struct {
	GoOn, Practise, Smelt, Look, Choose, Quit, Up, Down key.Binding
}

// Map are those keys.
var Map = Keys{
	GoOn:     screen.Bind(words.DoGoOn, "g"),
	Practise: screen.Bind(words.DoPractise, "p"),
	Smelt:    screen.Bind(words.DoSmelt, "r"),
	Look:     screen.Bind(words.DoLookAt, "l"),
	Choose:   screen.Bind(words.DoChoose, "enter"),
	Quit:     screen.Bind(words.DoQuit, "q"),
	Up:       screen.Bind(words.DoUp, "up"),
	Down:     screen.Bind(words.DoDown, "down"),
}

// All of them.
func (k Keys) All() []key.Binding {
	return []key.Binding{k.GoOn, k.Practise, k.Smelt, k.Look, k.Choose, k.Up, k.Down, k.Quit}
}

// Repeating are the ones that move.
func (k Keys) Repeating() []key.Binding { return []key.Binding{k.Up, k.Down} }

func (Screen) ID() screen.ID       { return screen.Start }
func (Screen) Keys() screen.KeyMap { return Map }

// Practice is how a practice smelt begins that is under way: its light, when it
// was lit, and what has been done since.
type Practice func(now time.Time) (light entry.Light, lit time.Time, done []invented.Act, err error)

// New is the start screen; practice is with that furnace, or under way.
func New(usual screen.Starter, under Practice) Screen { return Screen{usual: usual, under: under} }

// Listed always.
func (Screen) Listed(screen.Shared) string { return words.DoStart }

// Entered begins at the first line.
func (s Screen) Entered(screen.Shared, any) (screen.Screen, screen.Effect) {
	return New(s.usual, s.under), nil
}

// Receive goes on with the smelt that was not finished once the shelf is read, when
// a key asked for that.
func (s Screen) Receive(sh screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	if _, read := msg.(screen.Read); !read {
		return s, nil, false
	}
	if !s.waits {
		return s, nil, true
	}
	s.waits = false
	if id, _ := unfinished(sh); id != "" {
		return s, screen.Open{Smelt: id, On: screen.Fire}, true
	}
	return s, screen.Refuse(words.NoneUnfinished), true
}

// startLine is one line to choose.
type startLine struct {
	key    key.Binding
	detail string
	then   func(screen.Shared) screen.Effect
}

// lines of the start screen, the unfinished smelt first.
func (s Screen) lines(sh screen.Shared) []startLine {
	var ls []startLine
	if id, detail := unfinished(sh); id != "" {
		ls = append(ls, startLine{Map.GoOn, detail, func(screen.Shared) screen.Effect { return screen.Open{Smelt: id, On: screen.Fire} }})
	}
	return append(ls,
		startLine{Map.Practise, words.PractiseIs, func(sh screen.Shared) screen.Effect {
			return act.LeavingRunning(sh, func(sh screen.Shared) screen.Effect { return s.Practise(sh.Now.Wall) })
		}},
		startLine{Map.Smelt, words.SmeltIs, func(sh screen.Shared) screen.Effect {
			return act.LeavingRunning(sh, func(screen.Shared) screen.Effect { return screen.Go{To: screen.Light} })
		}},
		startLine{Map.Look, words.LookIs, func(screen.Shared) screen.Effect { return screen.Go{To: screen.Shelf} }})
}

// unfinished is the smelt to go on with: the one at work, else the newest that
// was not finished, a practice last.
func unfinished(sh screen.Shared) (id, detail string) {
	if s := sh.Running; s.Is() {
		return s.ID(), words.UnfinishedIs(s.ID(), s.Reading().Phase, len(s.Reading().Charges))
	}
	var spare *shelf.Summary
	for i, l := range sh.Shelf.Lines {
		switch {
		case !l.Unfinished():
			continue
		case !l.Practice:
			return l.ID, words.UnfinishedIs(l.ID, l.Phase, l.Charges)
		case spare == nil:
			spare = &sh.Shelf.Lines[i]
		}
	}
	if spare != nil {
		return spare.ID, words.UnfinishedIs(spare.ID, spare.Phase, spare.Charges)
	}
	return "", ""
}

// Practise begins a practice smelt, which asks nothing: one that is under way, an
// hour into its main burn, so that there is something to do at once.
func (s Screen) Practise(now time.Time) screen.Effect {
	f := s.usual
	if s.under != nil {
		if light, lit, done, err := s.under(now); err == nil {
			acts := make(screen.Keep, len(done))
			for i, d := range done {
				acts[i] = screen.Act{Event: d.Event, Happened: d.Happened}
			}
			return screen.Each{screen.Kindle{Light: light, Lit: lit}, acts, screen.Said(words.PractiseBegins)}
		}
	}
	return act.Kindle(entry.Light{Furnace: f.Furnace, Measures: f.Measures, Recipe: f.Recipe, Practice: true}, "", time.Time{}, 0)
}

// Update takes a key.
func (s Screen) Update(sh screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	ls := s.lines(sh)
	s.waits = false
	if !sh.Shelf.Known && !sh.Running.Is() { // which line comes first is not known yet
		switch {
		case key.Matches(t, Map.GoOn):
			s.waits = true
			return s, screen.Said(words.ShelfBeingRead)
		case key.Matches(t, Map.Choose), screen.Digit(t) != "":
			return s, screen.Refuse(words.ShelfBeingRead)
		}
	}
	if d := screen.Digit(t); d != "" && int(d[0]-'1') < len(ls) && d != "0" {
		return s, ls[d[0]-'1'].then(sh)
	}
	switch k := Map; {
	case key.Matches(t, k.Up):
		s.at = max(s.at-1, 0)
		return s, nil
	case key.Matches(t, k.Down):
		s.at = min(s.at+1, len(ls)-1)
		return s, nil
	case key.Matches(t, k.Choose):
		return s, ls[min(s.at, len(ls)-1)].then(sh)
	case key.Matches(t, k.Quit):
		return s, act.Leave(sh)
	}
	for _, l := range ls {
		if key.Matches(t, l.key) {
			return s, l.then(sh)
		}
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

// Hints are the lines and how to leave.
func (s Screen) Hints(sh screen.Shared) []draw.KeyHint {
	var hs []draw.KeyHint
	for _, l := range s.lines(sh) {
		hs = append(hs, screen.Hint(l.key))
	}
	return append(hs, screen.Hint(Map.Quit), screen.Hint(screen.Global.Views))
}

// Paint shows the furnace of the smelt at work or of the invented one at the left,
// and beside it the lines, one below the other; in a small window the lines alone.
func (s Screen) Paint(g cell.Grid, sh screen.Shared) {
	screen.Top(g, sh, words.ProgramName, words.ProgramIs)
	body := screen.Body(g)
	ls := s.lines(sh)
	w, h := g.Size()
	size := scene.SizeOf(w, h)
	if size == scene.Cramped {
		s.plain(g, sh, body, ls)
		return
	}
	left := 38
	if size == scene.Small {
		left = 26
	}
	picture, panel := body.CutLeft(left)
	s.furnace(g.Sub(picture), sh)
	g.Fill(cell.Rect{X: left, Y: body.Y, W: 1, H: body.H}, sh.Theme.Marks().VLine, sh.Theme.Style(theme.Frame))
	_, panel = panel.CutLeft(2)
	s.ways(g.Sub(panel), sh, ls)
}

// furnace paints the shaft, and says whose it is.
func (s Screen) furnace(g cell.Grid, sh screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	var pic picture.Picture
	tag, says := "", ""
	switch {
	case sh.Running.Is():
		r := sh.Running.Reading()
		pic, says = picture.From(r), words.StartShaft(sh.Running.ID(), r.Wall(r.At))
	case sh.Smelt.Is() && !sh.Smelt.ToLook(): // the one last looked at
		r := sh.Smelt.AsOf(fold.All, sh.Smelt.MostToSee()).Reading()
		pic, tag, says = picture.From(r), words.ThePast, words.StartShaft(sh.Smelt.ID(), r.Wall(r.At))
	case sh.Shelf.Known: // not before: the first frame waits for nothing
		r := inventedMoment()
		pic, tag, says = picture.From(r), words.TagInvented, words.StartInvented(r.Light.Furnace.Name, r.Wall(r.At))
	default:
		return
	}
	foot := 4
	if h < 24 {
		foot = 3
	}
	sh.Pen().Shaft(g.Sub(cell.Rect{W: w, H: h - foot}), pic, draw.ShaftView{Bare: true, Past: tag != ""})
	if w < 30 && tag == words.TagInvented {
		says = words.StartInventedShort(inventedMoment().Light.Furnace.Name)
	}
	x, y := 5, h-foot+1
	if tag != "" {
		x += g.Text(x, y-1, " "+tag+" ", th.Style(theme.Tag)) + 1
	}
	g.Wrap(cell.Rect{X: 5, Y: y, W: w - 6, H: foot - 1}, says, th.Style(theme.Quiet))
}

// inventedMoment is the invented smelt at the moment with most to see, as far as
// that is known without solving it.
var inventedMoment = sync.OnceValue(func() figure.Reading {
	es, err := invented.Smelt()
	if err != nil {
		return figure.Reading{}
	}
	return session.Open(invented.ID, es, session.ToLookAt).Reading()
})

// ways paints what can be done, the smelt that was not finished first and largest.
func (s Screen) ways(g cell.Grid, sh screen.Shared, ls []startLine) {
	th := sh.Theme
	w, h := g.Size()
	title, caption := words.WhatNow, words.NothingBurns
	role := theme.Strong
	if id, _ := unfinished(sh); id != "" {
		title, caption, role = words.GoOnLarge, words.MayBurn, theme.Now
	}
	y := 0
	g.TextIn(cell.Rect{Y: y, W: w, H: 1}, caption, th.Style(theme.Quiet))
	letter.Small.Text(g, 0, y+1, title, th.Style(role), th.ASCII)
	y += 6
	g.Fill(cell.Rect{X: 0, Y: y, W: w - 1, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	y += 2
	smelt, over := lastSmelt(sh)
	last := 0 // rows for it
	switch {
	case over && h >= 24:
		last = 4
	case over:
		last = 3
	}
	room := h - y - last
	pitch := min(max(room/max(len(ls), 1), 2), 4)
	if pitch == 2 {
		y--
	}
	for i, l := range ls {
		mark := " "
		if i == min(s.at, len(ls)-1) {
			mark = th.Marks().Picked
		}
		g.Text(0, y, mark, th.Style(theme.Now))
		g.Text(2, y, l.key.Help().Key, th.Style(theme.Now))
		g.Text(5, y, l.key.Help().Desc, th.Style(theme.Strong))
		x := 20
		detail, costs, _ := strings.Cut(l.detail, ";")
		if w < 70 {
			g.Wrap(cell.Rect{X: 5, Y: y + 1, W: w - 6, H: pitch - 1}, l.detail, th.Style(theme.Text))
			y += pitch
			continue
		}
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x - 1, H: 1}, detail, th.Style(theme.Text))
		if costs != "" {
			g.TextIn(cell.Rect{X: x, Y: y + 1, W: w - x - 1, H: 1}, strings.TrimSpace(costs), th.Style(theme.Quiet))
		}
		y += pitch
	}
	if last > 0 && y+1 < h {
		s.last(g.Sub(cell.Rect{Y: h - last, W: w, H: last}), sh, smelt)
	}
}

// last says what came of a smelt, and where there is room shows its day.
func (Screen) last(g cell.Grid, sh screen.Shared, l shelf.Summary) {
	th := sh.Theme
	w, h := g.Size()
	g.Fill(cell.Rect{W: w - 1, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	x := 4 + g.Width(words.LastSmelt)
	if x+g.Width(result(sh, l)) > w-1 {
		g.Wrap(cell.Rect{X: 2, Y: 1, W: w - 3, H: h - 1}, words.LastSmelt+" "+result(sh, l), th.Style(theme.Text))
		return
	}
	g.Text(2, 1, words.LastSmelt, th.Style(theme.Quiet))
	g.Text(x, 1, result(sh, l), th.Style(theme.Text))
	if h < 4 || len(l.Day) == 0 {
		return
	}
	g.Text(2, 2, words.ItsDay, th.Style(theme.Quiet))
	most := 0.0
	for _, d := range l.Day {
		most = max(most, float64(d.Ore))
	}
	parts := make([]chart.Part, 0, 2*len(l.Day))
	for _, d := range l.Day {
		p := chart.Part{Ore: float64(d.Ore) / max(most, 1e-9), Slow: d.Slow}
		parts = append(parts, p, p)
	}
	chart.Spark(g, th, x, 2, parts[:min(len(parts), w-x-1)])
}

// lastSmelt is the newest smelt that is over.
func lastSmelt(sh screen.Shared) (shelf.Summary, bool) {
	for _, l := range sh.Shelf.Lines {
		if l.Practice || l.Invented || !l.Phase.Over() {
			continue
		}
		return l, true
	}
	return shelf.Summary{}, false
}

// result is what came of a smelt, in one line.
func result(sh screen.Shared, l shelf.Summary) string {
	said := words.NoBloomWeighed
	if l.Bloom.Known {
		said = words.BloomOf(sh.Units.Kg(l.Bloom.Value))
		if y, dry, ok := l.Yield(); ok {
			said += words.YieldOfOre(y, dry)
		} else if l.Ore.Known {
			said += words.OfOre(sh.Units.Kg(l.Ore.Value))
		}
	}
	return l.ID + ": " + said
}

// plain is the lines alone.
func (s Screen) plain(g cell.Grid, sh screen.Shared, body cell.Rect, ls []startLine) {
	th := sh.Theme
	pitch := 3
	if body.H < len(ls)*3 {
		pitch = 2
	}
	y := body.Y + max((body.H-len(ls)*pitch)/3, 0)
	x := max(2, (body.W-60)/2)
	for i, l := range ls {
		style, mark := th.Style(theme.Strong), " "
		if i == min(s.at, len(ls)-1) {
			mark = th.Marks().Picked
		}
		g.Text(x, y, mark, th.Style(theme.Now))
		n := x + 2 + g.Text(x+2, y, l.key.Help().Key, th.Style(theme.Now))
		g.Text(n+2, y, l.key.Help().Desc, style)
		g.TextIn(cell.Rect{X: n + 2, Y: y + 1, W: body.W - n - 3, H: 1}, l.detail, th.Style(theme.Quiet))
		y += pitch
	}
}
