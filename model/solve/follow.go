package solve

import (
	"math"

	"chargehand/model/entry"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// follow is how well the shaft keeps to the level that the estimator believes.
type follow struct {
	off    bool // the last charge found it far away
	astray bool // so did the one before: it does not follow this furnace
}

const (
	// slack is how far in m the shaft may stand from the level before it is
	// brought there: less than people see.
	slack = 0.03
	// far is the least distance in m from the level that is called far: two standard
	// deviations of it after a charge on a usual day. Two of this day's when those are
	// more; that a crew has a steadier eye than others says nothing of the solver.
	far = 0.08
	// leastLaid is the least share of a charge's charcoal that is laid, so that
	// ore never comes without any.
	leastLaid = 0.5
)

// fits is how much of a charge's charcoal there is room for, and the room in m3
// that the rest would have taken. Where the shaft would stand clear of the level
// that much has burned already, in a furnace that burns faster than was taken.
// Ore goes in whole.
func (r *run) fits(a lay) (share, unlaid float64) {
	bore := r.lit.geometry.Bore
	most := r.lit.geometry.Stack + physics.MarkSD
	if a.levels && !a.fill {
		most = a.level + slack
	}
	room := bore.VolumeBetween(min(most, r.shaft.StackHeight()), most)
	takes := 0.0
	for _, m := range a.parts {
		if m.what == entry.Charcoal {
			takes += m.room()
		}
	}
	if takes <= 0 {
		return 1, 0
	}
	share = max(leastLaid, min(1, room/takes))
	return share, (1 - share) * takes
}

// assimilate brings the shaft up to the level after a charge when it stands more
// than the slack under it: it has burned more than the furnace. And it sees
// whether the shaft has been far from the level twice running.
func (r *run) assimilate(a lay, at, unlaid float64) error {
	lot, ok := a.charcoal()
	if !a.levels || !ok {
		return nil
	}
	bore, height := r.lit.geometry.Bore, r.shaft.StackHeight()
	gap := a.level - height - bore.Thickness(height, unlaid)
	off := math.Abs(gap) > max(far, 2*a.levelSD)
	r.follow = follow{off: off, astray: off && r.follow.off}
	if a.level-height <= slack {
		return nil
	}
	of, err := lot.lot()
	if err != nil {
		return err
	}
	missing := bore.VolumeBetween(height, a.level)
	kg := physics.Charcoal{Moisture: lot.moisture, Carbon: lot.carbon, Ash: lot.ash}.ChargedMass(missing * lot.bed().CharcoalBulk)
	return r.shaft.MakeUp(at, embersKelvin, shaft.Portion{Lot: of, Mass: kg})
}

// charcoal is the charcoal of a charge.
func (a lay) charcoal() (material, bool) {
	for _, m := range a.parts {
		if m.what == entry.Charcoal {
			return m, true
		}
	}
	return material{}, false
}
