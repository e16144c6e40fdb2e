package tui

import (
	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/screen"
)

// bounded is what a key asks for, or its refusal where it would keep an event that
// is out of bounds: here all that is keyed comes by, and nothing of it is half
// done.
func bounded(e screen.Effect) screen.Effect {
	for _, one := range screen.Flat(e) {
		var keeps []entry.Event
		switch one := one.(type) {
		case screen.Keep:
			for _, a := range one {
				keeps = append(keeps, a.Event)
			}
		case screen.Kindle:
			keeps = []entry.Event{one.Light}
		case screen.Set:
			keeps = []entry.Event{one.Setting}
		}
		for _, ev := range keeps {
			if err := entry.Check(ev); err != nil {
				return screen.Refuse(words.OutOfBounds(err))
			}
		}
	}
	return e
}
