// Package plan is the room for the day before: how much ore, charcoal and time a
// smelt of a furnace needs, and the ramp of charges that the recipe follows. A
// plan is kept as an entry.Plan of the house stream; nothing reads it yet.
package plan
