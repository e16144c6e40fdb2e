package fold

import (
	"math"
	"testing"

	"chargehand/model/entry"
)

func lMin(v float64) entry.Maybe[entry.LitrePerMinute] { return entry.Some(entry.LitrePerMinute(v)) }

func gate(mark string) entry.Blast { return entry.Blast{Gate: mark} }

func strokes(n float64) entry.Blast { return entry.Blast{Strokes: entry.Some(entry.PerMinute(n))} }

func open(n float64) entry.Blast { return entry.Blast{Tuyeres: entry.Some(entry.Count(n))} }

// at adds a metered volume to a setting.
func at(b entry.Blast, v float64) entry.Blast { b.Volume = lMin(v); return b }

// A setting gives what the same blower gave when it was metered there, before
// the smelt or at any time of it; straight between marks, nothing beyond them.
func TestASettingIsAVolumeOnceItWasMetered(t *testing.T) {
	for name, c := range map[string]struct {
		before, keyed []entry.Blast // of the furnace; in the smelt, after what is asked
		asked         entry.Blast
		want          float64 // negative for unknown
	}{
		"never metered":           {asked: gate("8"), want: -1},
		"at this mark, later":     {keyed: []entry.Blast{at(gate("8"), 610)}, asked: gate("8"), want: 610},
		"before the smelt":        {before: []entry.Blast{at(gate("8"), 610)}, asked: gate("8"), want: 610},
		"metered anew":            {before: []entry.Blast{at(gate("8"), 610)}, keyed: []entry.Blast{at(gate("8"), 650)}, asked: gate("8"), want: 650},
		"between two marks":       {keyed: []entry.Blast{at(gate("4"), 300), at(gate("8"), 600)}, asked: gate("6"), want: 450},
		"beyond the marks":        {keyed: []entry.Blast{at(gate("4"), 300), at(gate("8"), 600)}, asked: gate("9"), want: -1},
		"a mark in words":         {keyed: []entry.Blast{at(gate("half"), 420)}, asked: gate("half"), want: 420},
		"another word":            {keyed: []entry.Blast{at(gate("half"), 420)}, asked: gate("full"), want: -1},
		"a word is no number":     {keyed: []entry.Blast{at(gate("half"), 420), at(gate("8"), 600)}, asked: gate("7"), want: -1},
		"strokes, as many":        {keyed: []entry.Blast{at(strokes(40), 480)}, asked: strokes(40), want: 480},
		"strokes, 12 l each":      {keyed: []entry.Blast{at(strokes(40), 480)}, asked: strokes(50), want: 600},
		"what a stroke delivers":  {keyed: []entry.Blast{{Strokes: strokes(30).Strokes, Stroke: entry.Some(entry.Litre(10))}}, asked: strokes(45), want: 450},
		"strokes are not tuyeres": {keyed: []entry.Blast{at(strokes(40), 480)}, asked: open(2), want: -1},
		"two of three tuyeres":    {keyed: []entry.Blast{at(open(3), 900)}, asked: open(2), want: 600},
		"more than were metered":  {keyed: []entry.Blast{at(open(3), 900)}, asked: open(4), want: -1},
	} {
		d := lit(entry.Furnace{Blower: c.before})
		d.key(5, c.asked)
		for i, k := range c.keyed {
			d.key(float64(20+i), k)
		}
		s := Fold(d.entries, All, minutes(60))
		b, ok := s.BlastAt(minutes(10))
		if !ok || b.Volume.Known != (c.want >= 0) || b.Volume.Known && math.Abs(float64(b.Volume.Value)-c.want) > 1e-6 {
			t.Errorf("%s: %+v, want %v", name, b.Volume, c.want)
		}
		if b.Volume.Known != b.BySetting {
			t.Errorf("%s: by setting %v, known %v", name, b.BySetting, b.Volume.Known)
		}
	}
}

// What a mark gives is known from the entry on that says so, and holds for what
// was keyed before it, as a re-weighing does.
func TestAMarkMeteredLaterIsKnownFromThenOn(t *testing.T) {
	d := lit(entry.Furnace{})
	d.key(5, gate("8"))
	seq := d.key(20, at(gate("8"), 610))
	before, after := Fold(d.entries, seq-1, minutes(15)), Fold(d.entries, seq, minutes(15))
	if b, _ := before.BlastAt(minutes(15)); b.Volume.Known {
		t.Errorf("known before it was metered: %+v", b)
	}
	if b, _ := after.BlastAt(minutes(15)); b.Volume != lMin(610) {
		t.Errorf("still unknown: %+v", b)
	}
	d.key(25, entry.Strike{Target: ref(seq)})
	s := Fold(d.entries, All, minutes(30))
	if b, _ := s.BlastAt(minutes(15)); b.Volume.Known || len(s.Blower) != 0 {
		t.Errorf("crossed out and still known: %+v, %v", b, s.Blower)
	}
}

// Pipe 52.5 mm, plate 30 mm, 500 Pa, air of 20 C: 801.0 l/min by the python
// library fluids 1.0.22 (ISO 5167-2). A pitot tube at 30 Pa on the axis of 50 mm:
// sqrt(2 30/1.2041) = 7.06 m/s, times 0.82 (from memory, unverified) and 1.963e-3
// m2. A vane at 6 m/s in the same pipe: 11.78 l/s.
func TestInstrumentsGiveAVolume(t *testing.T) {
	mm := func(v float64) entry.Maybe[entry.Millimetre] { return entry.Some(entry.Millimetre(v)) }
	pa := func(v float64) entry.Maybe[entry.Pascal] { return entry.Some(entry.Pascal(v)) }
	for _, c := range []struct {
		read entry.AirReading
		want float64 // negative for unknown
	}{
		{entry.AirReading{With: entry.OrificePlate, Pipe: mm(52.5), Hole: mm(30), Pressure: pa(500)}, 801},
		{entry.AirReading{With: entry.PitotTube, Pipe: mm(50), Pressure: pa(30)}, 60000 * 0.82 * 7.059 * 1.9635e-3},
		{entry.AirReading{With: entry.VaneAnemometer, Pipe: mm(50), Speed: entry.Some(entry.MetrePerSecond(6))}, 706.9},
		{entry.AirReading{With: entry.OrificePlate, Pipe: mm(40), Hole: mm(30), Pressure: pa(500)}, -1}, // too narrow for the standard
		{entry.AirReading{With: entry.VaneAnemometer, Speed: entry.Some(entry.MetrePerSecond(6))}, -1},
		{entry.AirReading{With: "smoke", Pipe: mm(50)}, -1},
	} {
		d := lit(entry.Furnace{})
		d.key(1, entry.Temperature{Degrees: 20, Where: WhereOutside})
		d.key(2, entry.Blast{Read: c.read})
		s := Fold(d.entries, All, minutes(5))
		b, _ := s.BlastAt(minutes(5))
		if b.Volume.Known != (c.want >= 0) || b.Volume.Known && math.Abs(float64(b.Volume.Value)-c.want) > 0.002*c.want {
			t.Errorf("%+v: %+v, want %.0f", c.read, b.Volume, c.want)
		}
		if b.BySetting {
			t.Errorf("%+v passes for a setting", c.read)
		}
	}
}

// Of a blower that took the place of another nothing is known but what is said of it: neither
// what blew before nor what a mark of the old one gave. "On again" stays with the new one, and
// back at the old one its marks hold again.
func TestAnotherBlowerBlowsWhatIsSaidOfIt(t *testing.T) {
	other := func(name string) entry.Blast { return entry.Blast{Blower: name} }
	f := entry.Furnace{Blower: []entry.Blast{{Gate: "8", Volume: lMin(610), Blower: "fan"}}}
	for _, c := range []struct {
		name  string
		keyed []entry.Blast
		want  float64 // negative for unknown
		by    string
	}{
		{"exchanged", []entry.Blast{at(entry.Blast{}, 700), other("vac")}, -1, "vac"},
		{"exchanged while it stood, and on", []entry.Blast{at(entry.Blast{}, 700), {State: entry.BlastOff}, other("vac"), {State: entry.BlastOn}}, -1, "vac"},
		{"exchanged, and off in one", []entry.Blast{at(entry.Blast{}, 700), {Blower: "vac", State: entry.BlastOff}, {State: entry.BlastOn}}, -1, "vac"},
		{"with what it gives", []entry.Blast{at(entry.Blast{}, 700), at(other("vac"), 900)}, 900, "vac"},
		{"read later, off, on again", []entry.Blast{at(entry.Blast{}, 700), other("vac"), at(entry.Blast{}, 900), {State: entry.BlastOff}, {State: entry.BlastOn}}, 900, "vac"},
		{"a mark of the old one", []entry.Blast{at(gate("8"), 700), other("vac"), gate("8")}, -1, "vac"},
		{"a mark of its own", []entry.Blast{at(gate("8"), 700), other("vac"), at(gate("8"), 900), gate("8")}, 900, "vac"},
		{"back at the old one", []entry.Blast{other("fan"), other("vac"), at(gate("8"), 900), other("fan"), gate("8")}, 610, "fan"},
		{"the first has no name", []entry.Blast{at(gate("8"), 700), gate("8")}, 700, ""},
	} {
		d := lit(f)
		for i, b := range c.keyed {
			d.key(float64(5+i), b)
		}
		s := Fold(d.entries, All, minutes(60))
		b, _ := s.BlastAt(minutes(60))
		if b.Off || b.Blower != c.by || b.Volume.Known != (c.want >= 0) || b.Volume.Known && math.Abs(float64(b.Volume.Value)-c.want) > 1e-6 {
			t.Errorf("%s: %+v, want %v of %q", c.name, b, c.want, c.by)
		}
	}
	d := lit(f)
	d.key(5, at(gate("8"), 700))
	d.key(6, other("vac"))
	d.key(7, at(gate("8"), 900))
	if s := Fold(d.entries, All, minutes(60)); len(s.Blower) != 3 || s.Blower[0].Blower != "fan" || s.Blower[2].Blower != "vac" {
		t.Errorf("metered %+v", s.Blower)
	}
}
