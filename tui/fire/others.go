package fire

import (
	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// others is the list of rare acts. The letters of those that change phase keep
// away from the charge keys here too, and each of them asks once.
func others(sh screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Smelt) < screen.Own {
		return othersMending(sh)
	}
	return screen.Choose(words.DoOthers, otherOptions()...)
}

func otherOptions() []screen.Option {
	return []screen.Option{
		phase("p", words.DoPreheat, entry.PhaseSet{Phase: entry.Preheat}),
		phase("i", words.DoFilling, entry.PhaseSet{Phase: entry.Filling}),
		phase("m", words.DoMainBurn, entry.PhaseSet{Phase: entry.MainBurn}),
		phase("h", words.DoHoldOre, entry.OreHeld{}),
		phase("n", words.DoOreAgain, entry.OreHeld{Again: true}),
		phase("l", words.DoLastOre, entry.LastOre{}),
		phase("b", words.DoBurnDown, entry.BurnDown{}),
		screen.Opt("o", words.DoExtract, func(sh screen.Shared) screen.Effect { return act.AskExtract(sh, nil, act.Book) }),
		phase("k", words.DoClose, entry.PhaseSet{Phase: entry.Closed}),
		screen.Opt("u", words.DoUndo, act.BringBack),
		screen.Opt("e", words.DoLate, act.EnterLate),
		screen.Opt("r", words.DoByWeight, func(sh screen.Shared) screen.Effect {
			return act.AskByWeight(sh, func(ps entry.Parts) screen.Effect { return act.Book(entry.Recipe{Next: ps}) })
		}),
		screen.Opt("c", words.DoWeighed, func(sh screen.Shared) screen.Effect {
			return act.AskByWeight(sh, func(ps entry.Parts) screen.Effect { return act.Book(entry.Charge{Parts: ps}) })
		}),
		screen.Opt("w", words.DoReweigh, func(sh screen.Shared) screen.Effect { return act.AskReweigh(sh, nil, act.Book) }),
		screen.Opt("a", words.DoArch, act.Now(act.AskArch)),
		screen.Opt("t", words.DoTuyere, act.Now(act.AskTuyere)),
		screen.Opt("s", words.DoSample, act.Now(act.AskSample)),
		screen.Opt("g", words.DoHandOver, act.Now(act.AskHandOver)),
		screen.Opt("d", words.DoDecide, func(screen.Shared) screen.Effect { return screen.Ask{Dialog: decision{}} }),
		screen.Opt("y", words.DoReady, askReady),
		screen.Opt("j", words.DoCloser, askCloser),
		screen.Opt("v", words.DoClockWrong, act.ClockWasWrong),
		screen.Opt("x", words.DoCautions, rereadCautions),
		screen.Opt("z", words.DoLock, func(screen.Shared) screen.Effect { return screen.Lock{} }),
	}
}

// othersMending is what is left of the list for a smelt in which nothing
// happens any more: its account is still put right, and what was forgotten
// entered.
func othersMending(sh screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Smelt) == screen.LookOnly {
		return screen.Refuse(act.WhyNot(sh.Smelt))
	}
	return screen.Choose(words.DoOthers,
		screen.Opt("u", words.DoUndo, act.BringBack),
		screen.Opt("e", words.DoLate, act.EnterLate),
		screen.Opt("w", words.DoReweigh, func(sh screen.Shared) screen.Effect { return act.AskReweigh(sh, nil, act.Book) }))
}

// phase is an act that changes the phase: it asks once.
func phase(k, word string, ev entry.Event) screen.Option {
	return screen.Opt(k, word, func(screen.Shared) screen.Effect {
		return screen.Question(words.Sure(word), func(screen.Shared) screen.Effect { return act.Book(ev) })
	})
}
