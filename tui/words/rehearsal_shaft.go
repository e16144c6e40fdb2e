package words

import (
	"fmt"
	"math"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rehearse"
	modelwords "chargehand/model/words"
)

// The furnace as it truly was beside as it was believed.
const (
	DoShafts      = "the shaft as it was, and as it was believed"
	ShortShafts   = "the shaft"
	ShaftBelieved = "as it was believed"
	NoShaft       = "nothing burned in it"
	unknownNow    = "not known"
)

// HearthTrue and HearthBelieved are what stands over each hearth.
func HearthTrue(u modelwords.Units, s rehearse.Shaft) string {
	return "true " + AboutDegrees(u, s.Is.HearthC)
}

func HearthBelieved(u modelwords.Units, s rehearse.Shaft) string {
	if !s.Heat.Known() {
		return "believed ?"
	}
	return "believed " + AboutDegrees(u, s.Heat.P50)
}

// ShaftTrue says of when it is.
func ShaftTrue(d rehearse.End, s rehearse.Shaft) string {
	return "as it truly was at " + d.Lit.Add(s.At).Format(modelwords.Clock)
}

// TrueFigures and BelievedFigures are a line each, in the same order.
func TrueFigures(u modelwords.Units, s rehearse.Shaft) []string {
	return []string{
		"burden " + u.Value(s.Is.StackCm, "cm", 0), "hearth " + AboutDegrees(u, s.Is.HearthC), fmt.Sprintf("ore down %.0f %%", s.Is.OreDown),
		"slag " + underTuyere(u, s.Is.SlagCm), "iron together " + u.Kg(entry.Kilogram(s.Is.Bloom)),
	}
}

func BelievedFigures(u modelwords.Units, s rehearse.Shaft) []string {
	span := func(f figure.Figure, unit string, decimals int) string {
		if !f.Known() {
			return unknownNow
		}
		return u.Value(f.P10, unit, decimals) + " to " + u.Value(f.P90, unit, decimals)
	}
	heat := unknownNow
	if s.Heat.Known() {
		heat = AboutDegrees(u, s.Heat.P10) + " to " + AboutDegrees(u, s.Heat.P90)
	}
	slag := unknownNow
	if s.SlagBelow.Known() {
		slag = underTuyere(u, s.SlagBelow.P50)
	}
	return []string{
		"burden " + span(s.Stack, "cm", 0), "hearth " + heat, "ore down " + span(s.Down, "%", 0), "slag " + slag, "bloom so far " + span(s.Bloom, "kg", 1),
	}
}

func underTuyere(u modelwords.Units, cm float64) string {
	if math.IsNaN(cm) {
		return unknownNow
	}
	return u.Value(math.Max(0, cm), "cm", 0) + " under the tuyere"
}
