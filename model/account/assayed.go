package account

import (
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/physics"
)

// ironOxides are the iron in each oxide, and in iron written as such.
var ironOxides = map[string]float64{
	"Fe": 1, "FeO": physics.Wustite.IronShare(), "Fe2O3": physics.Hematite.IronShare(), "Fe3O4": physics.Magnetite.IronShare(),
	"FeOOH": physics.Goethite.IronShare(), "FeCO3": physics.Siderite.IronShare(),
}

// ignitionLoss is what an ore loses on ignition where nobody measured it: none
// of a well roasted one, 14 % of one raw and dry. Slag loses nothing.
var ignitionLoss = between(0, 0.07, 0.14)

// dried reads an assay as shares of the dry mass. Iron written as such holds
// beside its oxides, which then are the same iron.
func dried(a entry.Assay, moisture entry.Maybe[entry.Share], slag bool) Assay {
	whole := toDry(a, moisture, slag)
	var out Assay
	if _, ok := a.Parts["Fe"]; ok {
		out.Iron = partOf(a, "Fe").of(whole)
	} else {
		var oxides []Amount
		for name, share := range ironOxides {
			if _, ok := a.Parts[name]; ok {
				oxides = append(oxides, partOf(a, name).times(share))
			}
		}
		if len(oxides) > 0 {
			out.Iron = total(oxides...).of(whole)
		}
	}
	if _, ok := a.Parts["SiO2"]; ok {
		out.Silica = partOf(a, "SiO2").of(whole)
	}
	return out
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
		return Weighed(1-ignitionLoss.Value, ignitionLoss.SD)
	}
	return Weighed(1, 0)
}

// partOf is one oxide of an assay as a share.
func partOf(a entry.Assay, name string) Amount {
	p := a.Parts[name]
	sd := assaySD
	if p.PlusMinus.Known { // said as the screens say a spread: nine in ten lie within, one each side
		sd = float64(p.PlusMinus.Value) / 100 / physics.Z90
	}
	// Nothing can be off by as much as it is itself.
	v := float64(p.Percent) / 100
	amount := Weighed(v, math.Min(sd, math.Max(v, 1e-4)))
	if p.Basis != "" && p.Basis != entry.BasisMeasured {
		amount.Standing = Assumed
	}
	return amount
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
		a.samples[label(ev.Sample)] = ev.Assay
	case entry.Assay:
		if ev.Sample != "" {
			a.samples[label(ev.Sample)] = ev
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

func label(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), "")) }

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
