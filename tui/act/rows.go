package act

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/paper"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Rows takes the rows of a paper log: each is typed, or all are pasted, and stands beside
// what it becomes. They are kept all together or not at all.
type Rows struct {
	lines []string
	at    int // the one that is typed
	input screen.Input
	bad   string
}

// EnterRows opens it.
func EnterRows(*screen.Shared) screen.Effect { return screen.Ask{Dialog: rowsOf([]string{""}, 0)} }

func rowsOf(lines []string, at int) Rows {
	r := Rows{lines: lines}
	return r.to(at)
}

// to goes to a line.
func (r Rows) to(at int) Rows {
	r.at = at
	r.input = screen.Prefilled(r.lines[at], false)
	r.input, _ = r.input.Typed(tea.KeyMsg{Type: tea.KeyEnd}) // goes on where it ends
	return r
}

// Typing is true: rows are text.
func (r Rows) Typing() bool { return true }

// Stays as long as a person may look for the sheet.
func (r Rows) Stays() time.Duration { return screen.Readable }

// Place names it among what is half typed.
func (r Rows) Place() string { return words.RowsOfPaper }

// Half is what is typed so far.
func (r Rows) Half(*screen.Shared) string { return strings.TrimSpace(strings.Join(r.lines, "\n")) }

// Resumed goes on with what was typed.
func (r Rows) Resumed(text, at string) screen.Dialog {
	lines := append(strings.Split(text, "\n"), "")
	next := rowsOf(lines[:min(len(lines), paper.MostRows)], min(len(lines), paper.MostRows)-1)
	next.bad = words.RowsHalfTyped(at)
	return next
}

// Update takes a key, or a paste of many rows.
func (r Rows) Update(sh *screen.Shared, p screen.Pressed) (screen.Dialog, screen.Effect) {
	t := screen.TypedOf(p.Key)
	r.bad = ""
	switch {
	case key.Matches(t, screen.FieldKeys.Back):
		if r.Half(sh) == "" {
			return nil, screen.Said(words.NothingDone)
		}
		return nil, sure(words.DropRows(r.count()), func(*screen.Shared) screen.Effect { return screen.Said(words.NothingDone) }, r)
	case key.Matches(t, screen.FieldKeys.Done):
		return r.entered(sh)
	case key.Matches(t, screen.Move.Up):
		return r.to(max(r.at-1, 0)), nil
	case key.Matches(t, screen.Move.Down):
		return r.to(min(r.at+1, len(r.lines)-1)), nil
	}
	if p.Key.Paste {
		return r.pasted(string(p.Key.Runes))
	}
	in, ok := r.input.Typed(p.Key)
	if !ok {
		r.bad = words.NotInField(false)
		return r, screen.Refuse(r.bad)
	}
	r.input = in
	r.lines = slices.Clone(r.lines)
	r.lines[r.at] = in.Text()
	return r, nil
}

// pasted takes the lines of a paste, from where the cursor stands on.
func (r Rows) pasted(text string) (screen.Dialog, screen.Effect) {
	lines := strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text), "\n")
	for i, l := range lines {
		lines[i] = cell.Clean(strings.ReplaceAll(l, "\t", " "))
	}
	lines[0] = r.lines[r.at] + lines[0]
	all := slices.Replace(slices.Clone(r.lines), r.at, r.at+1, lines...)
	if len(all) > paper.MostRows {
		r.bad = words.TooManyRows(paper.MostRows)
		return r, screen.Refuse(r.bad)
	}
	return rowsOf(all, r.at+len(lines)-1), nil
}

// entered goes on to the next row; from an empty one it asks whether all are kept.
func (r Rows) entered(sh *screen.Shared) (screen.Dialog, screen.Effect) {
	if strings.TrimSpace(r.lines[r.at]) != "" {
		switch {
		case r.at+1 < len(r.lines):
			return r.to(r.at + 1), nil
		case len(r.lines) == paper.MostRows:
			return r.asked(sh)
		}
		return rowsOf(append(slices.Clone(r.lines), ""), r.at+1), nil
	}
	return r.asked(sh)
}

// asked asks whether the rows are to be kept, once every one of them is read.
func (r Rows) asked(sh *screen.Shared) (screen.Dialog, screen.Effect) {
	rows, faults := r.read(sh)
	for i, err := range faults {
		if err != nil {
			r = r.to(i)
			r.bad = words.RowIs(i+1, modelwords.PaperFault(err))
			return r, screen.Refuse(r.bad)
		}
	}
	acts := actsOf(sh, rows)
	if len(acts) == 0 {
		r.bad = words.NoRowsYet
		return r, screen.Refuse(r.bad)
	}
	off := sh.Smelt.Off(sh.Now)
	clock := func(a screen.Act) string { return a.Happened.Add(off).Format(modelwords.Clock) }
	charges := 0
	for _, a := range acts {
		if _, is := a.Event.(entry.Charge); is {
			charges++
		}
	}
	title := words.KeepRows(len(acts), charges, clock(acts[0]), clock(acts[len(acts)-1]))
	return nil, sure(title, func(*screen.Shared) screen.Effect {
		return screen.Each{screen.Keep(acts), screen.Said(words.RowsKept(len(acts)))}
	}, r)
}

// sure asks yes or no; no goes back to the rows.
func sure(title string, yes func(*screen.Shared) screen.Effect, r Rows) screen.Effect {
	back := func(*screen.Shared) screen.Effect { return screen.Ask{Dialog: r} }
	return screen.Ask{Dialog: screen.Choice{Title: title, Question: true, Left: back, Options: []screen.Option{screen.Yes(yes), screen.No(back)}}}
}

// timed is a row with its moment.
type timed struct {
	paper.Row
	at time.Time
}

// read reads the rows and the times of the smelt that they mean.
func (r Rows) read(sh *screen.Shared) ([]timed, []error) {
	rows, faults := paper.Read(r.lines, measuresOf(sh))
	all := make([]timed, len(rows))
	for i, row := range rows {
		all[i].Row = row
		if row.Event == nil || faults[i] != nil {
			continue
		}
		all[i].at, faults[i] = timeOf(sh, fmt.Sprintf("%02d:%02d", row.Minute/60, row.Minute%60))
	}
	return all, faults
}

// measuresOf is what a number on paper counts.
func measuresOf(sh *screen.Shared) paper.In {
	in := paper.In{Charcoal: entry.Part{What: entry.Charcoal}, Ore: entry.Part{What: entry.Ore}}
	for _, p := range []*entry.Part{&in.Charcoal, &in.Ore} {
		if ps := Measured(sh, p.What, 1); len(ps) > 0 {
			*p = ps[0]
			p.Count = entry.None[entry.Count]()
		}
	}
	return in
}

// become are the rows as events, nil for one without. Charcoal alone, while the furnace was
// still being filled, is of the fill.
func become(sh *screen.Shared, rows []timed) []entry.Event {
	evs := make([]entry.Event, len(rows))
	ore := false
	for i, r := range rows {
		evs[i] = r.Event
		if c, is := r.Event.(entry.Charge); is {
			ore = ore || c.Parts.Holds(entry.Ore)
			if !ore && len(c.Parts) == 1 && fillingAt(sh, r.at) {
				evs[i] = entry.Fill(c)
			}
		}
	}
	return evs
}

// actsOf are the rows as acts.
func actsOf(sh *screen.Shared, rows []timed) (acts screen.Keep) {
	for i, ev := range become(sh, rows) {
		if ev != nil {
			acts = append(acts, screen.Act{Event: ev, Happened: rows[i].at, Uncertain: WholeMinutes})
		}
	}
	return acts
}

func fillingAt(sh *screen.Shared, at time.Time) bool {
	s := sh.Smelt
	p := s.AsOf(fold.All, s.Clock(sh.Now)-sh.Now.Wall.Sub(at)).Phase()
	return p == "" || p == entry.Prepared || p == entry.Preheat || p == entry.Filling
}

// count is how many rows there are.
func (r Rows) count() (n int) {
	for _, l := range r.lines {
		if strings.TrimSpace(l) != "" {
			n++
		}
	}
	return n
}

// Ask is the row that is typed.
func (r Rows) Ask(sh *screen.Shared) *draw.Ask {
	hint := r.bad
	if hint == "" && strings.TrimSpace(r.lines[r.at]) == "" {
		hint = words.RowHint
	}
	return &draw.Ask{Label: words.RowNumber(r.at + 1), Value: func(width int) string { return r.input.Draw(sh.Theme, width) }, Hint: hint}
}

// Hints are what the keys do.
func (r Rows) Hints() []draw.KeyHint {
	return []draw.KeyHint{screen.Short(screen.FieldKeys.Done, words.RowsEnter), screen.Short(screen.Move.Up, words.RowsUp), screen.Short(screen.FieldKeys.Back, words.RowsLeave)}
}

// Paint shows the rows, each with what it becomes or what is wrong with it.
func (r Rows) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	w, h := g.Size()
	n := min(len(r.lines), h-1)
	band := cell.Rect{Y: h - n - 1, W: w, H: n + 1}
	g.Fill(band, ' ', th.Style(theme.Text))
	rule, list := band.CutTop(1)
	g.Fill(rule, th.Marks().HLine, th.Style(theme.Frame))
	g.Text(2, rule.Y, words.RowsHead, th.Style(theme.Quiet))
	rows, faults := r.read(sh)
	evs := become(sh, rows)
	const number, half = 4, 30
	first := screen.FirstShown(r.at, len(r.lines), n)
	for i := first; i < first+n; i++ {
		y := list.Y + i - first
		role := theme.Text
		if i == r.at {
			role = theme.Picked
			g.Text(0, y, th.Marks().Picked, th.Style(theme.Now))
		}
		g.TextRight(number, y, fmt.Sprint(i+1), th.Style(theme.Quiet))
		g.TextIn(cell.Rect{X: number + 1, Y: y, W: half - number - 2, H: 1}, r.lines[i], th.Style(role))
		says, as := "", theme.Text
		switch {
		case faults[i] != nil:
			says, as = th.Marks().Off+" "+modelwords.PaperFault(faults[i]), theme.Warn
		case evs[i] != nil:
			says = rows[i].at.Add(sh.Smelt.Off(sh.Now)).Format(modelwords.Clock) + "  " + sh.Units.Event(evs[i])
		}
		g.TextIn(cell.Rect{X: half, Y: y, W: w - half - 1, H: 1}, says, th.Style(as))
	}
}
