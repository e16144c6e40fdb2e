package rule_test

import (
	"slices"
	"testing"
	"time"

	"chargehand/model/rule"
)

// came is when something came up last, every forty seconds.
func came(s int) time.Time {
	if s < 40 {
		return time.Time{}
	}
	return lit.Add(time.Duration(s/40*40) * time.Second)
}

// heard are the seconds at which the bell sounds, asked every ten from 0 on.
func heard(to int, at func(second int) rule.Sound) []int {
	var b rule.Bell
	var rang []int
	for s := 0; s <= to; s += 10 {
		sound := at(s)
		sound.At = time.Duration(s) * time.Second
		var rings bool
		if b, rings = b.Ring(sound); rings {
			rang = append(rang, s)
		}
	}
	return rang
}

func TestTheBell(t *testing.T) {
	lost := rule.Warning{Rule: rule.BlastLost, Grade: rule.Act, Onset: 1}
	seen, over := lost, lost
	seen.Acknowledged = true
	over.Cleared = 2
	slag := rule.Warning{Rule: rule.SlagAt, Grade: rule.Act, Onset: 2}
	look := rule.Warning{Rule: rule.TuyereDim, Grade: rule.Look, Onset: 1}
	// An act from second 20 on, seen at 150.
	acts := func(h rule.Heard) func(int) rule.Sound {
		return func(s int) rule.Sound {
			switch {
			case s < 20:
				return rule.Sound{Heard: h}
			case s < 150:
				return rule.Sound{Heard: h, Warnings: []rule.Warning{look, lost}}
			}
			return rule.Sound{Heard: h, Warnings: []rule.Warning{seen}}
		}
	}
	// The charge after five is due at second 30; the sixth goes in at 100, and the one
	// after it is due at 200.
	due := func(h rule.Heard) func(int) rule.Sound {
		return func(s int) rule.Sound {
			charges, at := 5, 30
			if s >= 100 {
				charges, at = 6, 200
			}
			return rule.Sound{Heard: h, Charges: charges, Waits: true, Left: time.Duration(at-s) * time.Second}
		}
	}
	for name, c := range map[string]struct {
		at   func(int) rule.Sound
		want []int
		to   int // second; 230 when it is 0
	}{
		"an act, each minute until it is seen":     {acts(rule.HeardAct), []int{20, 80, 140}, 0},
		"an act, with all":                         {acts(rule.HeardAll), []int{20, 80, 140}, 0},
		"an act, off":                              {acts(rule.HeardOff), nil, 0},
		"a charge due, an act only":                {due(rule.HeardAct), nil, 0},
		"a charge due, once each":                  {due(rule.HeardAll), []int{30, 200}, 0},
		"a charge due, off":                        {due(rule.HeardOff), nil, 0},
		"a charge due in a pause or without blast": {func(s int) rule.Sound { x := due(rule.HeardAll)(s); x.Waits = s >= 60; return x }, []int{60, 200}, 0},
		"a forecast that moves on, for one charge": {func(s int) rule.Sound {
			return rule.Sound{Heard: rule.HeardAll, Charges: 5, Waits: true, Left: time.Duration(30-s%60) * time.Second}
		}, []int{30}, 0},
		"no charge yet":       {func(int) rule.Sound { return rule.Sound{Heard: rule.HeardAll, Waits: true} }, nil, 0},
		"only a look":         {func(int) rule.Sound { return rule.Sound{Heard: rule.HeardAll, Warnings: []rule.Warning{look}} }, nil, 0},
		"an act that is over": {func(int) rule.Sound { return rule.Sound{Warnings: []rule.Warning{over}} }, nil, 0},
		"a second act at once": {func(s int) rule.Sound {
			x := rule.Sound{Warnings: []rule.Warning{lost}}
			if s >= 30 {
				x.Warnings = append(x.Warnings, slag)
			}
			return x
		}, []int{0, 30, 90}, 110},
		"asked for":      {func(s int) rule.Sound { return rule.Sound{Reminded: came(s)} }, []int{40, 80}, 110},
		"asked for, off": {func(s int) rule.Sound { return rule.Sound{Heard: rule.HeardOff, Reminded: came(s)} }, nil, 0},
		"never in Replay": {func(s int) rule.Sound {
			x := acts(rule.HeardAll)(s)
			x.Replayed, x.Charges, x.Waits, x.Reminded = true, 5, true, came(s)
			return x
		}, nil, 0},
	} {
		to := 230
		if c.to > 0 {
			to = c.to
		}
		if got := heard(to, c.at); !slices.Equal(got, c.want) {
			t.Errorf("%s: sounds at %v, want %v", name, got, c.want)
		}
	}
}

func TestHeardIsKeptByAWord(t *testing.T) {
	var first rule.Heard
	if first != rule.HeardAct {
		t.Error("it is not an act only at first")
	}
	h := first
	for range 3 {
		if rule.HeardOf(h.String()) != h {
			t.Errorf("%q is %v again", h, rule.HeardOf(h.String()))
		}
		h = h.Next()
	}
	if h != first || rule.HeardOf("of a newer version") != rule.HeardAct {
		t.Errorf("after all %v", h)
	}
}
