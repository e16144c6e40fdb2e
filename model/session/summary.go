package session

import "chargehand/model/shelf"

// Summary is what the shelf shows of the smelt as it stands: of all that is said of
// it where its clock stands.
func (s Session) Summary() shelf.Summary {
	v := s.view()
	m := v.moment
	if v.latest != 0 {
		m = s.to(v.known, v.latest)
	}
	return shelf.From(s.ID(), m.timeline.State)
}
