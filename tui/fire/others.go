package fire

import (
	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// others is the list of rare acts. The letters of those that change phase keep
// away from the charge keys here too.
func others(sh *screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Smelt) < screen.Own {
		return othersMending(sh)
	}
	return screen.Choose(words.DoOthers, otherOptions()...)
}

// otherOptions have one letter each and none of screen.ActKeys; what belongs
// together is a list below one letter.
func otherOptions() []screen.Option {
	return []screen.Option{
		begins("p", words.DoPreheat, entry.PhaseSet{Phase: entry.Preheat}),
		begins("i", words.DoFilling, entry.PhaseSet{Phase: entry.Filling}),
		begins("m", words.DoMainBurn, entry.PhaseSet{Phase: entry.MainBurn}),
		begins("h", words.DoHoldOre, entry.OreHeld{}),
		begins("n", words.DoOreAgain, entry.OreHeld{Again: true}),
		begins("l", words.DoLastOre, entry.LastOre{}),
		begins("b", words.DoBurnDown, entry.BurnDown{}),
		screen.Opt("o", words.DoExtract, func(sh *screen.Shared) screen.Effect { return act.AskExtract(sh, nil, act.Book) }),
		screen.Opt("k", words.DoClose, func(*screen.Shared) screen.Effect { return screen.Question(words.Sure(words.DoClose), act.Close) }),
		screen.Opt("x", words.DoUndo, act.BringBack),
		screen.Opt("e", words.DoLate, act.EnterLate),
		screen.Opt("r", words.DoByWeight, func(*screen.Shared) screen.Effect { return screen.Choose(words.DoByWeight, byWeight()...) }),
		screen.Opt("a", words.DoAround, act.Now(act.AskAround)),
		screen.Opt("t", words.DoTuyere, act.Now(act.AskTuyere)),
		screen.Opt(hourKey, words.DoHour, nextHour),
		screen.Opt("g", words.DoHandOver, act.Now(act.AskHandOver)),
		screen.Opt("d", words.DoDecide, func(*screen.Shared) screen.Effect { return screen.Ask{Dialog: decision{}} }),
		screen.Opt("w", words.DoSafety, func(*screen.Shared) screen.Effect { return screen.Choose(words.DoSafety, safety()...) }),
		screen.Opt(screen.LetterRemind, words.DoRemind, act.AskRemind),
		screen.Opt("v", words.DoPutRight, putRight),
		screen.Opt("y", words.DoIncident, askIncident),
		screen.Opt("z", words.DoLock, func(*screen.Shared) screen.Effect { return screen.Lock{} }),
	}
}

// putRight is what holds for the whole smelt and may have been wrong.
func putRight(*screen.Shared) screen.Effect {
	return screen.Choose(words.DoPutRight, screen.Opt("l", words.DoAsLit, asLit), screen.Opt("w", words.DoClockWrong, act.ClockWasWrong))
}

// asLit opens the form with the smelt as it was lit.
func asLit(*screen.Shared) screen.Effect {
	return screen.Go{To: screen.Light, With: screen.AsLit{}}
}

// byWeight are the acts that go by the scales.
func byWeight() []screen.Option {
	return []screen.Option{
		screen.Opt("n", words.DoNextByWeight, func(sh *screen.Shared) screen.Effect {
			return act.AskByWeight(sh, func(ps entry.Parts) screen.Effect { return act.Book(act.NextIs(sh, ps)) })
		}),
		screen.Opt("w", words.DoWeighed, func(sh *screen.Shared) screen.Effect {
			return act.AskByWeight(sh, func(ps entry.Parts) screen.Effect { return act.Book(entry.Charge{Parts: ps}) })
		}),
		screen.Opt("p", words.DoAgain, askAgain),
		screen.Opt("l", words.DoOtherLot, act.AskOtherLot),
		screen.Opt("o", words.DoOtherIn, act.Now(act.AskOtherIn)),
		screen.Opt("m", words.DoReweigh, func(sh *screen.Shared) screen.Effect { return act.AskReweigh(sh, nil, act.Book) }),
		screen.Opt("q", words.DoSample, act.Now(act.AskSample)),
	}
}

// safety is what keeps people safe, and the end of the day in order.
func safety() []screen.Option {
	return []screen.Option{
		screen.Opt("r", words.DoReady, askReady),
		screen.Opt("k", words.DoCloser, askCloser),
		screen.Opt("a", words.DoCautions, rereadCautions),
	}
}

// othersMending is what is left of the list for a smelt in which nothing
// happens any more: its account is still put right, and what was forgotten
// entered.
func othersMending(sh *screen.Shared) screen.Effect {
	if screen.RightsIn(sh.Smelt) == screen.LookOnly {
		return screen.Refuse(act.WhyNot(sh.Smelt))
	}
	return screen.Choose(words.DoOthers,
		screen.Opt("x", words.DoUndo, act.BringBack),
		screen.Opt("e", words.DoLate, act.EnterLate),
		screen.Opt("v", words.DoPutRight, putRight),
		screen.Opt("w", words.DoReweigh, func(sh *screen.Shared) screen.Effect { return act.AskReweigh(sh, nil, act.Book) }))
}

// begins is an act from which on another is charged, or nothing. It asks nothing: the key
// that crosses out undoes it. But a phase that the smelt left behind does not begin again
// by a letter that was meant for something else.
func begins(k, word string, ev entry.Event) screen.Option {
	return screen.Opt(k, word, func(sh *screen.Shared) screen.Effect {
		set, is := ev.(entry.PhaseSet)
		_, ore := ev.(entry.OreHeld) // in the burn-down no ore is held back, and none goes in again
		if is && sh.Smelt.Phase().Past(set.Phase) || ore && sh.Smelt.Phase() == entry.BurnsDown {
			return screen.Question(words.PhaseAgain(sh.Smelt.Phase(), word), func(*screen.Shared) screen.Effect { return act.Book(ev) })
		}
		return act.Book(ev)
	})
}
