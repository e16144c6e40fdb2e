package tui

import (
	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
)

// The names under which the burn-down card keeps what was ticked off and who
// closes, as settings of the smelt. Of several about one thing the last holds.
const (
	isReady    = "ready"
	isNotReady = "not ready"
	closes     = "closes"
)

// flame is the last look at the flame.
func flame(s session.Session) *paint.Sight {
	var last *paint.Sight
	for l := range s.Of(entry.KindLook) {
		look := l.Event.(entry.Look)
		if look.At == entry.AtFlame && l.At <= s.At() && (last == nil || l.At >= last.At) {
			last = &paint.Sight{Sees: look.Sees, At: l.At}
		}
	}
	return last
}

// ready says of each check whether it is ticked off.
func ready(s session.Session) []bool {
	ticked := map[string]bool{}
	for _, set := range settingsOf(s) {
		switch set.Name {
		case isReady:
			ticked[set.Value] = true
		case isNotReady:
			ticked[set.Value] = false
		}
	}
	list := make([]bool, len(words.ReadyChecks))
	for i, check := range words.ReadyChecks {
		list[i] = ticked[check]
	}
	return list
}

// closer is who closes the smelt.
func closer(s session.Session) string {
	who := ""
	for _, set := range settingsOf(s) {
		if set.Name == closes {
			who = set.Value
		}
	}
	return who
}

// settingsOf are the settings of one smelt, in order.
func settingsOf(s session.Session) []entry.Setting {
	var list []entry.Setting
	for l := range s.Of(entry.KindSetting) {
		if l.At <= s.At() {
			list = append(list, l.Event.(entry.Setting))
		}
	}
	return list
}

// askReady is the list of what must be ready: a key ticks a line off, or undoes
// that. The list stays open until esc.
func askReady(sh shared) step {
	ticked := ready(sh.smelt)
	m, marks := sh.theme.Marks(), make([]string, len(words.ReadyChecks))
	list := lettered(0, len(words.ReadyChecks), func(i int) (string, func(shared) step) {
		check, mark, name := words.ReadyChecks[i], m.Open, isReady
		if ticked[i] {
			mark, name = m.Ticked, isNotReady
		}
		marks[i] = mark + " " + check
		return check, func(shared) step { // its letter is of its own words, ticked or not
			return step{
				acts:  []act{{event: entry.Setting{Name: name, Value: check}}},
				say:   func(shared) string { return words.Ticked(check, name == isReady) },
				again: askReady,
			}
		}
	})
	for i := range list {
		list[i].SetHelp(list[i].Help().Key, marks[i])
	}
	return choose(words.ReadyAsks, list...)
}

func askCloser(sh shared) step {
	return askWords(words.DoCloser, closer(sh.smelt), func(who string) step {
		return did(entry.Setting{Name: closes, Value: who}, func(shared) string { return words.Closes(who) })
	})
}

// decision is the card for the question whether to take the bloom out, wait or
// give the smelt up. It decides nothing; each way asks once more.
type decision struct{}

// decideKeys are named by the card: those that extract and that say there is no
// bloom elsewhere too. They lie apart from each other and from the charge keys.
var decideKeys = paint.DecideKeys{Extract: "o", Wait: "w", GiveUp: "n"}

// ways are what can be decided.
func (decision) ways() choice {
	yes := func(word string, st func() step) func(shared) step {
		return func(shared) step {
			return step{ask: question(words.Sure(word), func(shared) step { return st() })}
		}
	}
	return choice{title: words.DoDecide, options: []option{
		opt(decideKeys.Extract, words.DecideExtract, now(askExtract)),
		opt(decideKeys.Wait, words.DecideWait, yes(words.DecideWait, func() step { return book(entry.Note{Text: words.DecidedWait}) })),
		opt(decideKeys.GiveUp, words.DecideGiveUp, yes(words.GiveUpAsks, giveUp)),
	}}
}

// giveUp opens and closes a smelt without a bloom.
func giveUp() step {
	return step{
		acts: []act{{event: entry.Extract{None: true}}, {event: entry.PhaseSet{Phase: entry.Closed}}},
		say:  func(shared) string { return words.GivenUp },
	}
}

func (decision) typing() bool { return false }

func (d decision) update(sh shared, k Pressed) (dialog, step) {
	next, st := d.ways().update(sh, k)
	if next != nil {
		return d, st
	}
	return nil, st
}

func (d decision) ask(sh shared) *paint.Ask { return d.ways().ask(sh) }

func (d decision) hints() []paint.KeyHint {
	var hs []paint.KeyHint
	for _, o := range d.ways().options {
		hs = append(hs, hint(o.Binding))
	}
	return append(hs, hint(global.Back))
}

// paint draws nothing over the screen: the card takes its place.
func (decision) paint(cell.Grid, shared) {}

func (decision) whole(g cell.Grid, sh shared) {
	paint.Decision(g, sh.theme, sh.smelt.Reading(), fireView(g, sh, sh.smelt))
}
