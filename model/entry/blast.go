package entry

// BlastState says whether the blast is on.
type BlastState string

// States of the blast.
const (
	BlastOn  BlastState = "on"
	BlastOff BlastState = "off"
)

// Blast is the blast as observed. What was not read is left out. A gate mark,
// strokes and open tuyeres are no volume by themselves: they become one where
// the same blower was metered at them, at any time of the smelt or before it
// (Furnace.Blower). Several meters may disagree; each reading is its own entry.
// A blower exchanged for another blows an unknown volume until that is read.
type Blast struct {
	State    BlastState            `json:"state,omitempty"`
	Volume   Maybe[LitrePerMinute] `json:"l_min,omitzero"`
	Read     AirReading            `json:"read,omitzero"` // instead of a volume, what an instrument showed
	Gate     string                `json:"gate,omitempty"`
	Strokes  Maybe[PerMinute]      `json:"strokes_min,omitzero"`
	Stroke   Maybe[Litre]          `json:"stroke_l,omitzero"` // air that one stroke delivers
	Tuyeres  Maybe[Count]          `json:"open_tuyeres,omitzero"`
	Pressure Maybe[Pascal]         `json:"pressure_pa,omitzero"` // static, before the tuyere: what burden and tuyere hold against the blast
	Meter    string                `json:"meter,omitempty"`
	Blower   string                `json:"blower,omitempty"` // in words, the one that blows from here on in place of another; of a setting in Furnace.Blower, the one it is of
	// PlusMinus is how far the volume may be off, to the 10th and the 90th percentile, where that is known.
	PlusMinus Maybe[LitrePerMinute] `json:"plus_minus_l_min,omitzero"`
}

// Off tells whether the event says that no air goes in.
func (b Blast) Off() bool {
	return b.State == BlastOff || (b.Volume.Known && b.Volume.Value == 0) || (b.Tuyeres.Known && b.Tuyeres.Value == 0) || (b.Strokes.Known && b.Strokes.Value == 0)
}

// SaysNoSetting tells whether the event leaves the blast as it was: a pressure
// alone, or on again.
func (b Blast) SaysNoSetting() bool {
	return b == Blast{State: BlastOn} || b.Pressure.Known && b == Blast{Pressure: b.Pressure, Meter: b.Meter}
}

// AirMeter is an instrument in the pipe between blower and tuyere.
type AirMeter string

// The instruments that a volume can be reckoned from.
const (
	OrificePlate   AirMeter = "orifice plate" // to ISO 5167-2, corner tappings
	PitotTube      AirMeter = "pitot tube"    // on the axis of the pipe
	VaneAnemometer AirMeter = "vane anemometer"
)

// AirReading is what such an instrument showed, with the sizes it stands in.
type AirReading struct {
	With     AirMeter              `json:"with,omitempty"`
	Pipe     Maybe[Millimetre]     `json:"pipe_mm,omitzero"` // inside diameter
	Hole     Maybe[Millimetre]     `json:"hole_mm,omitzero"` // of an orifice plate
	Pressure Maybe[Pascal]         `json:"pa,omitzero"`      // across the plate, or of the pitot tube
	Speed    Maybe[MetrePerSecond] `json:"m_s,omitzero"`     // of a vane anemometer
}

func (Blast) Kind() Kind { return KindBlast }
