//go:build !solverfault

package tui

import "chargehand/model/solve"

// remembers is what was solved of a smelt so far.
func (v *Solver) remembers(of role) *solve.Solver { return &v.memory[of] }
