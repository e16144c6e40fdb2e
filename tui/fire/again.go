package fire

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/plan"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// again is the card on which the rest of a day is planned anew: three ends, each with what
// it takes, when it is over and what is to be feared. Taking one replaces the rest of the
// plan; what the morning promised stays.
type again struct {
	left    plan.Remains
	counted bool // the ore that may still go in was keyed here
}

// askAgain opens it, with what the stores say is left.
func askAgain(sh *screen.Shared) screen.Effect {
	if len(sh.Smelt.Rest()) == 0 {
		return screen.Refuse(words.NoRestToPlan)
	}
	var a again
	for _, s := range sh.Smelt.Supplies() {
		switch s.What {
		case entry.Ore:
			a.left.Ore = entry.Some(s.Left)
		case entry.Charcoal:
			a.left.Charcoal = entry.Some(s.Left)
		}
	}
	return screen.Ask{Dialog: a}
}

var (
	kilosLeft = screen.Limits{Unit: "kg", Least: 0, Most: 500}
	hoursLeft = screen.Limits{Unit: "hours from now", Least: 0.5, Most: 24}
)

// ways are what can be done on it.
func (a again) ways(sh *screen.Shared) screen.Choice {
	var list []screen.Option
	for i, e := range a.ends(sh) {
		if i < len(againKeys) {
			list = append(list, screen.Opt(againKeys[i], words.EndTaken(e.Name), func(sh *screen.Shared) screen.Effect { return a.take(sh, e) }))
		}
	}
	number := func(label string, l screen.Limits, given entry.Maybe[float64], set func(*again, float64)) func(*screen.Shared) screen.Effect {
		return func(*screen.Shared) screen.Effect {
			return screen.AskNumber(label, l, given, func(v float64) screen.Effect {
				set(&a, v)
				return screen.Ask{Dialog: a}
			})
		}
	}
	return screen.Choice{Title: words.DoAgain, Options: append(list,
		screen.Opt("o", words.AgainOre, number(words.AgainOre, kilosLeft, a.left.Ore, func(a *again, v float64) { a.left.Ore, a.counted = entry.Some(v), true })),
		screen.Opt("k", words.AgainCharcoal, number(words.AgainCharcoal, kilosLeft, a.left.Charcoal, func(a *again, v float64) { a.left.Charcoal = entry.Some(v) })),
		screen.Opt("n", words.AgainUntil, number(words.AgainUntil, hoursLeft, entry.None[float64](), func(a *again, v float64) {
			a.left.Until = sh.Smelt.Reading().At + time.Duration(v*float64(time.Hour))
		})),
	)}
}

// againKeys take the ends, in their order.
var againKeys = [...]string{"a", "e", "l"}

func (a again) ends(sh *screen.Shared) []plan.End {
	return plan.AgainFrom(sh.Smelt.Timeline(), a.left)
}

// take keeps an end. Ore that was counted on the way is kept with it.
func (a again) take(sh *screen.Shared, e plan.End) screen.Effect {
	acts := screen.Keep{{Event: entry.AgainFromHere{Taken: string(e.Name), Steps: e.Steps}}}
	if a.counted {
		for _, p := range sh.Smelt.Recipe() {
			if p.What == entry.Ore && p.Lot != "" {
				acts = append(acts, screen.Act{Event: entry.Weigh{What: entry.WeighLot, Name: p.Lot, Mass: entry.Kilogram(a.left.Ore.Value)}})
			}
		}
	}
	return screen.Each{acts, screen.Said(words.AgainTaken(e.Name))}
}

func (again) Typing() bool { return false }

func (a again) Update(sh *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	next, e := a.ways(sh).Update(sh, k)
	if next != nil {
		return a, e
	}
	return nil, e
}

// Stays as long as it takes to read the card.
func (again) Stays() time.Duration { return 2 * screen.Readable }

func (a again) Ask(sh *screen.Shared) *draw.Ask { return a.ways(sh).Ask(sh) }

func (a again) Hints() []draw.KeyHint {
	return []draw.KeyHint{
		{Key: againKeys[0], Does: words.ShortAgainLate}, {Key: againKeys[1], Does: words.ShortAgainShorter}, {Key: againKeys[2], Does: words.ShortAgainLeaner},
		{Key: "o", Does: words.ShortAgainOre}, {Key: "k", Does: words.ShortAgainCharcoal}, {Key: "n", Does: words.ShortAgainUntil},
		screen.Hint(screen.Global.Back),
	}
}

// Paint draws nothing over the screen: the card takes its place.
func (again) Paint(cell.Grid, *screen.Shared) {}

// Whole is the card, under the time to the next charge.
func (a again) Whole(g cell.Grid, sh *screen.Shared) {
	th, u, s := sh.Theme, sh.Units, sh.Smelt
	r := s.Reading()
	screen.TopBeside(g, sh, words.DoAgain, "")
	w, h := g.Size()
	v := scene.Of(g, sh, s, Map.Charge)
	clock := func(at time.Duration) string {
		if at < 0 {
			return words.NoneOfIt
		}
		return words.ClockOf(v.Now.Add(at - r.At))
	}
	y := 3
	line := func(text string, role theme.Role) {
		y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 4, H: max(0, h-3-y)}, text, th.Style(role))
	}
	t := s.Timeline()
	line(words.AgainSoFar(u, t.Ore.Charged, t.Charcoal.Charged, r.Usual), theme.Text)
	line(words.AgainLeft(u, a.left.Ore, a.left.Charcoal, a.left.Until, clock(a.left.Until)), theme.Text)
	line(a.promised(sh, clock), theme.Quiet)
	y++
	label, ends := 12, a.ends(sh)
	each := (w - label - 4) / max(len(ends), 1)
	rows := []string{words.AgainOreAll, words.AgainCharcoalAll, words.AgainLastOre, words.AgainPull, words.AgainBloom, words.AgainFears}
	for i, name := range rows {
		g.Text(2, y+1+i, name, th.Style(theme.Quiet))
	}
	for i, e := range ends {
		x := 2 + label + i*each
		col := cell.Rect{X: x, W: each - 2, H: 1}
		put := func(row int, text string, role theme.Role) {
			col.Y = y + row
			g.TextIn(col, text, th.Style(role))
		}
		n := g.Text(x, y, " "+againKeys[i]+" ", th.Style(theme.Picked))
		g.TextIn(cell.Rect{X: x + n + 1, Y: y, W: each - n - 3, H: 1}, words.EndHead(e.Name, each > 26), th.Style(theme.Strong))
		put(1, words.AgainMass(u, e.Ore), theme.Strong)
		put(2, words.AgainMass(u, e.Charcoal), theme.Text)
		put(3, clock(e.LastOre), theme.Text)
		put(4, clock(e.Pull), theme.Strong)
		put(5, words.AgainBloomIs(u, r.BloomOf(e.OreDry)), theme.Text)
		fears := words.AgainFear(u, e)
		if len(fears) == 0 {
			put(6, words.AgainNoFear, theme.Text)
		}
		for j, f := range fears {
			if y+6+j < h-3 {
				put(6+j, f, theme.Strong)
			}
		}
	}
}

// promised is what the morning promised, which stays.
func (a again) promised(sh *screen.Shared, clock func(time.Duration) string) string {
	l := sh.Smelt.Light()
	if l.Plan == nil {
		return words.NothingPromised
	}
	at, timed := fold.PromisedPull(l)
	out := ""
	if timed {
		out = clock(at)
	}
	return words.MorningPromised(sh.Units, l.Plan, out)
}
