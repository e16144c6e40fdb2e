package entry

// Piece keeps a piece of iron in the house, from the bloom on. Said again of the
// same uid it holds in place of what was said before.
type Piece struct {
	UID       UID             `json:"uid"`
	Form      PieceKind       `json:"kind"`
	Name      string          `json:"name,omitempty"`
	From      []PieceFrom     `json:"from,omitempty"`
	WhereFrom string          `json:"where_from,omitempty"` // of one that is not from here
	Year      int             `json:"year,omitempty"`
	Mass      Maybe[Kilogram] `json:"mass_kg,omitzero"`  // when it came to be
	Size      []Millimetre    `json:"size_mm,omitempty"` // thick, wide, long
	Printed   []Printed       `json:"printed,omitempty"` // as somebody else wrote of it
	EndsAs    PieceEnd        `json:"ends_as,omitempty"`
	To        string          `json:"to,omitempty"` // whom it went to
	Cost      *Cost           `json:"cost,omitempty"`
}

// Printed is what somebody else wrote of how much came of how much: it is held against
// the masses, and nothing is reckoned from it.
type Printed struct {
	Of      string          `json:"of,omitempty"` // ore, bloom
	Mass    Maybe[Kilogram] `json:"of_kg,omitzero"`
	Percent Maybe[Percent]  `json:"pct,omitzero"`
	Lost    Maybe[Kilogram] `json:"lost_kg,omitzero"`
}

// PieceFrom is what a piece was cut from or welded of.
type PieceFrom struct {
	Piece UID             `json:"piece,omitempty"`
	Smelt string          `json:"smelt,omitempty"` // the smelt's uid
	Share Maybe[Share]    `json:"share,omitzero"`  // of what it is from
	Mass  Maybe[Kilogram] `json:"mass_kg,omitzero"`
}

// PieceKind is what a piece is.
type PieceKind string

// The kinds of pieces.
const (
	BloomPiece PieceKind = "bloom"
	HalfPiece  PieceKind = "half"
	Billet     PieceKind = "billet"
	Bar        PieceKind = "bar"
	Finished   PieceKind = "finished"
	CropEnd    PieceKind = "crop_end"
)

// PieceEnd is how a piece left the house.
type PieceEnd string

// The ends of a piece.
const (
	EndSold   PieceEnd = "sold"
	EndGiven  PieceEnd = "given"
	EndSample PieceEnd = "sample"
	EndScrap  PieceEnd = "scrap"
	EndLost   PieceEnd = "lost"
)

// ForgeSession is work at the forge, keyed afterwards in one line.
type ForgeSession struct {
	Pieces []UID           `json:"pieces,omitempty"`
	Did    []Forged        `json:"did,omitempty"`
	Heats  Maybe[Count]    `json:"heats,omitzero"`
	Hours  Maybe[Hour]     `json:"hours,omitzero"`
	Fuel   ForgeFuel       `json:"fuel,omitzero"`
	Flux   Maybe[Kilogram] `json:"flux_kg,omitzero"`
	After  []PieceMass     `json:"masses_after,omitempty"`
	By     string          `json:"by,omitempty"`
	Cost   *Cost           `json:"cost,omitempty"`
}

// Forged is what was done at the forge.
type Forged string

// What is done at a forge.
const (
	Consolidated Forged = "consolidate"
	Folded       Forged = "fold"
	Welded       Forged = "weld"
	DrawnOut     Forged = "draw out"
	FinishedOff  Forged = "finish"
)

// ForgeFuel is what a forge burned.
type ForgeFuel struct {
	What string          `json:"what,omitempty"` // charcoal, coal, gas
	Kg   Maybe[Kilogram] `json:"kg,omitzero"`
}

// PieceMass is what a piece weighs.
type PieceMass struct {
	Piece UID      `json:"piece"`
	Mass  Kilogram `json:"mass_kg"`
}

// Heat is pieces put into the forge fire.
type Heat struct {
	Pieces []UID `json:"pieces,omitempty"`
}

// HeatOver is the end of a heat, with what the pieces weighed.
type HeatOver struct {
	Heat   Ref          `json:"heat"`
	Pieces []HeatedMass `json:"pieces,omitempty"`
}

// HeatedMass is a piece before and after a heat.
type HeatedMass struct {
	Piece  UID             `json:"piece"`
	Before Maybe[Kilogram] `json:"before_kg,omitzero"`
	After  Maybe[Kilogram] `json:"after_kg,omitzero"`
}

// PieceWeighed is a piece on the scales.
type PieceWeighed struct {
	Piece     UID             `json:"piece"`
	Mass      Kilogram        `json:"mass_kg"`
	PlusMinus Maybe[Kilogram] `json:"plus_minus_kg,omitzero"`
	State     PieceState      `json:"state,omitempty"`
	InWater   Maybe[Kilogram] `json:"in_water_kg,omitzero"`
	Soaked    bool            `json:"soaked,omitempty"` // it lay in water before that until no bubbles came
}

// PieceTested is a test at a place of a piece, and what it showed.
type PieceTested struct {
	Piece  UID    `json:"piece"`
	Place  string `json:"place,omitempty"`
	Test   string `json:"test"` // spark, file, bend, quench, etch
	Result string `json:"result"`
	Note   string `json:"note,omitempty"`
}

func (Piece) Kind() Kind        { return KindPiece }
func (ForgeSession) Kind() Kind { return KindForgeSession }
func (Heat) Kind() Kind         { return KindHeat }
func (HeatOver) Kind() Kind     { return KindHeatOver }
func (PieceWeighed) Kind() Kind { return KindPieceWeighed }
func (PieceTested) Kind() Kind  { return KindPieceTested }

func (h HeatOver) target() Ref       { return h.Heat }
func (h HeatOver) aimed(r Ref) Event { h.Heat = r; return h }
