package tui

import (
	"chargehand/model/entry"
	"chargehand/model/words"
)

// others is the list of rare acts. The letters of those that change phase keep
// away from the charge keys here too, and each of them asks once.
func others(sh shared) step {
	if rightsIn(sh.smelt) < own {
		return othersMending(sh)
	}
	return choose(words.DoOthers, otherOptions()...)
}

func otherOptions() []option {
	return []option{
		phase("p", words.DoPreheat, entry.PhaseSet{Phase: entry.Preheat}),
		phase("i", words.DoFilling, entry.PhaseSet{Phase: entry.Filling}),
		phase("m", words.DoMainBurn, entry.PhaseSet{Phase: entry.MainBurn}),
		phase("h", words.DoHoldOre, entry.OreHeld{}),
		phase("n", words.DoOreAgain, entry.OreHeld{Again: true}),
		phase("l", words.DoLastOre, entry.LastOre{}),
		phase("b", words.DoBurnDown, entry.BurnDown{}),
		opt("o", words.DoExtract, func(sh shared) step { return askExtract(sh, nil, book) }),
		phase("k", words.DoClose, entry.PhaseSet{Phase: entry.Closed}),
		opt("u", words.DoUndo, bringBack),
		opt("e", words.DoLate, enterLate),
		opt("r", words.DoByWeight, func(sh shared) step {
			return askByWeight(sh, func(ps entry.Parts) step { return book(entry.Recipe{Next: ps}) })
		}),
		opt("c", words.DoWeighed, func(sh shared) step {
			return askByWeight(sh, func(ps entry.Parts) step { return book(entry.Charge{Parts: ps}) })
		}),
		opt("w", words.DoReweigh, func(sh shared) step { return askReweigh(sh, nil, book) }),
		opt("a", words.DoArch, now(askArch)),
		opt("t", words.DoTuyere, now(askTuyere)),
		opt("s", words.DoSample, now(askSample)),
		opt("g", words.DoHandOver, now(askHandOver)),
		opt("d", words.DoDecide, func(shared) step { return step{ask: decision{}} }),
		opt("y", words.DoReady, askReady),
		opt("j", words.DoCloser, askCloser),
		opt("v", words.DoClockWrong, clockWasWrong),
		opt("x", words.DoCautions, rereadCautions),
		opt("z", words.DoLock, func(shared) step { return step{lock: true} }),
	}
}

// othersMending is what is left of the list for a smelt in which nothing
// happens any more: its account is still put right, and what was forgotten
// entered.
func othersMending(sh shared) step {
	if rightsIn(sh.smelt) == lookOnly {
		return refused(whyNot(sh.smelt))
	}
	return choose(words.DoOthers,
		opt("u", words.DoUndo, bringBack),
		opt("e", words.DoLate, enterLate),
		opt("w", words.DoReweigh, func(sh shared) step { return askReweigh(sh, nil, book) }))
}

// phase is an act that changes the phase: it asks once.
func phase(k, word string, ev entry.Event) option {
	return opt(k, word, func(shared) step {
		return step{ask: question(words.Sure(word), func(shared) step { return book(ev) })}
	})
}

// now makes an option's step of an asker: a new act, at this moment.
func now(ask asker) func(shared) step {
	return func(sh shared) step { return ask(sh, nil, book) }
}
