package fold

import (
	"cmp"
	"slices"
	"strconv"

	"chargehand/model/entry"
	"chargehand/physics"
)

// blowers are what is known of the blowers of a smelt, in the order in which they were met.
// The one that the fire was lit with has no name, unless it is named among the furnace's.
type blowers []*blower

// blower is what is known of a blower: what it gave, in m3/s, at settings of it
// that were metered. A mark that was metered twice counts as the last time.
type blower struct {
	name    string
	seen    []entry.Blast // a reading for each mark, in order of first meeting
	gate    physics.GateTable
	named   map[string]float64 // gate marks that are no numbers
	stroke  physics.GateTable  // m3 a stroke, by strokes a minute
	tuyeres physics.GateTable
}

// blowersOf learns from the furnace as it was lit and from every entry in force, in the order
// in which they happened: like the weight of a measure, what a mark of a blower gives holds
// for the whole smelt.
func blowersOf(f entry.Furnace, held []Line, air physics.Air) blowers {
	var bs blowers
	for _, seen := range f.Blower {
		bs = bs.with(seen.Blower)
		bs.of(seen.Blower).learn(seen, air)
	}
	at := ""
	for _, l := range held {
		if ev, ok := l.Event.(entry.Blast); ok {
			at = cmp.Or(ev.Blower, at)
			bs = bs.with(at)
			bs.of(at).learn(ev, air)
		}
	}
	return bs
}

// with are the blowers with one of a name.
func (bs blowers) with(name string) blowers {
	if bs.of(name) != nil {
		return bs
	}
	return append(bs, &blower{name: name, named: map[string]float64{}})
}

// of is the blower of a name, nil where nothing is known of it.
func (bs blowers) of(name string) *blower {
	if i := slices.IndexFunc(bs, func(b *blower) bool { return b.name == name }); i >= 0 {
		return bs[i]
	}
	return nil
}

// seen are the settings of all of them that were metered.
func (bs blowers) seen() (all []entry.Blast) {
	for _, b := range bs {
		all = append(all, b.seen...)
	}
	return all
}

// learn takes up a reading that holds both a setting and a volume.
func (b *blower) learn(ev entry.Blast, air physics.Air) {
	lMin, known := metered(ev, air)
	if !known || ev.Off() {
		return
	}
	flow := physics.FromLitresPerMinute(float64(lMin))
	setting := entry.Blast{Gate: ev.Gate, Strokes: ev.Strokes, Tuyeres: ev.Tuyeres, Blower: b.name}
	switch mark, err := strconv.ParseFloat(ev.Gate, 64); {
	case ev.Gate != "" && err == nil:
		b.gate = marked(b.gate, mark, flow)
	case ev.Gate != "":
		b.named[ev.Gate] = flow
	case ev.Strokes.Positive():
		b.stroke = marked(b.stroke, float64(ev.Strokes.Value), flow*60/float64(ev.Strokes.Value))
	case ev.Tuyeres.Positive():
		if len(b.tuyeres) == 0 {
			b.tuyeres = physics.GateTable{{}} // none open, no air
		}
		b.tuyeres = marked(b.tuyeres, float64(ev.Tuyeres.Value), flow)
	default:
		return
	}
	same := func(s entry.Blast) bool {
		return entry.Blast{Gate: s.Gate, Strokes: s.Strokes, Tuyeres: s.Tuyeres, Blower: b.name} == setting
	}
	setting.Volume = entry.Some(lMin)
	if i := slices.IndexFunc(b.seen, same); i >= 0 {
		b.seen[i] = setting
	} else {
		b.seen = append(b.seen, setting)
	}
}

// marked puts a point into a table, in its place.
func marked(t physics.GateTable, mark, flow float64) physics.GateTable {
	i, found := slices.BinarySearchFunc(t, mark, func(p physics.GatePoint, m float64) int { return cmp.Compare(p.Mark, m) })
	if found {
		t[i].Flow = flow
		return t
	}
	return slices.Insert(t, i, physics.GatePoint{Mark: mark, Flow: flow})
}

// gives is the volume at a setting: straight between the marks that were
// metered, unknown beyond them, for a gate is not to be extrapolated. What one
// stroke delivers is taken to be the same beyond the strokes it was metered at.
func (b *blower) gives(ev entry.Blast) (entry.LitrePerMinute, bool) {
	if b == nil {
		return 0, false
	}
	var flow float64
	var known bool
	switch mark, err := strconv.ParseFloat(ev.Gate, 64); {
	case ev.Gate != "" && err == nil:
		flow, known = b.gate.Flow(mark)
	case ev.Gate != "":
		flow, known = b.named[ev.Gate]
	case ev.Strokes.Positive() && len(b.stroke) > 0:
		litres, _ := b.stroke.Flow(float64(ev.Strokes.Value))
		flow, known = physics.BellowsFlow(float64(ev.Strokes.Value)/60, litres, 1), true
	case ev.Tuyeres.Positive() && len(b.tuyeres) > 0:
		flow, known = b.tuyeres.Flow(float64(ev.Tuyeres.Value))
	}
	return entry.LitrePerMinute(physics.ToLitresPerMinute(flow)), known
}

// metered is the volume that an entry tells by itself: read off in l/min,
// reckoned from an instrument's reading, or from strokes and what one delivers.
func metered(ev entry.Blast, air physics.Air) (entry.LitrePerMinute, bool) {
	switch {
	case ev.Volume.Known:
		return ev.Volume.Value, true
	case ev.Read != entry.AirReading{}:
		v, err := Volume(ev.Read, air)
		return v, err == nil
	case ev.Strokes.Known && ev.Stroke.Known:
		return entry.LitrePerMinute(physics.ToLitresPerMinute(
			physics.BellowsFlow(float64(ev.Strokes.Value)/60, float64(ev.Stroke.Value)/1000, 1))), true
	}
	return 0, false
}
