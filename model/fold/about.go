package fold

import (
	"time"

	"chargehand/model/entry"
)

// About is what holds for the whole of a smelt, whenever it became known: its light,
// what its measures weigh and its lots are, and what its blower gives at each
// setting.
type About struct {
	Lit     time.Time // wall time of light, in force
	Righted bool      // a person said by how much the clock stood wrong: the smelt's own wall time holds
	light   entry.Light
	lit     bool // there is a light
	scale   scales
	blowers blowers
}

// aboutOf reads what holds for the whole smelt off the lines in force that tell of
// it (see tells), in the order in which they happened. Light began at lit.
func aboutOf(light Line, lit time.Time, held []Line) *About {
	l, ok := light.Event.(entry.Light)
	if !ok {
		return &About{}
	}
	lit, righted := righted(light, lit, held)
	return &About{
		Lit: lit, Righted: righted, light: l, lit: true, scale: newScales(l, held),
		blowers: blowersOf(l.Furnace, held, AirAt(l.Furnace, entry.None[entry.Celsius]())),
	}
}

// righted is the wall time of light by what a person said the time was, and whether
// one did. The last that was said in the start in which the fire was lit holds: what
// lies between light and that moment is told by the boot clock, however wrong the wall
// clock was.
func righted(light Line, lit time.Time, held []Line) (time.Time, bool) {
	said, last := false, uint64(0)
	for _, l := range held {
		ev, ok := l.Event.(entry.ClockJump)
		if !ok || ev.Right.IsZero() {
			continue
		}
		said = true
		if l.Entry.Boot != "" && l.Entry.Boot == light.Entry.Boot && l.Seq() > last {
			last, lit = l.Seq(), ev.Right.Add(-l.At).In(lit.Location())
		}
	}
	return lit, said
}

// tells tells whether an event may say something of the whole smelt.
func tells(ev entry.Event) bool {
	switch ev := ev.(type) {
	case entry.Light, entry.MeasureNamed, entry.LotStored:
		return true
	case entry.Weigh:
		return ev.What == entry.WeighMeasure
	case entry.Blast: // which blower, and what a setting of it gives; see blowersOf
		volume := ev.Volume.Known || ev.Read != entry.AirReading{} || ev.Stroke.Known
		return ev.Blower != "" || volume && (ev.Gate != "" || ev.Strokes.Positive() || ev.Tuyeres.Positive())
	case entry.ClockJump:
		return !ev.Right.IsZero()
	}
	return false
}

// reads tells whether an event is among the lines of a timeline. What the program writes
// down by itself and readings that nothing goes by are not: they cost nothing, however
// many there are. An event that speaks of another is read where that one stands.
func reads(ev entry.Event) bool {
	switch ev := ev.(type) {
	case nil, entry.Strike, entry.Amend, entry.Level, entry.Keys, entry.Testimony:
		return false
	case entry.Temperature:
		return ev.Where == WhereOutside || ev.Where == entry.WherePeep || ev.Where == entry.WhereTop
	}
	return true
}
