package figure

import (
	"time"

	"chargehand/model/entry"
)

// How long a burn-down usually lasts, in minutes from its beginning: 31 to 35
// until the bloom is taken out in four published logs, in one of which the air
// was cut at 27 (Markewitz, logs of 2008, 2009 and 2016 in testdata/logs, and
// one of 2005).
const (
	BurnDownLeast = 27
	BurnDownMost  = 35
)

// DownTo is how far above the tuyere the burden may stand and be down to it, in
// cm: about the reach of a dip. The bloom is taken out when the charcoal is down
// to about the tuyere (words to a published photograph of 2010).
const DownTo = 5

// LeastOre is the least ore that a published bloom of a kilogram or more came of
// (testdata/physics/published_blooms.csv: 1.4 kg from 9 kg of ore).
const LeastOre entry.Kilogram = 9

// LastOreIn is when the last charge with ore went in, on the smelt's clock, and
// its number.
func (r *Reading) LastOreIn() (at time.Duration, charge int, in bool) {
	for i := len(r.Charges) - 1; i >= 0; i-- {
		if c := r.Charges[i]; c.Parts.Holds(entry.Ore) || c.Ore.Known() && c.Ore.P50 > 0 {
			return c.At, c.Number, true
		}
	}
	return 0, 0, false
}
