package rehearse

import "slices"

// Amiss is something that went wrong in a furnace of itself, with no mishap drawn for the day.
type Amiss string

// What goes wrong of itself, gravest first. How bad is as for harm (harm.go), but that slag at the tuyere and a tuyere nearly shut
// want an answer at once.
const (
	FireOut   Amiss = "fire out"           // as long as inARow
	SlagStood Amiss = "slag at the tuyere" // a minute
	Shut      Amiss = "tuyere shut"        // a minute
	TooCold   Amiss = "hearth cold"        // longer than colder, with ore in it
	Hung      Amiss = "burden hung"        // as long as longHang
	Bare      Amiss = "shaft bare"         // as long as inARow
)

// AmissAll are all of them.
func AmissAll() []Amiss { return []Amiss{FireOut, SlagStood, Shut, TooCold, Hung, Bare} }

// nearlyShut is how far shut a tuyere is whose peep is dark, in both furnaces.
const nearlyShut = 0.8

// amiss is what went wrong in truth from the first ore to the burn-down, whatever the program said of it. A day of which it is
// empty is a calm one; others only have no mishap.
func (c *crew) amiss() (all []Amiss) {
	is := map[Amiss]bool{Hung: len(c.hangs()) > 0}
	out, bare := 0, 0
	for _, t := range c.trace {
		if c.firstOre == 0 || t.seconds < c.firstOre || c.burning > 0 && t.seconds > c.burning {
			continue
		}
		out, bare = inARowOf(out, t.PeepC < goesOut), inARowOf(bare, t.StackCm < 100*empty*c.f.Mark())
		is[FireOut] = is[FireOut] || out >= inARow
		is[Bare] = is[Bare] || bare >= inARow
		is[SlagStood] = is[SlagStood] || t.SlagCm <= 0
		is[Shut] = is[Shut] || t.Shut >= nearlyShut
		is[TooCold] = is[TooCold] || t.ColdMin > colder
	}
	return slices.DeleteFunc(AmissAll(), func(a Amiss) bool { return !is[a] })
}

// inARowOf counts one more minute of what is so.
func inARowOf(minutes int, is bool) int {
	if !is {
		return 0
	}
	return minutes + 1
}
