package screen

import "chargehand/model/session"

// Rights is what may be keyed into a smelt.
type Rights int

// The rights.
const (
	LookOnly Rights = iota // the demo, and what is watched
	Mendable               // imported, or closed: weigh, note, cross out, change
	Own                    // everything
)

// RightsIn are those of the person at the keys.
func RightsIn(s session.Session) Rights {
	switch {
	case !s.Is() || s.Watched() || ShownOnly(s):
		return LookOnly
	case !s.Own():
		return Mendable
	}
	return Own
}

// ShownOnly tells whether a smelt is invented, here to be looked at.
func ShownOnly(s session.Session) bool { return s.ToLook() || s.Light().Invented }
