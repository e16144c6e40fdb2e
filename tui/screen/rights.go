package screen

import "chargehand/model/session"

// Rights is what may be keyed into a smelt.
type Rights int

// The rights.
const (
	LookOnly Rights = iota // the demo
	Mendable               // imported, or closed: weigh, note, cross out, change
	Own                    // everything
)

// RightsIn are those of the person at the keys.
func RightsIn(s session.Session) Rights {
	switch {
	case !s.Is() || s.ToLook() || s.Light().Invented:
		return LookOnly
	case !s.Own():
		return Mendable
	}
	return Own
}
