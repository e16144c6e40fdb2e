package account

// Place is where a stream went in, or what it came out as.
type Place int

// The places, in the order in which they are told.
const (
	Ore Place = iota
	SeedSlag
	ReturnedSlag
	FragmentsIn
	Flux
	WallAndAsh // of unknown mass: what the silica lacks
	Wall       // melted off, weighed or measured
	Ash        // of the charcoal
	Bloom
	FragmentsOut
	TapSlag
	FurnaceSlag
	Slag // of no said place
)

// Assay is what a stream is made of: shares of its dry mass.
type Assay struct {
	Iron   Amount // all iron, as metal or in oxides; of a bloom its metal share
	Silica Amount
}

// Stream is one thing that went into the furnace or came out of it. A mass that
// is not known says that there was one, which nobody weighed; a stream that was
// not there is left out.
type Stream struct {
	Place Place
	Name  string // of the lot, where it has one
	Mass  Amount // dry
	Of    int    // its assay, by place in Smelt.Assays; what is of one make shares one
}

// Smelt is what was weighed and assayed of one smelt.
type Smelt struct {
	Name         string
	In, Out      []Stream
	Assays       []Assay
	OwnSlag      int    // the assay of this smelt's slag, which bloom and fragments hold too; -1 for none
	Wall         Amount // melted off; not known is the usual
	Charcoal     Amount // dry
	BloomSlag    Share  // of the bloom, by its weight in air and in water; never counted as measured
	CharcoalLeft Amount // dry, what was left over; not known is taken for none
	CarbonShare  Amount // of dry charcoal
	AshShare     Amount // of dry charcoal
}

// Share is a share of a mass between two limits, 10th and 90th percentile.
type Share struct {
	Low, High float64
	Known     bool
}

// slagBeside is what of a piece is slag beside its metal.
func slagBeside(metal Amount) Share {
	b := metal.Band()
	return Share{max(0, 1-b.P90), min(1, 1-b.P10), metal.Known()}
}

// assay adds an assay and gives its place.
func (s *Smelt) assay(a Assay) int {
	s.Assays = append(s.Assays, a)
	return len(s.Assays) - 1
}
