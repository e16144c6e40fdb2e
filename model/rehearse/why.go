package rehearse

import (
	"errors"
	"time"

	"chargehand/model/entry"
	"chargehand/model/truth"
	"chargehand/model/why"
	"chargehand/physics"
)

// Truly is what a rehearsal would have come to on its furnace with one thing otherwise.
type Truly struct {
	Name   why.Name // empty where it is without a mishap
	Mishap Mishap
	Cold   float64 // h of the hearth below working heat from the first ore on
	Left   float64 // per cent of the ore not come down when it was pulled
	Bloom  float64 // kg; 0 for none that holds together
	Lost   bool    // nothing would have sunk any more for hours: until then
}

// HandedOver is when a person took over from the scripted crew, since light: nothing before can be otherwise. 0 where the crew worked
// alone.
func HandedOver(entries []entry.Entry) (time.Duration, error) {
	l, err := relive(entries, nil)
	if err != nil {
		return 0, err
	}
	if l.alone {
		return 0, nil
	}
	return seconds(l.handed), nil
}

// WhyTruly does a rehearsal over on its own furnace, with the same keys but for one thing at a time, and with each mishap that
// began left out. As it was comes first. Where the crew worked alone only mishaps are left out: it would have keyed otherwise. An error while it is sealed.
func WhyTruly(entries []entry.Entry) (all []Truly, err error) {
	if !opened(entries) {
		return nil, errors.New("it is sealed until its bloom is out, or it is given up")
	}
	l, err := relive(entries, nil)
	if err != nil {
		return nil, err
	}
	manner, err := mannerOf(entries)
	if err != nil {
		return nil, err
	}
	keyed := keyedOf(entries)
	for _, c := range why.Choices(keyed, seconds(l.handed)) {
		if c.Book || l.alone && c.Name != why.AsWas {
			continue
		}
		done, err := doOver(entries, c.Apply(keyed), manner, nil)
		if err != nil {
			return nil, err
		}
		t := done.comesTo()
		t.Name = c.Name
		all = append(all, t)
	}
	for i, m := range l.mishaps {
		if at, ok := l.f.Befalls(m); !ok || at >= l.f.Seconds() || l.burning > 0 && at > l.burning {
			continue
		}
		others := append(append([]truth.Mishap(nil), l.mishaps[:i]...), l.mishaps[i+1:]...)
		done, err := doOver(entries, keyed, manner, &others)
		if err != nil {
			return nil, err
		}
		t := done.comesTo()
		t.Mishap = m
		all = append(all, t)
	}
	return all, nil
}

func keyedOf(entries []entry.Entry) []why.Keyed {
	keyed := make([]why.Keyed, len(entries))
	for i, e := range entries {
		keyed[i] = why.Keyed{At: seconds(SecondsOf(e)), Entry: e}
	}
	return keyed
}

// comesTo is what it came to when it was pulled.
func (o *over) comesTo() Truly {
	t := Truly{Bloom: o.l.bloom, Lost: o.givenUp}
	for _, is := range o.l.trace {
		if is.seconds > o.pulled {
			break
		}
		t.Left = 100 - is.OreDown
		if o.firstOre > 0 && is.seconds >= o.firstOre && is.HearthC < physics.SlagFreezes {
			t.Cold += 1.0 / 60
		}
	}
	return t
}
