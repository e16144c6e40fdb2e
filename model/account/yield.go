package account

import (
	"slices"

	"chargehand/physics"
)

// What a yield counts, and what it is counted on.
type Base int

// Quantities of a smelt that a yield is a share of, or is itself.
const (
	BloomMass   Base = iota
	BloomIron        // metal of the bloom
	MetalGained      // metal of bloom and fragments less that of the fragments charged
	MetalOut         // metal of bloom and fragments, where no fragments were charged
	OreDry           // mass of the ore, dry
	OreIron          // iron in the ore
	AllIron          // iron in all that was charged: ore, slag, fragments
	CharcoalDry      // burnt, dry
	SlagMass         // tapped and left in the furnace
)

// Yield is one quantity per kg of another. There is none without its base.
type Yield struct {
	What, Base Base
	Share      Amount // kg per kg
}

// Within tells whether the quantity is a part of the other, so that there cannot be more than all of it.
func (y Yield) Within() bool { return y.Base == OreIron || y.Base == AllIron }

// Beyond tells whether more came out than went in by these figures: one of them is off, or something that brought iron is
// missing from the base.
func (y Yield) Beyond() bool { return y.Within() && y.Share.Value > 1 }

// Band is the share with its spread. One of a whole lies between none and all, whatever the two weighings and the shares of iron
// behind it leave open; one that is beyond is left as it comes out.
func (y Yield) Band() physics.Band {
	if !y.Within() || y.Beyond() || y.Share.Value < 0 {
		return y.Share.Band()
	}
	return physics.NormalWithin(y.Share.Value, y.Share.SD, 0, 1)
}

// Yield finds one by what it counts and on what; nil where it is not known.
func (a Account) Yield(what, base Base) *Yield {
	for _, y := range a.Yields {
		if y.What == what && y.Base == base {
			return &y
		}
	}
	return nil
}

// yields are those whose two quantities are known.
func yields(a Account, s Smelt) []Yield {
	have := quantities(a, s)
	var all []Yield
	for _, y := range []Yield{
		{What: BloomMass, Base: OreDry}, {What: BloomIron, Base: OreIron}, {What: BloomIron, Base: AllIron},
		{What: MetalGained, Base: OreIron}, {What: CharcoalDry, Base: BloomMass}, {What: SlagMass, Base: BloomMass},
	} {
		if y.Base == AllIron && sameStreams(a) {
			continue // nothing but ore brought iron
		}
		if y.What == MetalGained && !fragments(a) {
			continue // the same as that of the bloom
		}
		if y.What == MetalGained && !charged(a, FragmentsIn) {
			y.What, have[MetalOut] = MetalOut, have[MetalGained]
		}
		if y.Share = have[y.What].over(have[y.Base]); y.Share.Known() {
			all = append(all, y)
		}
	}
	return all
}

// quantities are the sums that yields are made of.
func quantities(a Account, s Smelt) map[Base]Amount {
	iron := func(rows []Row, places ...Place) Amount {
		return sum(rows, func(r Row) Amount { return r.Iron }, places...)
	}
	mass := func(rows []Row, places ...Place) Amount {
		return sum(rows, func(r Row) Amount { return r.Mass }, places...)
	}
	have := map[Base]Amount{
		BloomMass: mass(a.Out, Bloom), BloomIron: iron(a.Out, Bloom), OreDry: mass(a.In, Ore), OreIron: iron(a.In, Ore),
		AllIron: iron(a.In, Ore, SeedSlag, ReturnedSlag, FragmentsIn), SlagMass: mass(a.Out, TapSlag, FurnaceSlag, Slag),
		CharcoalDry: s.Charcoal,
	}
	if s.Charcoal.Known() && s.CharcoalLeft.Known() {
		have[CharcoalDry] = s.Charcoal.minus(s.CharcoalLeft)
	}
	if gained := iron(a.Out, Bloom, FragmentsOut); gained.Known() {
		if charged := iron(a.In, FragmentsIn); charged.Known() {
			gained = gained.minus(charged)
		}
		have[MetalGained] = gained
	}
	return have
}

// sum adds a figure over the rows of some places; not known when there is no
// such row, or one that is not known or was only solved for.
func sum(rows []Row, figure func(Row) Amount, places ...Place) Amount {
	all := Weighed(0, 0)
	any := false
	for _, r := range rows {
		for _, p := range places {
			if r.Place != p {
				continue
			}
			f := figure(r)
			if f.Standing <= Solved {
				return Amount{}
			}
			all, any = all.plus(f), true
		}
	}
	if !any {
		return Amount{}
	}
	return all
}

func sameStreams(a Account) bool {
	for _, r := range a.In {
		switch r.Place {
		case SeedSlag, ReturnedSlag, FragmentsIn:
			return false
		}
	}
	return true
}

func charged(a Account, p Place) bool {
	return slices.ContainsFunc(a.In, func(r Row) bool { return r.Place == p })
}

func fragments(a Account) bool {
	for _, r := range append(a.In[:len(a.In):len(a.In)], a.Out...) {
		if r.Place == FragmentsIn || r.Place == FragmentsOut {
			return true
		}
	}
	return false
}

// oxygenOf is what left the ore with the iron that became metal, if its iron was
// hematite.
func oxygenOf(a Account) Amount {
	gained := quantities(a, Smelt{})[MetalGained]
	if !gained.Known() {
		return Amount{}
	}
	return gained.times(physics.Hematite.OxygenPerIron())
}
