package forge

import (
	"chargehand/model/house"
)

// Class is how much carbon a metal has, by simple tests. The limits are from memory,
// unverified: soft below about 0.1 %, low to 0.3, steely to 0.6, hard to 1.2, then near
// cast iron.
type Class int

// The classes.
const (
	Soft Class = iota
	Low
	Steely
	Hard
	NearCast
)

// The tests, and what a hammer shows.
const (
	Spark  = "spark"
	File   = "file"
	Bend   = "bend"
	Quench = "quench"
	Etch   = "etch"
	Hammer = "hammer"
)

// What a hammer shows, each with its likely causes in package words.
const (
	Crumbles   = "crumbles at heat"
	CracksCold = "cracks cold"
	CracksHot  = "cracks hot"
)

// Result is a result of a test, as it is kept.
type Result struct {
	Test, Says string
	Low, High  Class
	NoClass    bool // says nothing of the carbon
}

// Results are those that are offered, in the order of the tests (sparks and files as
// published guides to telling steel have them, without limits of carbon; which class a
// result stands for is common practice).
var Results = []Result{
	{Spark, "long plain rays", Soft, Soft, false}, {Spark, "a few forks", Low, Low, false}, {Spark, "many forks", Steely, Steely, false},
	{Spark, "bushy, forks from the wheel", Hard, Hard, false}, {Spark, "short, hardly any", NearCast, NearCast, false},
	{File, "bites", Soft, Low, false}, {File, "bites hard", Low, Hard, false}, {File, "skates", Hard, NearCast, false},
	{Bend, "double, whole", Soft, Low, false}, {Bend, "to 90°, whole", Soft, Steely, false}, {Bend, "breaks", 0, 0, true},
	{Quench, "file still bites", Soft, Low, false}, {Quench, "file skates", Steely, Hard, false}, {Quench, "breaks", Hard, NearCast, false},
	{Etch, "light", Soft, Low, false}, {Etch, "grey", Low, Steely, false}, {Etch, "dark", Steely, NearCast, false}, {Etch, "light and dark bands", 0, 0, true},
	{Hammer, Crumbles, 0, 0, true}, {Hammer, CracksCold, 0, 0, true}, {Hammer, CracksHot, 0, 0, true},
}

// Found is what the tests of a piece say of it together.
type Found struct {
	Tests     int
	Low, High Class // the range found
	Known     bool  // at least two tests say something of the carbon
	Signs     []string
}

// FoundIn is that. The softest place is at most what some test allows, the hardest at
// least what some test wants; where all agree it is what all allow.
func FoundIn(p house.Piece) Found {
	f := Found{Tests: len(p.Tested)}
	low, high, n := Soft, NearCast, 0
	for _, t := range p.Tested {
		for _, r := range Results {
			if r.Test != t.Test || r.Says != t.Result {
				continue
			}
			if r.Test == Hammer {
				f.Signs = append(f.Signs, r.Says)
			}
			if !r.NoClass {
				low, high, n = max(low, r.Low), min(high, r.High), n+1
			}
		}
	}
	f.Low, f.High, f.Known = min(low, high), max(low, high), n >= 2
	return f
}
