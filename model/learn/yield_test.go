package learn_test

import (
	"math"
	"testing"

	"chargehand/model/learn"
	"chargehand/physics"
)

// Worked by hand for own yields of 0.30 and 0.40: the middle is (0.20 + 0.70)/3
// = 0.30; the prior's variance about the mean of a mix is (0.16/1.28155)^2/2 =
// 0.007794, with the own squares 0 + 0.01 the variance is (4 x 0.007794 +
// 0.01)/6 = 0.006862, of one more smelt that times 4/3, sd 0.09566, so that 10
// and 90 % lie 0.1226 to either side.
func TestYieldWorkedByHand(t *testing.T) {
	b := learn.Yield([]float64{0.30, 0.40})
	for _, c := range []struct{ got, want float64 }{{b.P50, 0.30}, {b.P10, 0.30 - 0.1226}, {b.P90, 0.30 + 0.1226}} {
		if math.Abs(c.got-c.want) > 1e-4 {
			t.Errorf("got %.4f, by hand %.4f", c.got, c.want)
		}
	}
}

func TestYieldWithoutOwnSmeltsIsThePrior(t *testing.T) {
	if b := learn.Yield(nil); b != (physics.Band{P10: 0.08, P50: 0.20, P90: 0.40}) {
		t.Errorf("%+v", b)
	}
	// A poor first smelt does not make a bloom of less than nothing likely.
	if b := learn.Yield([]float64{0.02}); b.P10 < 0 || b.P50 <= 0 {
		t.Errorf("%+v", b)
	}
}

// Smelts that agree narrow the band; ones that do not widen it again.
func TestYieldNarrowsWithOwnSmelts(t *testing.T) {
	width := func(own ...float64) float64 { b := learn.Yield(own); return b.P90 - b.P10 }
	few, many := width(0.25, 0.27), width(0.25, 0.27, 0.26, 0.24, 0.28, 0.25)
	if !(many < few && few < width()) {
		t.Errorf("none %.3f, two %.3f, six %.3f", width(), few, many)
	}
	if wild := width(0.05, 0.45, 0.10, 0.40, 0.07, 0.42); wild < 1.5*many {
		t.Errorf("wild ones %.3f, alike ones %.3f", wild, many)
	}
}

// The chance of none counts failures of this crew alone, whatever the mix.
func TestChanceOfNone(t *testing.T) {
	if c := learn.ChanceOfNone(1, 1); c != learn.FirstNone {
		t.Errorf("a second smelt: %+v", c)
	}
	if c := learn.ChanceOfNone(2, 5); math.Abs(c.P50-3.0/15) > 1e-12 || c.P10 != c.P50 {
		t.Errorf("two of five failed: %+v, want 3 in 15", c)
	}
	earlier := []learn.Smelt{{Crew: "a", Ore: 20}, {Crew: "a", Ore: 20, Bloom: 4}, {Crew: "b", Ore: 20}}
	if f, n := learn.Failures(earlier, "a"); f != 1 || n != 2 {
		t.Errorf("%d of %d failed", f, n)
	}
}

// A smelt without a bloom, of another crew, on another mix, or on a mix that is
// not known says nothing about the yield.
func TestOwnYields(t *testing.T) {
	mix := learn.ParseMix("A6 C4")
	earlier := []learn.Smelt{
		{Crew: "a", Mix: mix, Ore: 10, Bloom: 2}, {Crew: "a", Mix: mix, Ore: 10}, {Crew: "b", Mix: mix, Ore: 10, Bloom: 4},
		{Crew: "a", Mix: learn.ParseMix("A4 C6"), Ore: 10, Bloom: 4}, {Crew: "a", Ore: 10, Bloom: 4},
		{Crew: "a", Mix: learn.ParseMix("a 13 + c 7"), Ore: 10, Bloom: 3},
	}
	own := learn.OwnYields(earlier, "a", mix)
	if len(own) != 2 || own[0] != 0.2 || own[1] != 0.3 {
		t.Errorf("%v", own)
	}
	if own := learn.OwnYields(earlier, "a", nil); len(own) != 0 {
		t.Errorf("an unknown mix took %v", own)
	}
}

func TestParseMix(t *testing.T) {
	for text, want := range map[string]learn.Mix{
		"":                           nil,
		"DD2 analogue (black oxide)": {"dd2 analogue": 1},
		"roasted bog ore D7 B3":      {"d": 0.7, "b": 0.3},
		"bog ore D2 A2.5 as printed (perhaps A0.5)": {"d": 2 / 4.5, "a": 2.5 / 4.5},
		"limonite 6.5 + DD2 25.2":                   {"limonite": 6.5 / 31.7, "dd2": 25.2 / 31.7},
		"red 60 %, brown 40 %":                      {"red": 0.6, "brown": 0.4},
		"DD1 + DD2":                                 {"dd1 + dd2": 1}, // amounts not known: a name like any other
	} {
		got := learn.ParseMix(text)
		same := len(got) == len(want)
		for name, share := range want {
			same = same && math.Abs(got[name]-share) < 1e-12
		}
		if !same {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}

// 2.5 kg of slag with half its mass iron hold the iron of 2.60 kg of ore with 48 %.
func TestSlagCountsByItsIron(t *testing.T) {
	if got := learn.SlagAsOre(2.5, 0); math.Abs(got-2.5*50/48) > 1e-12 {
		t.Errorf("%.3f", got)
	}
	if got := learn.SlagAsOre(2.5, 0.625); math.Abs(got-2) > 1e-12 {
		t.Errorf("%.3f", got)
	}
}

// Of one date smelts stay as they stand, and one without a date teaches none.
func TestInOrder(t *testing.T) {
	var got string
	for _, s := range learn.InOrder([]learn.Smelt{{Crew: "e"}, {Date: "2010-05", Crew: "c"}, {Date: "1998", Crew: "a"}, {Date: "2010-05", Crew: "d"}, {Date: "2010", Crew: "b"}, {Crew: "f"}}) {
		got += s.Crew
	}
	if got != "abcdef" {
		t.Error(got)
	}
}
