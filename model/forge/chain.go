package forge

import (
	"chargehand/model/entry"
)

// Step is one mass on the way from the ore to a piece.
type Step struct {
	At   int // the piece, -1 for the ore
	Form StepForm
	Kg   float64
	// Share is of the mass of the step before; of a part that was cut off it is what the
	// parts together weigh of that.
	Share float64
	Cut   bool    // one of several parts
	OfOre float64 // of the ore, dry; nought where that is not known
}

// StepForm is what a step is.
type StepForm int

// The forms of steps.
const (
	OreStep    StepForm = iota // the smelt's ore, dry
	MadeStep                   // the piece as it came to be
	WorkedStep                 // as it weighed when it was last worked
)

// Chain is the way to a piece: the ore of its smelt where that is known, then each piece
// on the way with its mass. Of a piece welded of several it goes back by the heaviest.
func (b Bench) Chain(i int) []Step {
	path, seen := []int{i}, map[int]bool{i: true}
	for at := i; ; {
		next, most := -1, -1.0
		for _, j := range b.Sources(at) {
			if kg, _ := b.of(at, j); !seen[j] && kg > most {
				next, most = j, kg
			}
		}
		if next < 0 {
			break
		}
		seen[next] = true
		path, at = append(path, next), next
	}
	var steps []Step
	ofOre := 0.0
	root := path[len(path)-1]
	if s, ok := b.Smelt(root); ok && s.OreDry.Positive() {
		steps = append(steps, Step{At: -1, Form: OreStep, Kg: float64(s.OreDry.Value), OfOre: 1})
		ofOre = 1
	}
	for n := len(path) - 1; n >= 0; n-- {
		at := path[n]
		p := b.Pieces[at]
		first, known := p.First()
		if !known {
			ofOre = 0
			continue
		}
		step := Step{At: at, Form: MadeStep, Kg: first}
		if len(steps) > 0 {
			before := steps[len(steps)-1]
			step.Share, step.Cut = b.kept(at, before)
			if step.Share == 0 || b.Welded(at) && len(b.Smelts(at)) != 1 {
				ofOre = 0
			}
			ofOre *= step.Share
			step.OfOre = ofOre
		}
		steps = append(steps, step)
		if now := float64(p.Mass.Value); p.Mass.Positive() && !same(now, first) {
			ofOre *= now / first
			steps = append(steps, Step{At: at, Form: WorkedStep, Kg: now, Share: now / first, OfOre: ofOre})
		}
	}
	return steps
}

// kept is what is left, from the step before a piece to the piece, and whether it is one
// of several parts.
func (b Bench) kept(at int, before Step) (share float64, cut bool) {
	if before.At < 0 {
		first, _ := b.Pieces[at].First()
		return first / before.Kg, false
	}
	if p := b.Pieces[at]; p.Form == entry.CropEnd {
		first, _ := p.First()
		return first / before.Kg, false
	}
	total := 0.0
	n := 0
	for _, k := range b.kids[before.At] {
		if b.Pieces[k].Form == entry.CropEnd {
			continue
		}
		kg, known := b.of(k, before.At)
		if !known {
			return 0, false
		}
		total += kg
		n++
	}
	if before.Kg <= 0 {
		return 0, false
	}
	return total / before.Kg, n > 1
}

// OfOre is how much of the ore of its smelt, dry, came as far as a piece, and whether that
// holds only if the rest of it goes alike.
func (b Bench) OfOre(i int) (share float64, ifAlike, known bool) {
	steps := b.Chain(i)
	if b.Pieces[i].Form == entry.CropEnd { // what is left over, and no yield
		return 0, false, false
	}
	for _, s := range steps {
		ifAlike = ifAlike || s.Cut
	}
	if len(steps) < 2 || steps[0].Form != OreStep {
		return 0, false, false
	}
	share = steps[len(steps)-1].OfOre
	return share, ifAlike, share > 0
}
