package rehearse

import "chargehand/model/truth"

// responder is a furnace that answers: what a crew can do to it and see of it, and what is true of it at the end. Whatever is
// behind it, crew and scores know it by this alone.
type responder interface {
	// What goes on.
	Seconds() float64
	Step()
	MainBurn()
	Befalls(truth.Mishap) (seconds float64, ok bool)
	Befalling(truth.Mishap) bool
	Forgets() bool
	OtherLuck(day int64)
	// What is done.
	Preheat()
	Fill(height float64) (kg float64)
	Charge(buckets, bucketKg, oreKg float64) truth.Charged
	SetBlast(lMin float64)
	Rod()
	Poke()
	Tap() (kg float64)
	LightTop()
	Bloom() (kg, bits float64)
	// What is seen.
	Mark() float64
	Level() float64
	Dip() float64
	Peep() string
	Sound() string
	Slag() string
	Flame() string
	TopAlight() bool
	Hangs() bool
	MeterReads() (lMin float64, ok bool)
	// What is so.
	Look() truth.Truth
}

// furnace is one that answers, with how it is built and worked.
type furnace struct {
	truth.Setting
	responder
}
