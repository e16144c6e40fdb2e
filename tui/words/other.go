package words

import "chargehand/model/entry"

// Two fires at once.
const (
	DoOtherFire = "to the other fire that burns"
	DoGoOther   = "go on with the other"

	ToThat = "to that one"

	NoOtherFire = "no other fire burns here"
	MoveNotKept = "not kept yet: move it in a moment"
)

// FireName is what a fire is called: its furnace, else its smelt.
func FireName(l entry.Light, id string) string {
	if l.Furnace.Name != "" {
		return l.Furnace.Name
	}
	return id
}

// NowAt says which fire the keys act on from now.
func NowAt(name string) string { return "now at " + name }

// MoveTo moves an entry to another fire, MovedTo says so.
func MoveTo(name string) string { return "it was at " + name + ": book it there" }

// MovedTo says where an entry was moved to.
func MovedTo(what, name, at string) string { return "moved to " + name + ", " + at + ": " + what }

// AtFire is an answer with the fire that it is of.
func AtFire(name, said string) string { return name + ": " + said }

// OtherLitLater refuses to move an entry to a fire that was not lit then.
func OtherLitLater(name, clock string) string {
	return name + " was lit later, at " + clock + ": it stays here"
}
