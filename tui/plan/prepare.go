package plan

import (
	"math"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// firstOre is the roasted ore that a first smelt is prepared with where none is weighed,
// kg: 15 to 25 are advised.
const firstOre = 20

// prepare asks for the three things that a plan begins with: the furnace, the ore and the
// blast. Enter takes what is usual, so that three of them lead to a plan.
func (s Screen) prepare(sh *screen.Shared) screen.Effect {
	h := sh.House()
	ore := func(sh *screen.Shared) screen.Effect {
		kg := entry.Some(float64(firstOre))
		if l, ok := plan.MostOf(h, entry.LotOre); ok && l.Left.Known() {
			kg = entry.Some(math.Round(math.Min(l.Left.Kg, plan.MostOre)))
		}
		return screen.AskNumber(words.OreToSmelt, screen.Limits{Unit: "kg", Least: plan.LeastOre, Most: plan.MostOre}, kg, func(kg float64) screen.Effect {
			return screen.AskMaybe(words.BlastGiven, screen.Limits{Unit: "l/min", Least: 20, Most: 5000}, entry.None[float64](), func(v entry.Maybe[float64]) screen.Effect {
				s.blast = v
				return s.preparing(sh, kg)
			})
		})
	}
	usual := screen.Opt("e", words.TheUsualFurnace, ore)
	list := []screen.Option{usual}
	if len(h.Furnaces) == 0 && s.smelt != "" {
		last, usual := s.starting(func(sh *screen.Shared, next Screen) screen.Effect {
			s = next
			return ore(sh)
		})
		list = []screen.Option{usual, last}
	}
	keys := "abghijklmn"
	for i, f := range h.Furnaces[:min(len(h.Furnaces), len(keys))] {
		list = append(list, screen.Opt(keys[i:i+1], f.Last().Furnace.Name, func(sh *screen.Shared) screen.Effect {
			s.furnace = f.ID
			return ore(sh)
		}))
	}
	first := "e"
	if n := len(list); n > 1 {
		first = list[n-1].Keys()[0]
	}
	return screen.ChooseOr(first, words.DoWhichFurnace, list...)
}

// preparing is the plan for so much ore, reckoned.
func (s Screen) preparing(sh *screen.Shared, ore float64) screen.Effect {
	s.asked++
	n, a := s.asked, s.ask(sh)
	return screen.Each{screen.Put{Screen: s}, screen.Run{Cmd: func() tea.Msg {
		a.Want = a.Want.Of(a, ore)
		return reckoned{asked: n, plan: plan.Of(a)}
	}}}
}

// assumed lists what a plan takes for granted until it is measured, each with what
// replaces it; a line leads to where that is keyed.
func assumed(*screen.Shared) screen.Effect {
	to := func(id screen.ID) func(*screen.Shared) screen.Effect {
		return func(*screen.Shared) screen.Effect { return screen.Go{To: id} }
	}
	lines := words.Assumed
	return screen.Choose(words.DoAssumed, screen.Lettered('a', len(lines), func(i int) (string, func(*screen.Shared) screen.Effect) {
		if lines[i].OfFurnace {
			return lines[i].Text, to(screen.Furnace)
		}
		return lines[i].Text, to(screen.Stores)
	})...)
}
