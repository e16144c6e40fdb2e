package account

import (
	"maps"
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/physics"
)

// OfDry reads the assay of an ore as shares of its dry mass, its moisture being on
// that mass; what the assay does not say is not known.
func OfDry(a entry.Assay, moisture entry.Maybe[entry.Share]) Assay { return dried(a, moisture, false) }

// dried reads an assay as shares of the dry mass.
func dried(a entry.Assay, moisture entry.Maybe[entry.Share], slag bool) Assay {
	whole := toDry(a, moisture, slag)
	stated := physics.Assay{Slag: slag, Parts: map[string]float64{}}
	for name, p := range a.Parts {
		stated.Parts[name] = float64(p.Percent)
	}
	var out Assay
	if _, known := stated.Iron(); known {
		out.Iron = read(a, stated, func(s physics.Assay) float64 { iron, _ := s.Iron(); return iron / 100 }).of(whole)
	}
	if _, known := stated.Parts["SiO2"]; known {
		out.Silica = read(a, stated, func(s physics.Assay) float64 { return s.Oxides().SiO2 / 100 }).of(whole)
	}
	return out
}

// read is a share that an assay comes to, with its spread from those of the
// parts it is made of; it stands as the weakest of them.
func read(a entry.Assay, stated physics.Assay, share func(physics.Assay) float64) Amount {
	v := share(stated)
	standing, variance := Measured, 0.0
	for name, p := range a.Parts {
		sd := assaySD
		if p.PlusMinus.Known { // as the screens say a spread: one in ten lies above it, one below
			sd = float64(p.PlusMinus.Value) / 100 / physics.Z90
		}
		other := stated
		other.Parts = maps.Clone(stated.Parts)
		other.Parts[name] += 1
		slope := 100 * (share(other) - v)
		if slope == 0 {
			continue
		}
		variance += slope * slope * sd * sd
		if p.Basis != "" && p.Basis != entry.BasisMeasured {
			standing = Assumed
		}
	}
	// Nothing can be off by as much as it is itself.
	return Amount{v, math.Min(math.Sqrt(variance), math.Max(v, 1e-4)), standing}
}

// toDry is by how much a share of what was assayed has to be multiplied to be
// one of the dry mass. It counts as measured: its spread says how well it is
// known, and the share it goes with stays the lab's.
func toDry(a entry.Assay, moisture entry.Maybe[entry.Share], slag bool) Amount {
	switch a.Basis {
	case entry.AsDug:
		if moisture.Known {
			return Weighed(1+float64(moisture.Value), 0)
		}
	case entry.AsIgnited, entry.Normalised:
		if slag {
			break
		}
		if a.Loss.Known && a.Basis == entry.AsIgnited {
			return Weighed(1-float64(a.Loss.Value)/100, 0)
		}
		return Weighed(1-(physics.NormalisedLoss.P10+physics.NormalisedLoss.P90)/2, physics.NormalisedLoss.SD()) // its ends; an amount has no skew
	}
	return Weighed(1, 0)
}

// mean of several assays of one thing: each with its own error, the spread of
// the mean that of the errors or of the scatter, whichever is larger.
func mean(as []Amount) Amount {
	if len(as) == 0 {
		return Amount{}
	}
	m := total(as...).times(1 / float64(len(as)))
	if len(as) > 1 {
		var scatter float64
		for _, a := range as {
			scatter += (a.Value - m.Value) * (a.Value - m.Value)
		}
		n := float64(len(as))
		m.SD = math.Max(m.SD, math.Sqrt(scatter/(n-1)/n))
	}
	return m
}

// answers are the lab's: by the label of a sample as written on it, spaces and
// capitals aside, and by lot. The last about one holds.
type answers struct {
	samples map[string]entry.Assay
	lots    map[entry.UID]entry.Assay
}

func (a answers) read(ev entry.Event) {
	switch ev := ev.(type) {
	case entry.SampleResult:
		a.samples[entry.LabelOf(ev.Sample)] = ev.Assay
	case entry.Assay:
		if ev.Sample != "" {
			a.samples[entry.LabelOf(ev.Sample)] = ev
		}
		if ev.Lot != "" {
			a.lots[ev.Lot] = ev
		}
	}
}

// of is what a lot is made of: as assayed since, as it stood when the smelt was
// lit, or as its iron was keyed.
func (a answers) of(l entry.Lot) Assay {
	var out Assay
	if assay, ok := a.lots[l.ID()]; ok {
		out = dried(assay, l.Moisture, false)
	}
	if l.Assay != nil {
		out = out.or(dried(*l.Assay, l.Moisture, false))
	}
	if l.Iron.Known {
		out = out.or(Assay{Iron: Weighed(float64(l.Iron.Value), assaySD)})
	}
	return out
}

// takenOf says what a sample was taken of, by its word: the places that the
// word names. A rod brings slag from the furnace.
func takenOf(s entry.Sample) (Place, bool) {
	word := strings.ToLower(s.Of)
	for _, w := range []struct {
		word string
		at   Place
	}{{"ore", Ore}, {"bloom", Bloom}, {"fragment", FragmentsOut}, {"tap", TapSlag}, {"furnace", FurnaceSlag}, {"rod", FurnaceSlag}, {"slag", Slag}} {
		if strings.Contains(word, w.word) {
			return w.at, true
		}
	}
	return 0, false
}
