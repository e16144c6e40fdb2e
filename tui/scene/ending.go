package scene

import (
	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/tui/draw"
	"chargehand/tui/words"
)

// The names under which the burn-down card keeps what was ticked off and who
// closes, as settings of the smelt. Of several about one thing the last holds.
const (
	IsReady    = "ready"
	IsNotReady = "not ready"
	Closes     = "closes"
)

// Flame is the last look at the flame.
func Flame(s session.Session) *draw.Sight {
	var last *draw.Sight
	now := s.At()
	for l := range s.Of(entry.KindLook) {
		look := l.Event.(entry.Look)
		if look.At == entry.AtFlame && l.At <= now && (last == nil || l.At >= last.At) {
			last = &draw.Sight{Sees: look.Sees, At: l.At}
		}
	}
	return last
}

// Ready says of each check whether it is ticked off.
func Ready(s session.Session) []bool { return readyBy(settingsOf(s)) }

func readyBy(settings []entry.Setting) []bool {
	ticked := map[string]bool{}
	for _, set := range settings {
		switch set.Name {
		case IsReady:
			ticked[set.Value] = true
		case IsNotReady:
			ticked[set.Value] = false
		}
	}
	list := make([]bool, len(words.ReadyChecks))
	for i, check := range words.ReadyChecks {
		list[i] = ticked[check]
	}
	return list
}

// Closer is who closes the smelt.
func Closer(s session.Session) string { return closerBy(settingsOf(s)) }

func closerBy(settings []entry.Setting) string {
	who := ""
	for _, set := range settings {
		if set.Name == Closes {
			who = set.Value
		}
	}
	return who
}

// EndingOf is what the end of a burn-down is judged by.
func EndingOf(s session.Session) draw.Ending {
	settings := settingsOf(s)
	return draw.Ending{Flame: Flame(s), Ready: readyBy(settings), Closer: closerBy(settings)}
}

// settingsOf are the settings of one smelt, in order.
func settingsOf(s session.Session) []entry.Setting {
	var list []entry.Setting
	now := s.At()
	for l := range s.Of(entry.KindSetting) {
		if l.At <= now {
			list = append(list, l.Event.(entry.Setting))
		}
	}
	return list
}
