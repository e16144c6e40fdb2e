package light

import (
	"errors"
	"slices"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// stillWarm is for how long after a smelt its furnace is lit again: wall and ground are
// cold then (physics/shaft), and what was left in is known no more.
const stillWarm = 4 * 24 * time.Hour

// ended are the smelts that were over not long ago, the newest first.
func ended(sh *screen.Shared) (all []shelf.Summary) {
	for _, l := range sh.Shelf.Lines {
		at := l.Ended()
		if ago := sh.Now.Wall.Sub(at); !at.IsZero() && ago >= 0 && ago < stillWarm {
			all = append(all, l)
		}
	}
	slices.SortStableFunc(all, func(a, b shelf.Summary) int { return b.Ended().Compare(a.Ended()) })
	return all
}

// lastIn is the last smelt in the furnace that the form begins with, if it was not long ago.
func (f Screen) lastIn() (shelf.Summary, bool) {
	if len(f.starters) == 0 {
		return shelf.Summary{}, false
	}
	i := slices.IndexFunc(f.before, func(s shelf.Summary) bool { return s.In(f.starters[f.starter].Furnace) })
	if i < 0 {
		return shelf.Summary{}, false
	}
	return f.before[i], true
}

// again tells whether the furnace is lit again, warm.
func (f Screen) again() bool {
	_, is := f.lastIn()
	return is || f.mends && f.was.Rested.Known
}

// rested is how long the furnace has stood when it is lit.
func (f Screen) rested(lit time.Time) entry.Maybe[entry.Hour] {
	last, is := f.lastIn()
	if !is {
		return entry.None[entry.Hour]()
	}
	return entry.Some(entry.Hour(max(0, lit.Sub(last.Ended()).Hours())))
}

// leftLetters are what may be left in, by a letter each.
var leftLetters = []struct {
	letter string
	left   entry.LeftIn
}{{"s", entry.LeftSlag}, {"b", entry.LeftBloom}, {"e", entry.LeftEmbers}}

// leftIn reads what was left in, by letters or words.
func (f Screen) leftIn() (left []entry.LeftIn, err error) {
	if !f.again() {
		return nil, nil
	}
	rest := strings.ToLower(f.text(leftIn))
	for _, l := range leftLetters {
		rest = strings.ReplaceAll(rest, string(l.left), l.letter)
	}
	for _, c := range rest {
		i := slices.IndexFunc(leftLetters, func(l struct {
			letter string
			left   entry.LeftIn
		}) bool {
			return l.letter == string(c)
		})
		switch {
		case strings.ContainsRune(" ,+", c):
		case i < 0:
			return nil, errors.New(words.LeftInWhat)
		case !slices.Contains(left, leftLetters[i].left):
			left = append(left, leftLetters[i].left)
		}
	}
	return left, nil
}

// leftWords is what was left in, as it is typed.
func leftWords(left []entry.LeftIn) string {
	said := make([]string, len(left))
	for i, l := range left {
		said[i] = string(l)
	}
	return strings.Join(said, ", ")
}
