package rehearse

import (
	"math"

	"chargehand/model/entry"
)

// Take hands the furnace an entry that was keyed. What was entered late, put right or crossed out changes the book and not the
// furnace: what went into it stays there.
func (l *Live) Take(e entry.Entry) {
	if e.Event == nil || l.pulled || e.Kept.Sub(e.Happened).Abs().Seconds() > 1.5 {
		return
	}
	switch ev := e.Event.(type) {
	case entry.Fill:
		l.fill(l.bucketsOf(ev.Parts))
	case entry.Charge:
		buckets, ore := l.bucketsOf(ev.Parts), l.oreOf(ev.Parts)
		if !l.filled {
			l.fill(buckets)
			return
		}
		l.charge(buckets, ore)
	case entry.Blast:
		l.blast(ev)
	case entry.Rod:
		l.f.Rod()
	case entry.Poke:
		l.f.Poke()
	case entry.BurnDown:
		l.burning, l.room = l.f.Seconds()+1, false
	case entry.PhaseSet:
		if ev.Phase == entry.Closed {
			l.givenUp()
		}
	}
}

// bucketsOf is how many buckets of charcoal go in. What is weighed out holds what the scale says.
func (l *Live) bucketsOf(parts entry.Parts) (n float64) {
	for _, p := range parts {
		if p.What != entry.Charcoal {
			continue
		}
		switch {
		case p.Count.Known:
			n += float64(p.Count.Value)
		case p.Mass.Known:
			n += float64(p.Mass.Value) / (l.bucketKg * l.f.BucketOff)
		}
	}
	return n
}

// oreOf is how many kg of ore go in, by the scoops.
func (l *Live) oreOf(parts entry.Parts) (kg float64) {
	for _, p := range parts {
		if p.What != entry.Ore {
			continue
		}
		switch {
		case p.Mass.Known:
			kg += float64(p.Mass.Value)
		case p.Count.Known:
			kg += l.scoopKg * float64(p.Count.Value)
		}
	}
	return kg
}

// burnedLong is how long a wood fire has to burn to have warmed the wall (assumed: a crew lets it burn an hour and a half).
const burnedLong = 45 * 60.0

// fill lays buckets on the embers.
func (l *Live) fill(buckets float64) {
	if !l.filled && l.f.Seconds() >= burnedLong {
		l.f.Preheat()
	}
	l.filled = true
	l.f.Fill(l.f.Level() + buckets*l.bucket()*l.widened())
	l.begun()
}

// widened is by how much lower charcoal stands in the bore as it is than in the bore as measured.
func (l *Live) widened() float64 { return 1 / ((1 + l.f.BoreOff) * (1 + l.f.BoreOff)) }

func (l *Live) charge(buckets, ore float64) {
	c := l.f.Charge(buckets, l.bucketKg, ore)
	if buckets > 0 {
		l.weighed, l.next = c.Bucket, ore
		l.charges++
		l.room, l.helps = false, 0
		l.aim()
	}
	l.ore += ore
}

// step of a gate by which a mark is more or less, as the crew's.
const gateStep, usualGate = 1.13, 3.0

// blast sets the blower: by a volume, by the mark on its gate, off or on again.
func (l *Live) blast(b entry.Blast) {
	usual := l.f.BlastPerArea * math.Pi / 4 * l.f.BoreCm * l.f.BoreCm
	switch {
	case b.Off():
		l.f.SetBlast(0)
		l.blown = false
		return
	case b.Volume.Known:
		l.f.SetBlast(float64(b.Volume.Value))
	case len(b.Gate) == 1 && b.Gate[0] >= '0' && b.Gate[0] <= '9':
		l.f.SetBlast(usual * math.Pow(gateStep, float64(b.Gate[0]-'0')-usualGate))
	default:
		l.f.SetBlast(usual)
	}
	l.blown = true
	l.begun()
}

// begun begins the main burn once air goes through charcoal.
func (l *Live) begun() {
	if l.filled && l.blown && l.mainBurn == 0 {
		l.f.MainBurn()
		l.mainBurn = l.f.Seconds()
	}
}

// givenUp opens the seal of a smelt that was closed without its bloom.
func (l *Live) givenUp() {
	if !l.pulled {
		l.pulled = true
		l.later(1, entry.Opened{})
	}
}

// redo is an answer of the furnace that stands in the book: what it took of chance is taken once more.
func (l *Live) redo(ev entry.Event) {
	switch ev := ev.(type) {
	case entry.Look:
		if ev.At != entry.AtTopGas || ev.Sees == entry.TopGasOut { // that it burns again came of itself
			l.look(ev.At)
		}
	case entry.Dip:
		l.f.Dip()
	case entry.Blast:
		l.f.MeterReads()
	case entry.Tap:
		l.f.Tap()
	case entry.Extract:
		l.pull(ev.From)
	}
}
