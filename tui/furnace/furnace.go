// Package furnace is the screen of the furnaces: each as it was built, in its dated
// versions, drawn to scale, with what is reckoned of it.
package furnace

import (
	"errors"
	"reflect"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the list of the furnaces, one of them picked.
type Screen struct {
	picked  entry.UID
	offered map[entry.UID]time.Time // up to what the wall did a new version was offered
}

// Keys are the keys of the furnaces. The letters of the acts of a fire are left to it.
type Keys struct {
	screen.MoveKeys
	Light, New, Sizes, Drying, Blast, CrossOut, Undo key.Binding
}

// Map are those keys.
var Map = Keys{
	MoveKeys: screen.Move,
	Light:    screen.Bind(words.DoLightIt, "enter"),
	New:      screen.Bind(words.DoNewFurnace, "n"),
	Sizes:    screen.Bind(words.DoSizes, "w"),
	Drying:   screen.Bind(words.DoDrying, "i"),
	Blast:    screen.Bind(words.DoBagTest, "a"),
	CrossOut: screen.Bind(words.DoStrikeStores, "x"),
	Undo:     screen.Bind(words.DoUndo, "e"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Light, k.New, k.Sizes, k.Drying, k.Blast, k.CrossOut, k.Undo}, k.MoveKeys.All()...)
}

// New is the list at its top.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Furnace }
func (Screen) Keys() screen.KeyMap { return Map }

// Beside the fire it stands.
func (Screen) Beside() {}

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoFurnaces }

// Hints are what can be done.
func (Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	k := Map
	if len(sh.House().Furnaces) == 0 {
		return screen.Hints(k.New, screen.Global.Views, screen.Global.Back)
	}
	return []draw.KeyHint{screen.Short(k.Light, words.ShortLightIt), screen.Short(k.New, words.ShortNew), screen.Short(k.Sizes, words.ShortSizes), screen.Short(k.Drying, words.ShortDrying),
		screen.Short(k.Blast, words.ShortBagTest), screen.Short(k.CrossOut, words.ShortCrossOut), screen.Short(screen.Global.Views, words.ShortViews)}
}

// at is the place of the picked furnace; the last built where none is.
func (s Screen) at(fs []house.Furnace) int {
	if i := slices.IndexFunc(fs, func(f house.Furnace) bool { return f.ID == s.picked }); i >= 0 {
		return i
	}
	return len(fs) - 1
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	fs := sh.House().Furnaces
	at := s.at(fs)
	if to, ok := Map.Moved(t, at, len(fs), 5); ok {
		if len(fs) > 0 {
			s.picked = fs[max(to, 0)].ID
		}
		return s, nil
	}
	switch k := Map; {
	case key.Matches(t, k.New):
		return s, s.built(sh)
	case key.Matches(t, k.CrossOut):
		return s, act.CrossOutInHouse(sh, entry.OnFurnace, says)
	case key.Matches(t, k.Undo):
		return s, act.BringBackInHouse(sh, entry.OnFurnace, says)
	case !key.Matches(t, k.All()...):
		return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case len(fs) == 0:
		return s, screen.Refuse(words.FurnaceNothing)
	}
	f := fs[at]
	s.picked = f.ID
	switch k := Map; {
	case key.Matches(t, k.Light):
		return s, act.Alongside(sh, func(*screen.Shared) screen.Effect {
			return screen.Go{To: screen.Light, With: screen.InFurnace(f.ID)}
		})
	case key.Matches(t, k.Sizes):
		return s, sizes(sh.Units, f.Last().Furnace)
	case key.Matches(t, k.Drying):
		return s, drying(sh, f)
	}
	return s, bagTest(f.Last().Furnace)
}

// says is an event of the furnaces in words.
func says(sh *screen.Shared, ev entry.Event) string { return sh.Units.Event(ev) }

// size is one size of a furnace.
type size struct {
	key, label, unit string
	least, most      float64
	of               func(*entry.Furnace) entry.Maybe[float64]
	set              func(*entry.Furnace, entry.Maybe[float64])
}

func sized[Q entry.Quantity](k, label, unit string, least, most float64, at func(*entry.Furnace) *entry.Maybe[Q]) size {
	return size{k, label, unit, least, most,
		func(f *entry.Furnace) entry.Maybe[float64] { return act.Given(*at(f)) },
		func(f *entry.Furnace, v entry.Maybe[float64]) {
			*at(f) = entry.Maybe[Q]{Value: Q(v.Value), Known: v.Known}
		}}
}

// all are the sizes that are asked, in the order in which one measures them.
var all = []size{
	sized("o", words.FormBore, "cm", 5, 500, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.Bore }),
	sized("p", words.BoreAtTop, "cm", 5, 500, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.BoreTop }),
	sized("m", words.FormStack, "cm", 5, 500, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.Stack }),
	sized("i", words.FormRim, "cm", 5, 500, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.Rim }),
	sized("l", words.FormBase, "cm", 0, 300, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.TuyereBase }),
	sized("w", words.WallThick, "cm", 1, 100, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.Wall }),
	sized("e", words.TuyereBoreIs, "mm", 1, 200, func(f *entry.Furnace) *entry.Maybe[entry.Millimetre] { return &f.TuyereBore }),
	sized("a", words.TuyereDown, "degrees downwards", 0, 90, func(f *entry.Furnace) *entry.Maybe[entry.Degree] { return &f.TuyereAngle }),
}

// built asks for a furnace from its name on; what was not measured stays blank.
func (s Screen) built(sh *screen.Shared) screen.Effect {
	f := entry.Furnace{UID: sh.NewUID()}
	return screen.Ask{Dialog: screen.Field{Label: words.FormFurnace, Input: screen.NewInput(false), Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
		if f.Name = in.Trimmed(); f.Name == "" {
			return nil, errors.New(words.NameMissing)
		}
		for _, o := range sh.House().Furnaces {
			if o.Last().Furnace.Name == f.Name {
				return nil, errors.New(words.FurnaceTaken(f.Name))
			}
		}
		return s.ask(f, 0, nil), nil
	}}}
}

// ask asks for one size after the other, and keeps the furnace after the last. One that can
// hardly be is asked about at once, while it can be typed anew with the others kept; sure are
// those doubts that were answered.
func (s Screen) ask(f entry.Furnace, n int, sure screen.Each) screen.Effect {
	if n == len(all) {
		s.picked = f.UID
		return append(sure[:len(sure):len(sure)], keep(f, entry.Built), screen.Put{Screen: s})
	}
	z := all[n]
	return screen.Ask{Dialog: screen.Field{Label: z.label, Unit: z.unit, Blank: words.BlankIsNot, Input: screen.NewInput(true), Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
		next := f
		if in.Trimmed() != "" {
			v, err := in.Value(sh.Units, screen.Limits{Unit: z.unit, Least: z.least, Most: z.most})
			if err != nil {
				return nil, err
			}
			z.set(&next, entry.Some(v))
			if next.Rim.Known && next.Stack.Known && next.Rim.Value < next.Stack.Value {
				return nil, errors.New(words.RimBelowMark)
			}
		}
		before := doubt.InHouse(entry.FurnaceBuilt{Furnace: f}, sh.House())
		for _, d := range doubt.InHouse(entry.FurnaceBuilt{Furnace: next}, sh.House()) {
			if slices.Contains(before, d) {
				continue
			}
			return screen.Ask{Dialog: screen.Choice{Title: words.Really(sh.Units.Doubt(d)), Question: true, Options: []screen.Option{
				screen.Yes(func(*screen.Shared) screen.Effect {
					return s.ask(next, n+1, append(sure[:len(sure):len(sure)], screen.Sure(d.Name)))
				}),
				screen.No(func(*screen.Shared) screen.Effect { return s.ask(f, n, sure) }),
			}}}, nil
		}
		return s.ask(next, n+1, sure), nil
	}}}
}

// keep keeps a version of a furnace.
func keep(f entry.Furnace, why entry.BuiltWhy) screen.Effect {
	f.Guessed = false
	return screen.DidInHouse(func(sh *screen.Shared) string { return sh.Units.Event(entry.FurnaceBuilt{Furnace: f, Why: why}) }, entry.FurnaceBuilt{Furnace: f, Why: why})
}

// sizes is the list of the sizes, which stays open until all that changed is typed; then
// it asks why. The version before stays: smelts keep the one they were lit in.
func sizes(u modelwords.Units, f entry.Furnace) screen.Effect {
	var list []screen.Option
	for _, z := range all {
		list = append(list, screen.Opt(z.key, words.SizeIs(u, z.label, z.of(&f), z.unit), func(sh *screen.Shared) screen.Effect {
			return screen.AskMaybe(z.label, screen.Limits{Unit: z.unit, Least: z.least, Most: z.most}, z.of(&f), func(v entry.Maybe[float64]) screen.Effect {
				next := f
				z.set(&next, v)
				if z.key == "o" { // a bore measured anew holds in place of those at several heights
					next.Bores = nil
				}
				return sizes(u, next)
			})
		}))
	}
	tip := sized("g", words.TipStandsIn, "cm", 0, 50, func(f *entry.Furnace) *entry.Maybe[entry.Centimetre] { return &f.TuyereProud })
	list = append(list, screen.Opt(tip.key, words.SizeIs(u, tip.label, tip.of(&f), tip.unit), func(*screen.Shared) screen.Effect {
		return screen.AskMaybe(tip.label, screen.Limits{Unit: tip.unit, Least: tip.least, Most: tip.most}, tip.of(&f), func(v entry.Maybe[float64]) screen.Effect {
			next := f
			tip.set(&next, v)
			return sizes(u, next)
		})
	}), screen.Opt("k", words.TuyereIsOf(f.TuyereOf), func(*screen.Shared) screen.Effect {
		return asked(words.TuyereOfWhat, f.TuyereOf, func(text string) (screen.Effect, error) {
			next := f
			next.TuyereOf = text
			return sizes(u, next), nil
		})
	}), screen.Opt("n", words.SlagGoes(f.Practice), func(*screen.Shared) screen.Effect { return practice(u, f) }))
	list = append(list, screen.Opt("y", words.ArchIs(u, f), func(*screen.Shared) screen.Effect { return arch(u, f) }))
	list = append(list, screen.Opt("b", words.BoresAre(f.Bores), func(*screen.Shared) screen.Effect { return bores(u, f) }),
		screen.Opt("r", words.ClayIs(f.Clay), func(*screen.Shared) screen.Effect { return recipe(u, f) }))
	return screen.Ask{Dialog: changing{f, screen.Choice{Title: words.SizesOf(f.Name), Options: list, Done: func(*screen.Shared) screen.Effect {
		why := func(k, word string, w entry.BuiltWhy) screen.Option {
			return screen.Opt(k, word, func(*screen.Shared) screen.Effect { return keep(f, w) })
		}
		return screen.Ask{Dialog: changing{f, screen.Choice{Title: words.WhyAnother, Options: []screen.Option{
			why("m", words.WhyMeasured, entry.Measured), why("p", words.WhyRepaired, entry.Repaired), why("w", words.WhyWorn, entry.Worn), why("a", words.WhyBuilt, entry.Built),
		}}}}
	}}}}
}

// changing is a list over the sizes of a furnace. What was typed meanwhile is kept as measured when the list closes without
// an answer, by esc, by another key or by itself: none of it is typed twice.
type changing struct {
	furnace entry.Furnace
	screen.Choice
}

// Opened lets the list keep what differs from the furnace of the house.
func (c changing) Opened(sh *screen.Shared) screen.Dialog {
	if f, known := sh.House().Furnace(string(c.furnace.ID())); known && !reflect.DeepEqual(f.Last().Furnace, c.furnace) {
		c.Choice.Left = func(*screen.Shared) screen.Effect { return keep(c.furnace, entry.Measured) }
	}
	return c.Choice
}

// drying keeps a day of it.
func drying(sh *screen.Shared, f house.Furnace) screen.Effect {
	d := entry.Drying{Furnace: f.ID}
	if built := f.Versions[0].From; !built.IsZero() {
		d.Day = entry.Some(entry.Count(int(sh.Now.Wall.Sub(built).Hours()/24) + 1))
	}
	text := func(label string, then func(string) screen.Effect) screen.Effect {
		return screen.Ask{Dialog: screen.Field{Label: label, Blank: words.BlankNothing, Input: screen.NewInput(false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
			return then(in.Trimmed()), nil
		}}}
	}
	return screen.AskNumber(words.FiresToday, screen.Limits{Unit: words.SmallFires, Least: 0, Most: 50}, entry.None[float64](), func(n float64) screen.Effect {
		d.Fires = entry.Some(entry.Count(n))
		return text(words.WeatherToday, func(s string) screen.Effect {
			d.Weather = s
			return text(words.CracksSeen, func(s string) screen.Effect {
				d.Cracks = s
				return screen.DidInHouse(func(sh *screen.Shared) string { return words.SmallFiresOnly + "; " + sh.Units.Event(d) }, d)
			})
		})
	})
}

// bagTest asks for the litres of a bag and three times in which it filled.
func bagTest(f entry.Furnace) screen.Effect {
	seconds := screen.Limits{Unit: "s", Least: 0.5, Most: 600}
	return screen.AskNumber(words.BagHolds, screen.Limits{Unit: "l", Least: 5, Most: 2000}, entry.None[float64](), func(l float64) screen.Effect {
		return screen.AskNumber(words.BagTime(1), seconds, entry.None[float64](), func(a float64) screen.Effect {
			return screen.AskNumber(words.BagTime(2), seconds, entry.None[float64](), func(b float64) screen.Effect {
				return screen.AskNumber(words.BagTime(3), seconds, entry.None[float64](), func(t float64) screen.Effect {
					read, taken := plan.Bag(l, [3]float64{a, b, t})
					next := f
					tens := func(v float64) entry.Maybe[entry.LitrePerMinute] {
						return entry.Some(entry.LitrePerMinute(float64(int(v/10+0.5)) * 10))
					}
					blast := entry.Blast{Volume: tens(taken.P50), PlusMinus: tens(taken.P90 - taken.P50)}
					next.Blower = []entry.Blast{blast}
					return screen.Each{keep(next, entry.Measured), screen.Say(func(sh *screen.Shared) string {
						return words.BagGave(sh.Units, read, blast)
					})}
				})
			})
		})
	})
}
