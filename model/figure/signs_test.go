package figure

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

func look(at entry.LookAt, sees string) entry.Event { return entry.Look{At: at, Sees: sees} }

func TestSignsMoveTheHearth(t *testing.T) {
	heat := physics.Band{P10: physics.FromCelsius(1060), P50: physics.FromCelsius(1280), P90: physics.FromCelsius(1378)}
	slag := physics.Oxides{FeO: 6, SiO2: 3, Al2O3: 0.5, CaO: 0.3}
	melts := slag.Liquidus().P50
	at := func(g Signs) physics.Band { return g.Hearth(heat, slag) }
	none, stiff, twice, runs := at(Signs{}), at(Signs{Slag: entry.SlagStiff, Times: 1}), at(Signs{Slag: entry.SlagStiff, Times: 2}), at(Signs{Slag: entry.SlagRuns, Times: 1})
	if none != heat {
		t.Errorf("nothing seen: %+v", none)
	}
	if !(twice.P50 < stiff.P50 && stiff.P50 < heat.P50 && heat.P50 <= runs.P50) {
		t.Errorf("stiff twice %.0f, once %.0f, nothing %.0f, runs %.0f", twice.P50, stiff.P50, heat.P50, runs.P50)
	}
	if twice.P50 > melts {
		t.Errorf("slag seen to stand twice melts at %.0f, hearth at %.0f", melts, twice.P50)
	}
	if runs.P10 <= heat.P10 {
		t.Errorf("slag that runs leaves the low end at %.0f", runs.P10)
	}
	orange := at(Signs{Peep: entry.PeepOrange})
	if orange.P50 > physics.FromCelsius(1150) {
		t.Errorf("orange %.0f", orange.P50)
	}
	for _, b := range []physics.Band{stiff, twice, runs, orange} {
		if !(b.P10 < b.P50 && b.P50 < b.P90) {
			t.Errorf("no band: %+v", b)
		}
	}
}

func TestSignsAreTheLastThatStand(t *testing.T) {
	stiff, runs := look(entry.AtSlag, entry.SlagStiff), look(entry.AtSlag, entry.SlagRuns)
	yellow := look(entry.AtPeep, entry.PeepYellow)
	for _, c := range []struct {
		name string
		at   time.Duration // minutes
		rows []entry.Event
		want Signs
	}{
		{"nothing", 1, nil, Signs{}},
		{"stiff", 1, []entry.Event{stiff}, Signs{Slag: entry.SlagStiff, Times: 1}},
		{"stiff four times", 1, []entry.Event{stiff, stiff, stiff, stiff}, Signs{Slag: entry.SlagStiff, Times: 3}},
		{"stiff, then runs", 1, []entry.Event{stiff, runs}, Signs{Slag: entry.SlagRuns, Times: 1}},
		{"an hour ago", 60, []entry.Event{stiff}, Signs{}},
		{"glassy since", 1, []entry.Event{runs, look(entry.AtSlag, entry.SlagGlassy)}, Signs{}},
		{"yellow", 1, []entry.Event{yellow}, Signs{Peep: entry.PeepYellow}},
		{"yellow, then white", 1, []entry.Event{yellow, look(entry.AtPeep, entry.PeepWhite)}, Signs{}},
		{"yellow, half an hour ago", 30, []entry.Event{yellow}, Signs{}},
	} {
		if got := read(smelt(usualShaft, c.rows...), c.at*time.Minute).Signs; got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}
