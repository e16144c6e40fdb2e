package logcsv

import "chargehand/model/entry"

// The events of the table, in the order of a day.
const (
	evPreheat  = "preheat"
	evFill     = "fill"
	evCharge   = "charge"
	evAir      = "air"
	evTap      = "tap"
	evBurnDown = "burndown"
	evExtract  = "extract"
	evNote     = "note"
)

func eventNames() []string {
	return []string{evPreheat, evFill, evCharge, evAir, evTap, evBurnDown, evExtract, evNote}
}

// row is one row of the table without its time.
type row struct {
	event string // empty on the way out until the row is complete: air or note then
	cells [columns]number
	note  string
}

// charges tells whether the row's event puts something into the shaft.
func (r row) charges() bool { return r.event == evFill || r.event == evCharge }

// empty tells whether the row says nothing but the time.
func (r row) empty() bool {
	return (r.event == evNote || r.event == "") && r.cells == [columns]number{} && r.note == ""
}

// events gives what a row says, as events.
func (r row) events(v vessels) []entry.Event {
	var es []entry.Event
	switch r.event {
	case evPreheat:
		es = append(es, entry.PhaseSet{Phase: entry.Preheat})
	case evFill:
		es = append(es, entry.Fill{Parts: r.parts(v)})
	case evCharge:
		es = append(es, entry.Charge{Parts: r.parts(v)})
	case evTap:
		es = append(es, entry.Tap{})
	case evBurnDown:
		es = append(es, entry.BurnDown{})
	case evExtract:
		es = append(es, entry.Extract{})
	}
	if air := r.cells[colAir]; air.Known || r.event == evAir {
		b := entry.Blast{Volume: quantity[entry.LitrePerMinute](air)}
		if b.Off() {
			b.State = entry.BlastOff
		}
		es = append(es, b)
	}
	if t := r.cells[colTemp]; t.Known {
		es = append(es, entry.Temperature{Degrees: entry.Celsius(t.Value)})
	}
	if h := r.cells[colHeight]; h.Known {
		es = append(es, entry.Dip{AboveTuyere: quantity[entry.Centimetre](h)})
	}
	if r.note != "" {
		es = append(es, entry.Note{Text: r.note})
	}
	return es
}

// parts gives the content of a fill or charge. A blank is a part of unknown
// mass; only the ore of a fill is left out when blank, because a fill is of
// charcoal.
func (r row) parts(v vessels) entry.Parts {
	ps := entry.Parts{part(entry.Charcoal, v.charcoal, r.cells[colCharcoal], r.cells[colMeasures])}
	mass, count := r.cells[colOre], r.cells[colScoops]
	if r.event == evCharge || mass.Known || count.Known {
		ps = append(ps, part(entry.Ore, v.ore, mass, count))
	}
	return ps
}

// part names the measure only where it was counted. A mass and a count may
// both stand; the mass holds (entry.Part), so 4 kg in 0 measures is 4 kg.
func part(what entry.What, measure string, mass, count number) entry.Part {
	p := entry.Part{What: what, Mass: quantity[entry.Kilogram](mass), Count: quantity[entry.Count](count)}
	if count.Known {
		p.Measure = measure
	}
	return p
}

// merge puts two rows of one moment into one, unless both fill the same place.
func (r row) merge(s row) (row, bool) {
	if r.event != "" && s.event != "" || r.note != "" && s.note != "" {
		return r, false
	}
	blankAir := r.event == evAir || s.event == evAir
	if blankAir && (r.cells[colAir].Known || s.cells[colAir].Known) {
		return r, false // two readings of the blast, one of which gave no volume
	}
	for c, n := range s.cells {
		if !n.Known {
			continue
		}
		if r.cells[c].Known {
			return r, false
		}
		r.cells[c] = n
	}
	r.event += s.event
	r.note += s.note
	return r, true
}

func quantity[Q entry.Quantity](n number) entry.Maybe[Q] {
	return entry.Maybe[Q]{Value: Q(n.Value), Known: n.Known}
}

func cell[Q entry.Quantity](c column, q entry.Maybe[Q]) number {
	if n := (number{Value: float64(q.Value), Known: q.Known}); n.Known && c.takes(n.Value) {
		return n
	}
	return number{}
}
