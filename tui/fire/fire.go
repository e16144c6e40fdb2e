// Package fire is the screen beside the furnace, near and from afar, with the acts
// that are keyed there.
package fire

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Screen is the screen beside the furnace. All it shows stands in the smelt; far
// shows the little of it that is read from five metres, turn another warning
// than the gravest.
type Screen struct {
	far  bool
	turn turn
	hour *hour // the next hour, while it is looked at
}

// New is the near view.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Fire }
func (Screen) Keys() screen.KeyMap { return Map }

// Listed while there is a smelt.
func (Screen) Listed(sh *screen.Shared) string {
	if !sh.Smelt.Is() {
		return ""
	}
	return words.DoFire
}

// Entered shows the far view when it is asked for.
func (f Screen) Entered(_ *screen.Shared, with any) (screen.Screen, screen.Effect) {
	if _, far := with.(screen.Far); far {
		return Screen{far: true}, nil
	}
	f.hour = nil
	return f, nil
}

// Back goes from the far view to the near one, and closes the next hour.
func (f Screen) Back() (screen.Screen, bool) { return Screen{}, f.far || f.hour != nil }

// IsFar tells whether it shows the far view.
func (f Screen) IsFar() bool { return f.far }

// ShowsCaution tells whether it has the room for one now.
func (f Screen) ShowsCaution(sh *screen.Shared) bool {
	return scene.CautionShows(sh.W, sh.H, f.far, len(sh.Smelt.Standing()) > 0)
}

// Explains lists the rare acts in the help.
func (Screen) Explains() (heading string, keys []key.Binding) {
	for _, o := range otherOptions() {
		keys = append(keys, o.Binding)
	}
	return words.HelpOthers(screen.AllKeys(Map.Rare)), keys
}

// Gathers the scoops, minutes and arrows of a key that comes quickly.
func (Screen) Gathers(t screen.Typed) bool { return key.Matches(t, Map.Repeating()...) }

// Update takes a key. Any other than the one that turns to another warning is
// back at the gravest.
func (f Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	if key.Matches(t, screen.Global.Far) && sh.Smelt.Is() {
		return Screen{far: !f.far}, nil
	}
	if key.Matches(t, Map.Seen) && screen.RightsIn(sh.Smelt) == screen.Own {
		return f.seen(sh)
	}
	f.turn = turn{}
	if key.Matches(t, Map.Hour) && sh.Smelt.Is() {
		return f.ahead(sh)
	}
	f.hour = nil // it takes no key away
	return f, f.does(sh, t, p.Presses())
}

// does is what a key at the fire does, if it may be done to this smelt.
func (f Screen) does(sh *screen.Shared, t screen.Typed, presses int) screen.Effect {
	rights := screen.RightsIn(sh.Smelt)
	switch {
	case !sh.Smelt.Is():
		return screen.Refuse(words.NoSmelt)
	case key.Matches(t, Map.Chemistry):
		l := scene.LayoutOf(sh.W, sh.H)
		if f.far {
			l = scene.Layout{}
		}
		return scene.Chemistry(l)
	}
	for _, a := range acts(presses) {
		if !key.Matches(t, a.key) {
			continue
		}
		if rights < a.needs {
			break
		}
		return a.does(sh)
	}
	if rights < screen.Own {
		return screen.Refuse(act.WhyNot(sh.Smelt))
	}
	return screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

// keyed is what a key does, and the rights in the smelt that it needs.
type keyed struct {
	key   key.Binding
	needs screen.Rights
	does  func(*screen.Shared) screen.Effect
}

// acts are what the keys do but for those that only look; scoops, arrows and
// minutes as often as they were pressed.
func acts(presses int) []keyed {
	ore := func(scoops entry.Count) func(*screen.Shared) screen.Effect {
		return func(sh *screen.Shared) screen.Effect { return oreAlone(sh, scoops*entry.Count(presses)) }
	}
	next := func(w entry.What, by entry.Count) func(*screen.Shared) screen.Effect {
		return func(sh *screen.Shared) screen.Effect { return nextBy(sh, w, by*entry.Count(presses)) }
	}
	earlier := func(sh *screen.Shared) screen.Effect { return act.MinutesEarlier(sh, presses) }
	remark := func(r entry.LevelRemark) func(*screen.Shared) screen.Effect {
		return func(sh *screen.Shared) screen.Effect { return level(sh, r) }
	}
	gas := func(sees string) func(*screen.Shared) screen.Effect {
		return func(sh *screen.Shared) screen.Effect { return topGas(sh, sees) }
	}
	const all, mends, looks = screen.Own, screen.Mendable, screen.LookOnly
	return []keyed{
		{Map.Charge, all, chargeAsShown}, {Map.Charcoal, all, charcoalOnly}, {Map.Scoop, all, ore(1)}, {Map.Half, all, ore(0.5)},
		{Map.MoreOre, all, next(entry.Ore, oreStep)}, {Map.LessOre, all, next(entry.Ore, -oreStep)},
		{Map.MoreCharcoal, all, next(entry.Charcoal, charcoalStep)}, {Map.LessCharcoal, all, next(entry.Charcoal, -charcoalStep)},
		{Map.CrossOut, all, act.CrossOutLast}, {Map.Earlier, all, earlier},
		{Map.NotToMark, all, remark(entry.NotToMark)}, {Map.Heaped, all, remark(entry.Heaped)},
		{Map.Alight, all, gas(entry.TopGasAlight)}, {Map.Out, all, gas(entry.TopGasOut)},
		{Map.Blast, all, act.Now(act.AskBlast)}, {Map.Tap, all, act.Now(act.AskTap)}, {Map.Rod, all, act.Now(act.Plain(entry.Rod{}))},
		{Map.Poke, all, act.Now(act.Plain(entry.Poke{}))}, {Map.Dip, all, act.Now(act.AskDip)}, {Map.Look, all, act.Now(act.AskLook)},
		{Map.Temperature, all, act.Now(act.AskTemperature)}, {Map.Pause, all, act.Now(act.AskPause)},
		{Map.Weigh, mends, act.Now(act.AskWeigh)}, {Map.Note, mends, act.Now(act.AskNote)},
		{Map.Rare, looks, others},
	}
}

// Paint paints the near view or the far one.
func (f Screen) Paint(g cell.Grid, sh *screen.Shared) {
	s := sh.Smelt
	if !s.Is() {
		screen.Top(g, sh, words.DoFire, "")
		g.Text(2, draw.TopRows+1, words.NoSmelt, sh.Theme.Style(theme.Text))
		return
	}
	v := scene.Of(g, sh, s, Map.Charge)
	v.Warnings = f.turn.of(v.Warnings, sh.Now)
	v.Caution = scene.CautionText(sh.Careful)
	if f.far {
		v.Asked = sh.Asked
		if g = farOther(g, sh); sh.Other.Is() {
			v.Fire = screen.NameOf(sh, s)
		}
		paintFar(g, pen{sh.Pen()}, s.Reading(), v)
		return
	}
	scene.Paint(g, sh.Pen(), scene.LayoutOf(g.Size()), s.Reading(), v)
	f.hour.paint(g, sh)
}
