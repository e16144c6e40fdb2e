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
	for l := range s.Of(entry.KindLook) {
		look := l.Event.(entry.Look)
		if look.At == entry.AtFlame && l.At <= s.At() && (last == nil || l.At >= last.At) {
			last = &draw.Sight{Sees: look.Sees, At: l.At}
		}
	}
	return last
}

// Ready says of each check whether it is ticked off.
func Ready(s session.Session) []bool {
	ticked := map[string]bool{}
	for _, set := range settingsOf(s) {
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
func Closer(s session.Session) string {
	who := ""
	for _, set := range settingsOf(s) {
		if set.Name == Closes {
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
