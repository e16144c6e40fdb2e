// Package plan is the screen of the smelt to come: what is wanted, how sure that is, what it
// takes beside what there is, and three ways to charge of which one is taken.
package plan

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/learn"
	"chargehand/model/plan"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is a plan being made. It is reckoned beside the screen, on a key.
type Screen struct {
	want     plan.Want
	furnace  entry.UID // "" for the last built, or the usual one
	way      int
	blast    entry.Maybe[float64] // l/min, as it was said here
	own      map[string]plan.Rise // how the ore rises, where a person changed it
	when     when                 // the day
	asked    int                  // how often it was asked to be reckoned
	made     bool                 // the answer below stands
	plan     plan.Plan
	foresee  []plan.Foreseen
	trying   string               // what is tried this time, as it was said here
	seed     entry.Maybe[float64] // kg of iron-rich slag, as it was said here
	forge    entry.FuelKind       // what the forge burns, as it was said here
	store    screen.Store         // for the furnace of the last smelt
	asIn     entry.Furnace        // that furnace, where none is keyed
	smelt    string               // the smelt it is of; "" for none
	prepares bool                 // to be prepared as soon as that was read
	starter  bool                 // the usual furnace was asked for, and not that one
}

// Keys are the keys of the plan. The letters of the acts of a fire are left to it.
type Keys struct {
	Take, Less, More, Wanted, Sure, Furnace, Rises, Day, Lighting, Light, Slag, Assumed, Wall, Trying, CrossOut key.Binding
}

// Map are those keys.
var Map = Keys{
	Take:     screen.Bind(words.DoTakePlan, "enter"),
	Less:     screen.Bind(words.DoWayBack, "left"),
	More:     screen.Bind(words.DoWayOn, "right"),
	Wanted:   screen.Bind(words.DoWanted, "w"),
	Sure:     screen.Bind(words.DoSure, "n"),
	Furnace:  screen.Bind(words.DoWhichFurnace, "i"),
	Rises:    screen.Bind(words.DoRises, "o"),
	Day:      screen.Bind(words.DoTheDay, "m"),
	Lighting: screen.Bind(words.DoBeforeLighting, "g"),
	Light:    screen.Bind(words.DoLightPlan, "l"),
	Slag:     screen.Bind(words.DoSlagCheck, "e"),
	Assumed:  screen.Bind(words.DoAssumed, "a"),
	Wall:     screen.Bind(words.DoWallWords, "k"),
	Trying:   screen.Bind(words.DoTrying, "p"),
	CrossOut: screen.Bind(words.DoStrikeStores, "x"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return []key.Binding{k.Take, k.More, k.Less, k.Wanted, k.Sure, k.Furnace, k.Rises, k.Day, k.Lighting, k.Light, k.Slag, k.Trying, k.Wall, k.Assumed, k.CrossOut}
}

// Repeating are the ones that move.
func (k Keys) Repeating() []key.Binding { return []key.Binding{k.Less, k.More} }

// usual is what is wanted where nobody has said yet: a bloom of 4 kg, as sure as not.
var usual = plan.Want{What: entry.BloomPiece, Kg: 4, Sure: 0.5}

// New is a plan for the usual. The store has the smelts that were; nil for none.
func New(store screen.Store) Screen { return Screen{want: usual, way: 1, store: store} }

// Apart is one whose answers are taken for no other's: of a house that is only looked at.
func Apart() Screen {
	s := New(nil)
	s.asked = 1 << 20
	return s
}

func (Screen) ID() screen.ID       { return screen.Plan }
func (Screen) Keys() screen.KeyMap { return Map }

// Beside the fire it stands.
func (Screen) Beside() {}

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoPlanSmelt }

// Hints are what can be done.
func (s Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	k := Map
	next, light := screen.Short(k.Take, words.ShortTakePlan), screen.Short(k.Light, words.ShortLightIt)
	if s.taken(sh) {
		next, light = light, screen.Short(k.CrossOut, words.ShortCrossOut)
	}
	return []draw.KeyHint{next, {Key: screen.KeyLabel("left") + " " + screen.KeyLabel("right"), Does: words.ShortWhichWay}, screen.Short(k.Wanted, words.ShortWanted), screen.Short(k.Sure, words.ShortSure),
		screen.Short(k.Furnace, words.ShortWhichFurnace), screen.Short(k.Day, words.ShortDay), screen.Short(k.Rises, words.ShortRises), screen.Short(k.Lighting, words.ShortBefore), light, screen.Short(k.Slag, words.ShortSlag), screen.Short(k.Trying, words.ShortTrying), screen.Short(k.Wall, words.ShortWall), screen.Short(k.Assumed, words.ShortAssumed), screen.Short(screen.Global.Views, words.ShortViews)}
}

// Entered reckons anew: the stores may have changed.
func (s Screen) Entered(sh *screen.Shared, with any) (screen.Screen, screen.Effect) {
	if ps := sh.House().Plans; !s.made && s.when == (when{}) && len(ps) > 0 {
		if p := ps[len(ps)-1]; p.Day >= sh.Now.Wall.Format(time.DateOnly) { // the one that was taken is gone on with
			s.when.day, s.when.begins = p.Day, p.Begins
			if p.Wanted.Mass.Known && p.Sure.Known {
				s.want = plan.Want{What: p.Wanted.What, Kg: float64(p.Wanted.Mass.Value), Sure: float64(p.Sure.Value)}
			}
			s.forge = p.Forge
		}
	}
	last := s.readLast(sh)
	_, prepares := with.(screen.Prepare)
	s.prepares = prepares && last != nil
	next, e := s.reckon(sh)
	switch {
	case last != nil:
		return next, screen.Each{e, last}
	case prepares:
		return next, screen.Each{e, next.(Screen).prepare(sh)}
	}
	return next, e
}

// built is the furnace that the plan is for.
func (s Screen) built(h house.State) (house.Furnace, bool) {
	if i := slices.IndexFunc(h.Furnaces, func(f house.Furnace) bool { return f.ID == s.furnace }); i >= 0 {
		return h.Furnaces[i], true
	}
	if n := len(h.Furnaces); n > 0 {
		return h.Furnaces[n-1], true
	}
	return s.asLast()
}

// ask is what is reckoned.
func (s Screen) ask(sh *screen.Shared) plan.Ask {
	h := sh.House()
	var f *house.Furnace
	if built, ok := s.built(h); ok {
		f = &built
	}
	var ore *house.Lot
	mix := ""
	if l, ok := plan.MostOf(h, entry.LotOre); ok {
		ore, mix = &l, l.Mix
	}
	taught := learn.HistoryOf(sh.Shelf.Lines, h.Pieces...)
	a := plan.Ask{Want: s.want, Rises: s.own, Until: s.when.lasts(), Seed: s.seed, Forge: s.forge}
	if s.blast.Known {
		a.Blast = plan.Metered(s.blast.Value)
	}
	return a.FromHouse(h, f, ore, taught.About("", sh.Now.Wall, mix))
}

// reckoned is the answer, which comes back.
type reckoned struct {
	asked   int
	plan    plan.Plan
	foresee []plan.Foreseen // nil while the model is still at it
}

// reckon asks for the plan, and then for what the model says of its ways.
func (s Screen) reckon(sh *screen.Shared) (screen.Screen, screen.Effect) {
	s.asked++
	n, a := s.asked, s.ask(sh)
	return s, screen.Run{Cmd: func() tea.Msg { return reckoned{asked: n, plan: plan.Of(a)} }}
}

// Receive takes an answer, unless something else was asked since: the plan; then what the
// model says of its ways; then, one plausible furnace after the other, their bands.
func (s Screen) Receive(sh *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	if last, is := msg.(lastRead); is {
		s.asIn, s.smelt = last.furnace, last.smelt
		return s.inLast(sh)
	}
	r, mine := msg.(reckoned)
	switch {
	case !mine:
		return s, nil, false
	case r.asked != s.asked:
		return s, nil, true
	}
	if r.foresee == nil && s.made && s.plan.SolvedAs(r.plan) { // what was solved stands
		r.foresee = s.foresee
	}
	until := s.when.lasts()
	s.made, s.plan, s.foresee, s.want = true, r.plan, r.foresee, r.plan.Want
	s.plan.Until = until
	if len(r.plan.Ways) == 0 || s.asked8() >= plan.BandFurnaces || r.foresee != nil && !slices.ContainsFunc(r.foresee, func(f plan.Foreseen) bool { return f.Known }) {
		return s, nil, true
	}
	return s, screen.Run{Cmd: func() tea.Msg {
		next := make([]plan.Foreseen, len(r.plan.Ways))
		for i, w := range r.plan.Ways {
			if r.foresee == nil {
				next[i] = r.plan.Foresee(w)
			} else {
				next[i] = r.plan.Widen(w, r.foresee[i])
			}
		}
		r.foresee = next
		return r
	}}, true
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	ways := len(s.plan.Ways)
	switch k := Map; {
	case key.Matches(t, k.Less) && ways > 0:
		s.way = max(s.way-1, 0)
		return s, nil
	case key.Matches(t, k.More) && ways > 0:
		s.way = min(s.way+1, ways-1)
		return s, nil
	case key.Matches(t, k.Wanted):
		return s, s.wanted(sh)
	case key.Matches(t, k.Sure):
		return s, s.sure(sh)
	case key.Matches(t, k.Furnace):
		return s, s.which(sh)
	case key.Matches(t, k.Rises):
		return s, s.rise(sh)
	case key.Matches(t, k.Day):
		return s, s.showDay()
	case key.Matches(t, k.Lighting):
		return s, beforeLighting(sh)
	case key.Matches(t, k.Slag):
		return s, s.checkSlag()
	case key.Matches(t, k.Assumed):
		return s, assumed(sh)
	case key.Matches(t, k.Wall):
		return s, wall(sh)
	case key.Matches(t, k.Trying):
		return s, s.try(sh)
	case key.Matches(t, k.CrossOut):
		return s, act.CrossOutInHouse(sh, entry.OnPlan, says)
	case key.Matches(t, k.Take):
		return s, s.take(sh)
	case key.Matches(t, k.Light):
		f, _ := s.built(sh.House())
		return s, act.Alongside(sh, func(sh *screen.Shared) screen.Effect {
			to := screen.Go{To: screen.Light, With: screen.InFurnace(f.ID)}
			if _, waits := sh.House().Waiting(); waits && s.made && s.way < len(s.plan.Ways) && !s.taken(sh) { // it is lit by what is shown, not by what was taken before the stores changed
				return screen.Each{s.take(sh), to}
			}
			return to
		})
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

func says(sh *screen.Shared, ev entry.Event) string { return sh.Units.Event(ev) }

// asking is the screen with something else asked, reckoned.
func (s Screen) asking(sh *screen.Shared) screen.Effect {
	next, e := s.reckon(sh)
	return screen.Each{screen.Put{Screen: next}, e}
}

func (s Screen) wanted(*screen.Shared) screen.Effect {
	of := func(k, word string, what entry.PieceKind) screen.Option {
		return screen.Opt(k, word, func(sh *screen.Shared) screen.Effect {
			given := entry.Some(s.want.Kg)
			return screen.AskNumber(words.HowHeavy(word), screen.Limits{Unit: "kg", Least: 0.1, Most: 200}, given, func(kg float64) screen.Effect {
				s.want.What, s.want.Kg = what, kg
				if s.want.Forges() {
					return s.forging()
				}
				return s.asking(sh)
			})
		})
	}
	return screen.ChooseOr("b", words.WhatIsWanted, of("b", words.ABloom, entry.BloomPiece), of("l", words.ABillet, entry.Billet), of("r", words.ABar, entry.Bar))
}

// forging asks what the forge burns.
func (s Screen) forging() screen.Effect {
	of := func(k string, f entry.FuelKind) screen.Option {
		return screen.Opt(k, words.ForgeBurns(f), func(sh *screen.Shared) screen.Effect {
			s.forge = f
			return s.asking(sh)
		})
	}
	was := map[entry.FuelKind]string{entry.ForgeCharcoal: "h", entry.ForgeCoal: "o", entry.ForgeGas: "g", "": "n"}[s.forge]
	return screen.ChooseOr(was, words.WhatForgeBurns, of("h", entry.ForgeCharcoal), of("o", entry.ForgeCoal), of("g", entry.ForgeGas), of("n", ""))
}

func (s Screen) sure(sh *screen.Shared) screen.Effect {
	return screen.AskNumber(words.HowSure, screen.Limits{Unit: words.InTen, Least: 0, Most: 10}, entry.Some(math.Round(10*s.want.Sure)), func(n float64) screen.Effect {
		s.want.Sure = n / 10
		return s.asking(sh)
	})
}

func (s Screen) which(sh *screen.Shared) screen.Effect {
	fs := sh.House().Furnaces
	if len(fs) == 0 && s.smelt == "" {
		return screen.Go{To: screen.Furnace}
	}
	if len(fs) == 0 {
		last, usual := s.starting(func(sh *screen.Shared, next Screen) screen.Effect { return next.asking(sh) })
		return screen.Choose(words.DoWhichFurnace, last, usual)
	}
	return screen.Choose(words.DoWhichFurnace, screen.Lettered('i', len(fs), func(i int) (string, func(*screen.Shared) screen.Effect) {
		return fs[i].Last().Furnace.Name, func(sh *screen.Shared) screen.Effect {
			s.furnace = fs[i].ID
			return s.asking(sh)
		}
	})...)
}

// take keeps the plan with the way that is shown; the next fire lit in this furnace goes
// by it.
func (s Screen) take(sh *screen.Shared) screen.Effect {
	switch {
	case !s.made:
		return screen.Refuse(words.BeingReckoned)
	case s.way >= len(s.plan.Ways):
		return screen.Refuse(words.NoOreGivesIt)
	}
	if s.taken(sh) {
		return screen.Refuse(words.PlanIsTaken)
	}
	e := s.kept(sh)
	e.UID = sh.NewUID()
	return screen.DidInHouse(func(*screen.Shared) string { return words.PlanTaken(e.Taken, e.Name) }, e)
}

// kept is the plan shown as it would be kept, with no uid yet.
func (s Screen) kept(sh *screen.Shared) entry.Plan {
	h := sh.House()
	e := s.plan.Kept(h, s.plan.Ways[s.way].Name)
	e.Day, e.Begins = sh.Now.Wall.Format(time.DateOnly), s.when.begins
	if s.when.day != "" {
		e.Day = s.when.day
	}
	e.Name = words.PlanName(sh.Units, s.want.What, s.want.Kg)
	if f, ok := s.built(h); ok {
		e.Furnace = string(f.ID)
	}
	e.Trying = s.trying
	return e
}

// taken tells whether the way shown is the plan that was taken last and waits for its fire.
func (s Screen) taken(sh *screen.Shared) bool {
	p, waits := sh.House().Waiting()
	if !waits || !s.made || s.way >= len(s.plan.Ways) {
		return false
	}
	p.Plan.UID = ""
	return reflect.DeepEqual(p.Plan, s.kept(sh))
}

// beforeLighting is the list of what must be so, each line ticked by its number. It never
// says that all is well: it knows only what was keyed.
func beforeLighting(sh *screen.Shared) screen.Effect {
	h := sh.House()
	if len(h.Plans) == 0 {
		return screen.Refuse(words.TakeOneFirst)
	}
	p := h.Plans[len(h.Plans)-1]
	items := slices.Concat(words.BeforeLighting, h.WallWords.Lighting)
	list := screen.Lettered('g', len(items)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i == len(items) {
			return words.AnotherLine, func(sh *screen.Shared) screen.Effect {
				return screen.AskWords(words.AnotherLine, "", func(text string) screen.Effect {
					w := h.WallWords
					w.Lighting = append(slices.Clone(w.Lighting), text)
					return screen.Each{screen.House{{Event: w}}, screen.Again(beforeLighting), screen.Said(words.LineAdded(text))}
				})
			}
		}
		done := p.Done[items[i]]
		return words.Tick(sh.Theme.Marks().Ticked, sh.Theme.Marks().Open, done, items[i]), func(sh *screen.Shared) screen.Effect {
			tick := entry.PlanTicked{Plan: p.ID(), Item: items[i], Done: !done, By: sh.By}
			return screen.Each{screen.House{{Event: tick}}, screen.Again(beforeLighting), screen.Said(sh.Units.Event(tick))}
		}
	})
	return screen.Ask{Dialog: screen.Choice{Title: words.OnlyWhatWasKeyed, Options: list, Done: func(*screen.Shared) screen.Effect { return screen.Said(words.JudgeYourself) }}}
}

// number is how a count of the plan is written.
func number(n int) string { return strconv.Itoa(n) }
