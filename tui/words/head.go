package words

import (
	"time"

	modelwords "chargehand/model/words"
)

// Over the next charge.
const (
	BooksIt   = "books it"
	WasToNext = "it was, to the next"
)

// Figures that only the roomy screens have, and what is said beside them.
const (
	LineHearth     = "hearth"
	LineSlag       = "slag"
	LineIn         = "in"
	HearthLow      = "too cold for slag"
	HearthLowTerse = "cold for slag" // the same where there is little room
	HearthGood     = "hot enough"
	LineIron       = "iron"
	LineYield      = "yield"
	ReckonedHead   = "reckoned, a guess until weighed"
	TooLittleSlag  = "too little of it yet to say how it runs"
	TooLittleBrief = "too little of it yet" // the same where there is little room
	SlagNone       = "none yet"
	LevelUnknown   = "level not known"
	UnderTuyere    = "under tuyere"
	ToTuyere       = "to tuyere" // the same where there is little room
	OverTuyere     = "over tuyere"
)

// StripUsual stands behind the ticks of the strip.
const StripUsual = "usual"

// Marks of a smelt that counts for nothing, or is not of now.
const (
	TagPractice = "practice"
	TagInvented = "invented"
	TagWatching = "watching"
)

// The charges to come, and what is left of what they are made of.
const (
	ChargingPlan = "charging plan"
	NextCharges  = "the next charges, if the pace holds"
	NoOreInIt    = "no ore"
)

// SoMuchLeft is what is left of a material, SoMuchNeeded what is wanted of it.
func SoMuchLeft(kg string) string   { return kg + " left" }
func SoMuchNeeded(kg string) string { return kg + " needed" }

// LastsTo is until when it lasts at the pace of the smelt.
func LastsTo(at time.Time) string { return "lasts to " + at.Format(modelwords.Clock) }

// OnScales says of a mass that it was weighed.
func OnScales(kg string) string { return kg + " weighed" }

// About says of a weight that it is a guess, in few letters.
func About(weight string) string { return "about " + weight }
