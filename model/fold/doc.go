// Package fold turns the entries of one smelt into its state at a moment, as
// known by one entry: Fold(entries, known, at). Live, replay and report use
// this one path.
//
// It works from scratch each time, in three steps that each have a file:
// force (which entries hold: strikes and amendments), clock (when each
// happened on the smelt's own clock), and state (what they add up to: charge,
// mass, blast, phase, level). Nothing here reads a clock or keeps anything
// between calls, so a state depends on the entries alone.
package fold
