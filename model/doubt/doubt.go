// Package doubt knows what cannot be: an event that lies within the bounds of any
// furnace and not within those of this one. Nothing is refused for it. Who keys it is
// asked once, and it is kept with the name of the doubt.
package doubt

import (
	"reflect"
	"slices"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forge"
	"chargehand/physics"
)

// Name names a doubt, in an entry's frame too (entry.Entry.Sure).
type Name string

// The doubts, in the order of Table.
const (
	BelowFloor      Name = "below_floor"
	BelowTuyere     Name = "below_tuyere"
	AboveRim        Name = "above_rim"
	BlastJumps      Name = "blast_jumps"
	BlastForBore    Name = "blast_for_bore"
	MoreThanOre     Name = "more_than_ore"
	SlagOverOre     Name = "slag_over_ore"
	WeighsNothing   Name = "weighs_nothing"
	MeasureJumps    Name = "measure_jumps"
	TooHeavyToLift  Name = "too_heavy_to_lift"
	MoreThanShaft   Name = "more_than_shaft"
	OreOverCharcoal Name = "ore_over_charcoal"
	HotterThanFire  Name = "hotter_than_fire"
	ColderThanGlow  Name = "colder_than_glow"
	TuyereTooFar    Name = "tuyere_too_far"
	TuyereTooWide   Name = "tuyere_too_wide"
	FurnaceSize     Name = "furnace_size"
	AirOutside      Name = "air_outside"
)

// Doubt is a doubt about an event: what was said, what it is held against, both in
// the unit of the quantity on the wire, and of what, where several things can be.
type Doubt struct {
	Name          Name
	Said, Against float64
	Of            string
	Assay         physics.AssayDoubt // of one about an assay
	Printed       forge.PrintedOff   // of one about what is printed of a piece
}

// Row is a doubt of the table: what is said of an event that it is about, what it is held
// against in a smelt as it stood before, and whether that cannot be.
type Row struct {
	Name  Name
	Finds func(entry.Event, *figure.Reading) (Doubt, bool)
}

// Of are the doubts about an event, in a smelt as it stood before. Of an amendment they
// are those about what it says.
func Of(ev entry.Event, before *figure.Reading) []Doubt {
	if a, ok := ev.(entry.Amend); ok {
		ev = a.Event
	}
	if ev == nil {
		return nil
	}
	var ds []Doubt
	for _, row := range Table {
		if d, found := row.Finds(ev, before); found {
			d.Name = row.Name
			ds = append(ds, d)
		}
	}
	return ds
}

// Join is how the names of doubts stand in an entry's frame.
func Join(names []Name) string {
	words := make([]string, len(names))
	for i, n := range names {
		words[i] = string(n)
	}
	return strings.Join(words, " ")
}

// Split gives the names back.
func Split(sure string) []Name {
	var names []Name
	for _, w := range strings.Fields(sure) {
		names = append(names, Name(w))
	}
	return names
}

// Same tells whether two events say the same as far as a doubt goes: who has answered it
// of one is not asked about the other. A next charge and the charge as it was shown do.
func Same(a, b entry.Event) bool {
	if p, q := parts(a), parts(b); p != nil || q != nil {
		return slices.Equal(p, q)
	}
	return reflect.DeepEqual(a, b)
}

// parts are those of an event that has some.
func parts(ev entry.Event) entry.Parts {
	if r, ok := ev.(entry.Recipe); ok {
		return r.Next
	}
	return entry.PartsIn(ev)
}
