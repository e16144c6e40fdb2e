package words

import (
	"errors"
	"strings"

	"chargehand/model/entry"
)

// wireUnits are the units at the end of names on the wire, as people write them.
var wireUnits = []struct{ end, unit string }{
	{"_kg_m3", "kg/m³"}, {"_l_min", "l/min"}, {"_m_s", "m/s"}, {"_m3", "m³"}, {"_kg", "kg"}, {"_cm", "cm"}, {"_mm", "mm"}, {"_deg", "°"},
	{"_pa", "Pa"}, {"_c", "°C"}, {"_l", "l"}, {"_m", "m"}, {"_min", "a minute"}, {"_ppm", "ppm"}, {"_pct", "%"}, {"_ms", "ms"},
}

// OutOfBounds says which part of an event cannot be so, and what it may be:
// "below rim may be -100 to 1000 cm: 1200 cannot be".
func OutOfBounds(err error) string {
	var b *entry.BoundsError
	if !errors.As(err, &b) {
		return err.Error()
	}
	what, unit := b.Field, ""
	for _, u := range wireUnits {
		if "_"+b.Field == u.end {
			what, unit = "the reading", " "+u.unit
			break
		}
		if name, ok := strings.CutSuffix(b.Field, u.end); ok {
			what, unit = name, " "+u.unit
			break
		}
	}
	what = strings.ReplaceAll(what, "_", " ")
	switch {
	case b.Why != "":
		return what + " " + b.Why
	case b.Given == "":
		return what + " is missing"
	case len(b.Words) > 0:
		return what + " may be " + strings.Join(b.Words, ", ") + ": " + b.Given + " cannot be"
	}
	return what + " may be " + Number(b.Least, 3) + " to " + Number(b.Most, 3) + unit + ": " + b.Given + " cannot be"
}
