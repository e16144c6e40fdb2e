// Package why asks of a smelt that is over what one thing otherwise would have changed: the same inputs once more through the
// shaft solver, on its coarse grid, in the ten plausible furnaces of package ahead. It tells by how many hours the hearth would
// have been below working heat less or more, and how much of the ore would not have come down, each with a band over the
// furnaces; all of it is the model's opinion. Where published smelts go the other way, that is told beside it.
//
// It tells no kilograms of iron: the solver's foretell nothing of those of published smelts.
package why
