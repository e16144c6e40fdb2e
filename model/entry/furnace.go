package entry

// Furnace is a furnace as built. Heights are from the tuyere unless said
// otherwise; what was not measured is left out, and the figures that need it
// are then unknown.
type Furnace struct {
	Name        string            `json:"name"`
	Bore        Maybe[Centimetre] `json:"bore_cm,omitzero"`        // inside diameter at the tuyere
	BoreTop     Maybe[Centimetre] `json:"bore_top_cm,omitzero"`    // inside diameter at the charging mark, when it tapers
	Stack       Maybe[Centimetre] `json:"stack_cm,omitzero"`       // charging mark above the tuyere
	Rim         Maybe[Centimetre] `json:"rim_cm,omitzero"`         // rim above the tuyere, from which a dip is measured
	TuyereBase  Maybe[Centimetre] `json:"tuyere_base_cm,omitzero"` // tuyere above the floor of the hearth
	TuyereAngle Maybe[Degree]     `json:"tuyere_angle_deg,omitzero"`
	TuyereBore  Maybe[Millimetre] `json:"tuyere_bore_mm,omitzero"`
	TuyereProud Maybe[Centimetre] `json:"tuyere_proud_cm,omitzero"` // how far its tip stands into the shaft
	TuyereRight bool              `json:"tuyere_right,omitempty"`   // drawn on the right; else the left
	Wall        Maybe[Centimetre] `json:"wall_cm,omitzero"`
	Practice    SlagPractice      `json:"practice,omitempty"`
	OreUnder    bool              `json:"ore_under,omitempty"` // an ore entry on its own belongs to the next charcoal, not the last
	Altitude    Maybe[Metre]      `json:"altitude_m,omitzero"`
	Blower      []Blast           `json:"blower,omitempty"`  // what its blower gave when it was metered, each with its setting
	Guessed     bool              `json:"guessed,omitempty"` // a starter, not measured here
	UID         UID               `json:"uid,omitempty"`
	Bores       []BoreAt          `json:"bores,omitempty"` // as measured at several heights; they hold in place of Bore and BoreTop
	TuyereOf    string            `json:"tuyere_material,omitempty"`
	Clay        []ShareOf         `json:"clay,omitempty"`        // what the wall is made of
	ArchWide    Maybe[Centimetre] `json:"arch_wide_cm,omitzero"` // the opening at the foot, for tapping and pulling
	ArchHigh    Maybe[Centimetre] `json:"arch_high_cm,omitzero"`
}

// BoreAt is the inside diameter at a height above the tuyere.
type BoreAt struct {
	At   Centimetre `json:"at_cm"`
	Bore Centimetre `json:"bore_cm"`
}

// ShareOf is a part of a mixture.
type ShareOf struct {
	What  string `json:"what"`
	Share Share  `json:"share"`
}

// ID names the furnace: its uid, or its name where it has none.
func (f Furnace) ID() UID { return f.UID.or(f.Name) }

// SlagPractice says where the slag of a furnace goes.
type SlagPractice string

// The practices of keeping or losing the slag.
const (
	SlagBowl    SlagPractice = "bowl"    // gathers in a bowl of its own under the tuyere
	SlagPit     SlagPractice = "pit"     // falls into a pit below the shaft
	SlagTap     SlagPractice = "tap"     // let out through the arch now and then
	SlagRunning SlagPractice = "running" // runs out through an arch kept open
)
