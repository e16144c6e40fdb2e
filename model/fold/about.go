package fold

import (
	"time"

	"chargehand/model/entry"
)

// About is what holds for the whole of a smelt, whenever it became known: its light,
// what its measures weigh and its lots are, and what its blower gives at each
// setting.
type About struct {
	Lit    time.Time // wall time of light, in force
	light  entry.Light
	lit    bool // there is a light
	scale  scales
	blower blower
}

// aboutOf reads what holds for the whole smelt off the lines in force that tell of
// it (see tells), in the order in which they happened. Light began at lit.
func aboutOf(light Line, lit time.Time, held []Line) *About {
	l, ok := light.Event.(entry.Light)
	if !ok {
		return &About{}
	}
	return &About{
		Lit: lit, light: l, lit: true, scale: newScales(l, held),
		blower: blowerOf(l.Furnace, held, AirAt(l.Furnace, entry.None[entry.Celsius]())),
	}
}

// tells tells whether an event may say something of the whole smelt.
func tells(ev entry.Event) bool {
	switch ev := ev.(type) {
	case entry.Light, entry.MeasureNamed, entry.LotStored:
		return true
	case entry.Weigh:
		return ev.What == entry.WeighMeasure
	case entry.Blast: // what a setting gives; see blower.learn
		volume := ev.Volume.Known || ev.Read != entry.AirReading{} || ev.Stroke.Known
		return volume && (ev.Gate != "" || ev.Strokes.Positive() || ev.Tuyeres.Positive())
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
