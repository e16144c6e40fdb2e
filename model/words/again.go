package words

import (
	"time"

	"chargehand/model/entry"
)

// again says that a furnace was lit again, and what was left in it.
func again(l entry.Light) string {
	if !l.Rested.Known {
		return ""
	}
	said := ", again after " + Rest(time.Duration(float64(l.Rested.Value)*float64(time.Hour)))
	for i, left := range l.LeftIn {
		if i == 0 {
			said += ", left in: " + string(left)
			continue
		}
		said += " and " + string(left)
	}
	return said
}

// Rest is how long a furnace has stood.
func Rest(d time.Duration) string {
	switch {
	case d < 90*time.Minute:
		return Number(d.Minutes(), 0) + " min"
	case d < 48*time.Hour:
		return Number(d.Hours(), 0) + " h"
	}
	return Number(d.Hours()/24, 0) + " days"
}
