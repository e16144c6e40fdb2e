package tui

import (
	"time"

	"chargehand/model/entry"
)

// leaning is how soon the same key must come again to be taken for a glove that
// leans on it rather than for a second act.
const leaning = 400 * time.Millisecond

// guard looks for leaning gloves. It knows the last key that was pressed.
type guard struct {
	key    typed
	at     entry.Stamp
	typing bool // it was typed into a field
}

// press is a key as the guard sees it.
type press struct {
	key     typed
	at      entry.Stamp
	typing  bool // a field is open
	repeats bool // this key may be quick here: letters in a field, scoops, minutes, arrows
}

// leans tells whether this press is the same key again too soon, and notes it.
// A glove goes on leaning as long as the key keeps coming; it does not walk on
// through a list that it has opened, nor type into a field, unless it is a digit:
// a number may begin with the digit that chose its line.
func (g guard) leans(p press) (guard, bool) {
	again := p.key == g.key && since(g.at, p.at) < leaning
	opened := p.typing && !g.typing && digit(p.key) == ""
	if again && (!p.repeats || opened) {
		return guard{p.key, p.at, g.typing}, true
	}
	return guard{p.key, p.at, p.typing}, false
}

// since is the time between two readings of the clocks: by the boot clock when
// both have the same, since the wall clock may be stepped.
func since(from, to entry.Stamp) time.Duration {
	if from.Boot == to.Boot && from.Boot != "" {
		return to.Mono - from.Mono
	}
	return to.Wall.Sub(from.Wall)
}
