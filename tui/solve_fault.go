//go:build solverfault

package tui

import "chargehand/model/solve"

// faults counts the jobs. They follow each other, one at a time.
var faults int

// remembers is nothing for every second job, which breaks down over it. It exists only in
// a build for trying out what becomes of the rest then.
func (v *Solver) remembers(of role) *solve.Solver {
	if faults++; faults%2 == 0 {
		return nil
	}
	return &v.memory[of]
}
