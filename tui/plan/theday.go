package plan

import (
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// when is the day of the smelt.
type when struct {
	day    string        // as 2026-05-09; "" for not said
	begins string        // the wood fire, as 08:00; "" for not said
	until  time.Duration // since midnight; 0 for not said
}

// lit is when the wood fire is lit, on any day where none is said.
func (w when) lit() time.Time {
	day, err := time.Parse(time.DateOnly, w.day)
	if err != nil {
		day = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	return day.Add(plan.Begins(w.begins))
}

// lasts is how long there is from the wood fire until the bloom is to be out; 0 for not said.
func (w when) lasts() time.Duration {
	if w.until == 0 {
		return 0
	}
	return max(w.until-plan.Begins(w.begins), time.Minute)
}

// theDay is the page of the day: what is to be done by when, the order of the day and what
// bounds the ore, with the keys that change when it is.
type theDay struct{ of Screen }

// showDay opens it.
func (s Screen) showDay() screen.Effect {
	switch {
	case !s.made:
		return screen.Refuse(words.BeingReckoned)
	case s.way >= len(s.plan.Ways):
		return screen.Refuse(words.NoOreGivesIt)
	}
	return screen.Ask{Dialog: theDay{s}}
}

// again has the page with another day.
func (d theDay) again(w when) screen.Effect {
	d.of.when = w
	d.of.plan.Until = w.lasts()
	return screen.Each{screen.Put{Screen: d.of}, screen.Ask{Dialog: d}}
}

// keys are what can be changed of the day.
func (d theDay) keys() screen.Choice {
	w := d.of.when
	clock := func(label, given string, set func(time.Duration) (when, error)) func(*screen.Shared) screen.Effect {
		return func(*screen.Shared) screen.Effect {
			return screen.Ask{Dialog: screen.Field{Label: label, Unit: words.ClockHint, Input: screen.Prefilled(given, false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
				at, ok := clockOf(in.Trimmed())
				if !ok {
					return nil, errClock
				}
				next, err := set(at)
				if err != nil {
					return nil, err
				}
				return d.again(next), nil
			}}}
		}
	}
	return screen.Choice{Title: words.DoTheDay, Options: []screen.Option{
		screen.Opt("i", words.InDays, func(sh *screen.Shared) screen.Effect {
			return screen.AskNumber(words.InDays, screen.Limits{Unit: words.DaysFromNow, Least: 0, Most: 400}, entry.None[float64](), func(n float64) screen.Effect {
				w.day = sh.Now.Wall.AddDate(0, 0, int(n)).Format(time.DateOnly)
				return d.again(w)
			})
		}),
		screen.Opt("w", words.WoodFireAt, clock(words.WoodFireAt, plan.Clock(plan.Begins(w.begins)), func(at time.Duration) (when, error) {
			w.begins = plan.Clock(at)
			return w, nil
		})),
		screen.Opt("o", words.OutBy, clock(words.OutBy, "", func(at time.Duration) (when, error) {
			if at <= plan.Begins(w.begins) {
				at += 24 * time.Hour
			}
			w.until = at
			return w, nil
		})),
	}}
}

// clockOf reads a time of day: 8, 830, 8:30, 08.30.
func clockOf(text string) (time.Duration, bool) {
	h, m, parted := strings.Cut(strings.ReplaceAll(text, ".", ":"), ":")
	if !parted && len(h) > 2 {
		h, m = h[:len(h)-2], h[len(h)-2:]
	}
	if m == "" {
		m = "0"
	}
	hours, err := strconv.Atoi(h)
	minutes, also := strconv.Atoi(m)
	if err != nil || also != nil || hours < 0 || hours > 23 || minutes < 0 || minutes > 59 {
		return 0, false
	}
	return time.Duration(hours)*time.Hour + time.Duration(minutes)*time.Minute, true
}

func (theDay) Typing() bool { return false }

// Stays as long as it takes to read.
func (theDay) Stays() time.Duration { return 2 * screen.Readable }

func (d theDay) Update(sh *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	next, e := d.keys().Update(sh, k)
	if next != nil {
		return d, e
	}
	return nil, e
}

func (d theDay) Ask(sh *screen.Shared) *draw.Ask { return d.keys().Ask(sh) }

func (d theDay) Hints() []draw.KeyHint {
	return []draw.KeyHint{{Key: "i", Does: words.InDays}, {Key: "w", Does: words.WoodFireAt}, {Key: "o", Does: words.OutBy}, screen.Hint(screen.Global.Back)}
}

// Paint draws nothing over the screen: the page takes its place.
func (theDay) Paint(cell.Grid, *screen.Shared) {}

// Whole is the page.
func (d theDay) Whole(g cell.Grid, sh *screen.Shared) {
	th, u, s := sh.Theme, sh.Units, d.of
	screen.TopBeside(g, sh, words.ShortDay, words.DayIs(s.when.day))
	w, h := g.Size()
	y := 3
	line := func(text string, role theme.Role) {
		if y < h-2 {
			y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 4, H: h - 2 - y}, text, th.Style(role))
		}
	}
	line(words.ByWhenHead, theme.Quiet)
	for _, due := range s.due(sh) {
		by, late := words.DueBy(s.when.day, due, sh.Now.Wall)
		role := theme.Text
		if late {
			role = theme.Strong
		}
		if y < h-2 {
			n := g.Text(2, y, by, th.Style(theme.Strong))
			x := 2 + max(n+2, 16)
			y += max(1, g.Wrap(cell.Rect{X: x, Y: y, W: w - x - 2, H: h - 2 - y}, words.DueSays(u, due), th.Style(role)))
		}
	}
	line(words.CeilingsHead, theme.Quiet)
	for _, c := range s.plan.Ceilings() {
		if y < h-2 {
			g.Text(2, y, words.KgRound(u, c.Ore), th.Style(theme.Strong))
			g.TextIn(cell.Rect{X: 18, Y: y, W: w - 19, H: 1}, words.CeilingSays(c), th.Style(theme.Text))
			y++
		}
	}
	if h > 30 {
		y++
	}
	if y < h-2 {
		g.Fill(cell.Rect{Y: y, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
		y++
	}
	foot := g.Rows(words.JudgeYourself, w-4)
	s.clock(g.Sub(cell.Rect{Y: y, W: w, H: max(h-2-foot-y, 0)}), sh)
	g.Wrap(cell.Rect{X: 2, Y: h - 2 - foot, W: w - 4, H: foot}, words.JudgeYourself, th.Style(theme.Quiet))
}

// due is what is still to be done before the day.
func (s Screen) due(sh *screen.Shared) []plan.Due {
	h := sh.House()
	f, ok := s.built(h)
	if !ok {
		return s.plan.ByWhen(h, nil)
	}
	return s.plan.ByWhen(h, &f)
}

// leastDay is how many columns a moment of the day takes at least: the clock and its words.
const leastDay = 24

// clock is the order of the day by the way shown, in as many columns as it takes.
func (s Screen) clock(g cell.Grid, sh *screen.Shared) (rows int) {
	th, u := sh.Theme, sh.Units
	w, h := g.Size()
	if h < 1 {
		return 0
	}
	way := s.plan.Ways[min(s.way, len(s.plan.Ways)-1)]
	lit := s.when.lit()
	moments := s.plan.Day(way)
	if most := max((w-2)/leastDay, 1) * h; len(moments) > most { // the first of them, and the bloom
		moments = append(moments[:most-1:most-1], moments[len(moments)-1])
	}
	columns := (len(moments) + h - 1) / h
	rows = (len(moments) + columns - 1) / columns
	each := (w - 2) / max(columns, 1)
	for i, m := range moments {
		x, row := 2+i/rows*each, i%rows
		n := g.Text(x, row, lit.Add(m.After).Format(modelwords.Clock), th.Style(theme.Strong))
		says := words.MomentSays(u, m)
		if g.Width(says) > each-n-2 {
			says = words.MomentBrief(u, m)
		}
		g.TextIn(cell.Rect{X: x + n + 1, Y: row, W: each - n - 2, H: 1}, says, th.Style(theme.Text))
	}
	return rows
}
