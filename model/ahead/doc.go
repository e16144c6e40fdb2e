// Package ahead looks at the next hour of a smelt: what a few next charges and blasts would do in ten plausible furnaces that
// all have the smelt's own past, by the shaft solver on its coarse grid. It tells how hot the hearth would be, how the slag
// would run, what ore would have come down and how often the hearth would be cold or the iron cast, and gives one line of
// advice or says that there is no difference worth acting on. It tells no kilograms of iron: the solver's foretell nothing of
// those of published smelts.
package ahead
