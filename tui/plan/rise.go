package plan

import (
	"errors"
	"maps"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// rises is how the ore rises by the way shown, each number to be changed; the list stays
// open until enter, which reckons anew with it in place of that way.
func (s Screen) rises(sh *screen.Shared, r plan.Rise) screen.Effect {
	type number struct {
		key, label, unit string
		least, most      float64
		of               float64
		set              func(*plan.Rise, float64)
	}
	all := []number{
		{"p", words.RiseBefore, words.RiseCharges, 0, 40, float64(r.Before), func(r *plan.Rise, v float64) { r.Before = int(v) }},
		{"i", words.RiseFirst, "kg", 0.2, 20, r.First, func(r *plan.Rise, v float64) { r.First = v }},
		{"e", words.RiseStep, "kg", 0, 10, r.Step, func(r *plan.Rise, v float64) { r.Step = v }},
		{"a", words.RiseEvery, words.RiseCharges, 1, 40, float64(r.Every), func(r *plan.Rise, v float64) { r.Every = int(v) }},
		{"m", words.RiseMost, "kg", 0.2, 20, r.Most, func(r *plan.Rise, v float64) { r.Most = v }},
	}
	var list []screen.Option
	for _, n := range all {
		list = append(list, screen.Opt(n.key, words.RiseIs(sh.Units, n.label, n.of, n.unit), func(*screen.Shared) screen.Effect {
			return screen.AskNumber(n.label, screen.Limits{Unit: n.unit, Least: n.least, Most: n.most}, entry.Some(n.of), func(v float64) screen.Effect {
				next := r
				n.set(&next, v)
				return s.rises(sh, next)
			})
		}))
	}
	list = append(list, screen.Opt("g", words.RiseIs(sh.Units, words.RiseSlag, s.plan.Seed.Value, "kg"), func(*screen.Shared) screen.Effect {
		return screen.AskNumber(words.RiseSlag, screen.Limits{Unit: "kg", Least: 0, Most: 20}, entry.Some(s.plan.Seed.Value), func(v float64) screen.Effect {
			next := s
			next.seed, next.plan.Seed = entry.Some(v), entry.Some(v)
			return next.rises(sh, r)
		})
	}))
	if _, own := s.own[plan.WayNames()[s.way]]; own {
		list = append(list, screen.Opt("w", words.RiseAsItWas, func(sh *screen.Shared) screen.Effect {
			next := s
			next.own = maps.Clone(s.own)
			delete(next.own, plan.WayNames()[s.way])
			return next.asking(sh)
		}))
	}
	return screen.Ask{Dialog: screen.Choice{Title: words.DoRises, Options: list, Done: func(sh *screen.Shared) screen.Effect {
		if r.Most < r.First {
			return screen.Each{screen.Refuse(words.RiseMostUnder), s.rises(sh, r)}
		}
		next := s
		next.own = maps.Clone(s.own)
		if next.own == nil {
			next.own = map[string]plan.Rise{}
		}
		next.own[plan.WayNames()[s.way]] = r
		return screen.Each{next.asking(sh), screen.Said(words.RiseTaken)}
	}}}
}

// rise begins to change that of the way shown.
func (s Screen) rise(sh *screen.Shared) screen.Effect {
	switch {
	case !s.made:
		return screen.Refuse(words.BeingReckoned)
	case s.way >= len(s.plan.Ways):
		return screen.Refuse(words.NoOreGivesIt)
	}
	if r, own := s.own[plan.WayNames()[s.way]]; own {
		return s.rises(sh, r)
	}
	return s.rises(sh, plan.RiseOf(s.plan.Ways[s.way]))
}

var errClock = errors.New(words.BadClock)
