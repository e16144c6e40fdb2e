package tui

import (
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// leaning is how soon the same key must come again to be taken for a glove that
// leans on it rather than for a second act.
const leaning = 400 * time.Millisecond

// A key that is held down comes again by itself, first after the keyboard's delay
// (a quarter of a second to one, common practice), which may be longer than
// leaning, and then ten times a second and more. So many in a row as that, behind
// a second press within that delay, tell that the second was none of a hand's.
const (
	heldDelay  = time.Second
	heldRepeat = 120 * time.Millisecond
	heldTells  = 2
)

// guard looks for leaning gloves. It knows the last key that was pressed.
type guard struct {
	key    screen.Typed
	at     entry.Stamp
	typing bool // it was typed into a field
	second bool // it was taken for a second act, soon after the same key
	quick  int  // how many came since, each as soon as a held key repeats
}

// lean is what the guard makes of a press.
type lean int

const (
	meant  lean = iota
	leans       // the glove's, not to be acted on
	leaned      // the same, and the act before it was the glove's too
)

// press is a key as the guard sees it.
type press struct {
	key     screen.Typed
	at      entry.Stamp
	typing  bool // a field is open
	repeats bool // this key may be quick here: letters in a field, scoops, minutes, arrows
}

// leans tells whether this press is the same key again too soon, and notes it.
// A glove goes on leaning as long as the key keeps coming; it does not walk on
// through a list that it has opened, nor type into a field, unless it is a digit:
// a number may begin with the digit that chose its line.
func (g guard) leans(p press) (guard, lean) {
	gap, same := screen.Since(g.at, p.at), p.key == g.key
	opened := p.typing && !g.typing && screen.Digit(p.key) == ""
	if !same || gap >= leaning || p.repeats && !opened {
		return guard{key: p.key, at: p.at, typing: p.typing, second: same && !p.repeats && gap < heldDelay}, meant
	}
	next := guard{key: p.key, at: p.at, typing: g.typing, second: g.second}
	if gap < heldRepeat {
		next.quick = g.quick + 1
	}
	if g.second && next.quick == heldTells {
		next.second = false
		return next, leaned
	}
	return next, leans
}

// leanedOn writes down a key that was not acted on. Once it shows that the act
// before it was the glove's too, that one is crossed out.
func (m Model) leanedOn(k Pressed, t screen.Typed, glove lean) (Model, []entry.Entry, tea.Cmd) {
	m, out := m.note(k, true)
	m, es := m.refuse(words.LeaningGlove(screen.KeyLabel(string(t)))).flush()
	out = append(out, es...)
	l, ok := m.shown().LastAct()
	just := ok && strings.ToLower(l.Entry.Key) == string(t) && screen.Since(entry.Stamp{Wall: l.Entry.Kept, Boot: l.Entry.Boot, Mono: l.Entry.Mono}, k.At) < leaning
	if glove != leaned || m.dialog != nil || !just {
		return m, out, nil
	}
	what := act.Describe(m.units, m.shown(), l)
	cross := screen.Keep{{Event: entry.Strike{Target: m.shown().Ref(l.Seq())}}}
	said := screen.Said(words.HeldDown(screen.KeyLabel(string(t)), what))
	m, es, cmd := m.perform(screen.Each{cross, said}, "") // the key is written down already
	return m, append(out, es...), cmd
}
