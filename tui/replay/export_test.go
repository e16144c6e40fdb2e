package replay

import (
	"time"

	"chargehand/model/rule"
	"chargehand/model/session"
)

// What the tests outside need of the inside.
var (
	Speeds   = speeds
	LayoutOf = layoutOf
	PaintIn  = paint
)

// Of is Replay of a smelt as it was seen, at its light.
func Of(s session.Session) Screen { return Screen{day: timelineOf(s), asSeen: true} }

func (r Screen) To(at time.Duration) Screen       { return r.to(at) }
func (r Screen) Stepped(back bool) (Screen, bool) { return r.stepped(back) }
func (r Screen) Span() time.Duration              { return r.day.Span }
func (r Screen) Taken() []time.Duration           { return r.day.Taken }
func (r Screen) Onsets() []time.Duration          { return r.day.onsets }
func (r Screen) Warnings() []rule.Warning         { return r.day.warnings }
func (r Screen) Whole() session.Session           { return r.day.Whole }
func (r Screen) Speed() int                       { return speeds[r.speed] }
