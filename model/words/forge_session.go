package words

import (
	"fmt"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/forge"
)

// What was done at the forge, in words.

// Forging says an event of the forge with its pieces by name.
func (u Units) Forging(b forge.Bench, ev entry.Event) string {
	name := func(id entry.UID) string {
		if i := b.Find(id); i >= 0 {
			return PieceCalled(b, i)
		}
		return "a piece"
	}
	names := func(ids []entry.UID) string {
		all := make([]string, len(ids))
		for i, id := range ids {
			all[i] = name(id)
		}
		return strings.Join(all, ", ")
	}
	switch ev := ev.(type) {
	case entry.Piece:
		i := b.Find(ev.UID)
		if i < 0 {
			return u.Event(ev)
		}
		said := joinedBy(PieceCalled(b, i), " ", u.mass(ev.Mass))
		if ev.EndsAs != "" {
			return joinedBy(said+": "+pieceEnd(ev.EndsAs), ", ", ev.To)
		}
		switch {
		case len(ev.From) > 1:
			var of []entry.UID
			for _, f := range ev.From {
				of = append(of, f.Piece)
			}
			said += ", welded of " + names(of)
		case len(ev.From) == 1 && ev.From[0].Piece != "":
			said += ", of " + name(ev.From[0].Piece)
		case ev.WhereFrom != "":
			said += ", " + ev.WhereFrom
		}
		if len(ev.Size) == 3 {
			said += fmt.Sprintf(", %s x %s x %s mm", plain(float64(ev.Size[0])), plain(float64(ev.Size[1])), plain(float64(ev.Size[2])))
		}
		return said
	case entry.ForgeSession:
		return names(ev.Pieces) + ": " + u.session(b, ev)
	case entry.Heat:
		return names(ev.Pieces) + ": in the fire"
	case entry.HeatOver:
		return "out of the fire"
	case entry.PieceWeighed:
		said := name(ev.Piece) + " weighed: " + u.Kg(ev.Mass)
		if ev.InWater.Known {
			said += inWater(u, ev.InWater.Value, ev.Soaked)
		}
		return joinedBy(said, ", ", string(ev.State))
	case entry.PieceTested:
		return name(ev.Piece) + ", " + Tested(ev)
	}
	return u.Event(ev)
}

// session is a session in one line, without its pieces.
func (u Units) session(b forge.Bench, s entry.ForgeSession) string {
	did := make([]string, len(s.Did))
	for i, d := range s.Did {
		did[i] = string(d)
	}
	said := strings.Join(did, ", ")
	add := func(more string) { said = joinedBy(said, " · ", more) }
	if s.Heats.Known {
		add(many(int(s.Heats.Value), "heat"))
	}
	if s.Hours.Known {
		add(ForgeHours(float64(s.Hours.Value)))
	}
	switch fuel := b.FuelOf(s.Fuel.What); {
	case s.Fuel.Kg.Known:
		add(orElse(fuel, "fuel") + " " + u.Kg(s.Fuel.Kg.Value))
	case fuel != "":
		add(fuel)
	}
	if s.Flux.Known {
		add("flux " + u.Kg(s.Flux.Value))
	}
	for _, m := range s.After {
		if i := b.Find(m.Piece); len(s.After) > 1 && i >= 0 {
			add(PieceCalled(b, i) + " " + u.Kg(m.Mass) + " after")
			continue
		}
		add(u.Kg(m.Mass) + " after")
	}
	if s.Cost != nil {
		add(money(float64(s.Cost.Amount), s.Cost.Currency))
	}
	return orElse(said, "worked")
}

func money(v float64, currency string) string {
	return strings.TrimSpace(Number(v, 2) + " " + currency)
}
