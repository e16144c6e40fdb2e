package tui

import (
	"slices"
	"strings"

	"chargehand/model/entry"
	"chargehand/tui/screen"
)

// longestKey bounds what is written down of one key or paste.
const longestKey = 4096

// batch gathers the keys that are no act by themselves. They are written down
// when the field is left, before an act, or within a second.
type batch struct {
	from entry.Stamp // of the first key
	keys []entry.Press
	on   screen.ID
}

func (b batch) empty() bool { return len(b.keys) == 0 }

// elsewhere tells whether the keys so far belong to another stream than those
// of a screen: Replay's are the house's.
func (b batch) elsewhere(on screen.ID) bool {
	return !b.empty() && (b.on == screen.Replay) != (on == screen.Replay)
}

// with adds a key as it was typed.
func (b batch) with(k Pressed, on screen.ID, held bool) batch {
	if b.empty() {
		b.from, b.on = k.At, on
	}
	name := k.Key.String()
	if len(name) > longestKey {
		name = strings.ToValidUTF8(name[:longestKey], "")
	}
	b.keys = append(slices.Clone(b.keys), entry.Press{Key: name, AfterMs: screen.Since(b.from, k.At).Milliseconds(), Held: held})
	return b
}

// event is the batch as it is kept.
func (b batch) event() entry.Keys { return entry.Keys{Pressed: b.keys} }
