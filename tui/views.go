package tui

import (
	"chargehand/model/words"
)

// views is the list of screens. The letters t, u, p and g are kept for
// screens to come (stores, furnace, plan, forge).
func views(sh shared) step {
	goTo := func(k, word string, id screenID) option {
		return opt(k, word, func(shared) step { return step{to: id} })
	}
	var list []option
	if sh.smelt.Is() {
		list = append(list, goTo("f", words.DoFire, fireScreen), goTo("b", words.DoBook, bookScreen), goTo("r", words.DoReplay, replayScreen))
	}
	if sh.running.Is() && sh.running.ID() != sh.smelt.ID() {
		list = append(list, opt("o", words.DoRunning, func(shared) step { return step{shown: true} }))
	}
	list = append(list,
		goTo("s", words.DoShelf, shelfScreen),
		goTo("a", words.DoStart, startScreen),
		goTo("h", words.DoHelp, helpScreen),
		opt("d", words.DoFlip, flip),
		opt("e", words.DoSettings, settings),
		opt("q", words.DoQuit, leave))
	return choose(words.DoViews, list...)
}

// leave leaves the program. A running smelt asks first; it is held, and goes on
// at the next start.
func leave(sh shared) step {
	if sh.running.Is() {
		return step{ask: question(words.LeaveRunning(sh.running.ID()), func(shared) step { return step{quit: true} })}
	}
	return step{quit: true}
}

// leaveUnkept asks whether to wait for entries that are not kept.
func leaveUnkept(sh shared) step {
	return choose(words.LeaveUnkept(sh.tally.keeping+sh.tally.notKept),
		opt("w", words.LeaveWait, func(shared) step { return step{quit: true} }),
		opt("s", words.LeaveStay, func(shared) step { return said(words.NothingDone) }),
		opt("x", words.LeaveAnyway, func(shared) step { return step{quit: true, anyway: true} }))
}
