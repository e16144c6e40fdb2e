package ahead

import "chargehand/physics"

// Advice is one line: a choice with its reason, or none.
type Advice struct {
	Choice Name    // empty: no difference worth acting on
	Why    Why     // what speaks for it, or why there is none
	Sure   float64 // share of the furnaces in which the choice beats what is shown by more than the error; of none, the most that any choice had
}

// Why says what an advice rests on.
type Why string

// The reasons.
const (
	WhyCold    Why = "cold"         // the hearth would be too cold for slag to run
	WhyStiff   Why = "stiff"        // the slag would hardly run
	WhyCast    Why = "cast"         // the iron would run to cast iron
	WhySame    Why = "same"         // what ails the hour, none of the choices changes for certain
	WhyWell    Why = "well"         // nothing ails the hour
	WhyUnseen  Why = "unseen"       // nothing ails it by the solver, and nobody said of late how the slag runs
	WhyDown    Why = "ore down"     // the ore has come down
	WhyNotDown Why = "ore not down" // ore is still to come down, and the hearth stays warm
	WhyCools   Why = "cools"        // the hearth goes cold while one waits
	WhyLost    Why = "lost"         // cold, and hardly any ore has come down
	WhyLacks   Why = "lacks"        // the solver says nothing of this smelt
)

// By how much a choice must be better in one furnace to be better: the error of each figure when two choices on the same
// furnace are held against each other. The hearth of the solver goes up and down by some ten K with each charge (rule's
// trendBy), and where in that swing the hour ends is chance; the grid adds 1.3 K (TestTheCoarseGridsError). Ten K are three
// per cent of whether slag runs, where that is least certain.
const (
	hearthError = 10.0  // K
	runsError   = 3.0   // per cent
	carbonError = 0.002 // mass share
)

// enough is in how many of ten furnaces it must be better.
const enough = 8

// advise gives the advice of what has been told. Before all furnaces are asked there is none.
func advise(a Ahead) Advice {
	switch {
	case a.Lacks || len(a.Outcomes) == 0 || a.Asked == 0:
		return Advice{Why: WhyLacks}
	case a.Outcomes[0].Name == Wait:
		return toEnd(a)
	case a.Asked < Furnaces:
		return Advice{Why: WhySame}
	}
	shown := a.Outcomes[0]
	switch {
	case 2*shown.Cold >= a.Asked:
		return best(a, WhyCold, func(was, is told) bool { return is.hearth-was.hearth > hearthError }, func(t told) float64 { return t.hearth })
	case 2*shown.Cast >= a.Asked:
		return best(a, WhyCast, func(was, is told) bool { return was.carbon-is.carbon > carbonError && is.hearth >= physics.SlagFreezes }, func(t told) float64 { return -t.carbon })
	case shown.each[0].slag && shown.Runs.P50 < 50:
		return best(a, WhyStiff, func(was, is told) bool { return is.runs-was.runs > runsError }, func(t told) float64 { return t.runs })
	}
	if a.Signs.Slag == "" && shown.each[0].slag {
		return Advice{Why: WhyUnseen}
	}
	return Advice{Why: WhyWell}
}

// best is the choice that is better than the one shown in the most furnaces, of several the one with the best middle; none
// unless those are enough.
func best(a Ahead, why Why, better func(was, is told) bool, by func(told) float64) Advice {
	shown, most, top := a.Outcomes[0], 0, -1
	for i, o := range a.Outcomes[1:] {
		n := 0
		for k := range o.each {
			if better(shown.each[k], o.each[k]) {
				n++
			}
		}
		if n > most || n == most && n > 0 && spread(o.each, by).P50 > spread(a.Outcomes[top].each, by).P50 {
			most, top = n, i+1
		}
	}
	sure := float64(most) / float64(a.Asked)
	if most < enough*a.Asked/Furnaces || top < 0 {
		return Advice{Why: WhySame, Sure: sure}
	}
	return Advice{Choice: a.Outcomes[top].Name, Why: why, Sure: sure}
}

// Of the end: from how much of the ore on it counts as down, and below how much a cold furnace is given up, per cent.
const downFrom, lostBelow = 95.0, 30.0

// toEnd advises once the last ore is in.
func toEnd(a Ahead) Advice {
	wait, pull := a.Outcomes[0], a.Outcomes[1]
	count := func(of Outcome, is func(told) bool) (share float64, most bool) {
		n := 0
		for _, t := range of.each {
			if is(t) {
				n++
			}
		}
		return float64(n) / float64(a.Asked), n*Furnaces >= enough*a.Asked
	}
	if n, ok := count(pull, func(t told) bool { return t.hearth < physics.SlagFreezes && t.down < lostBelow }); ok {
		return Advice{GiveUp, WhyLost, n}
	}
	if n, ok := count(pull, func(t told) bool { return t.down >= downFrom }); ok {
		return Advice{Pull, WhyDown, n}
	}
	if n, ok := count(pull, func(t told) bool { return t.hearth >= physics.SlagFreezes }); ok {
		if m, cools := count(wait, func(t told) bool { return t.hearth < physics.SlagFreezes }); cools {
			return Advice{Pull, WhyCools, min(n, m)}
		}
	}
	if n, ok := count(wait, func(t told) bool { return t.hearth >= physics.SlagFreezes }); ok {
		return Advice{Wait, WhyNotDown, n}
	}
	return Advice{Why: WhySame}
}
