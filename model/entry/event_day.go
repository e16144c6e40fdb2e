package entry

// Incident is something that went wrong with people or fire. The program judges
// none of its numbers.
type Incident struct {
	What   IncidentWhat `json:"what"`
	CO     Maybe[PPM]   `json:"co_ppm,omitzero"`
	Where  string       `json:"where,omitempty"`
	Note   string       `json:"note,omitempty"`
	People []string     `json:"people,omitempty"` // by initials
}

// IncidentWhat is what went wrong.
type IncidentWhat string

// What can go wrong.
const (
	IncidentBurn     IncidentWhat = "burn"
	IncidentUnwell   IncidentWhat = "unwell"
	IncidentAlarm    IncidentWhat = "alarm"
	IncidentFire     IncidentWhat = "fire outside"
	IncidentNearMiss IncidentWhat = "near miss"
	IncidentOther    IncidentWhat = "other"
)

// WallSeen is something seen of the wall, or done about it.
type WallSeen struct {
	Where string   `json:"where,omitempty"`
	What  WallWhat `json:"what"`
	With  string   `json:"with,omitempty"` // what it was patched with
}

// WallWhat is what a wall does.
type WallWhat string

// What a wall does, or has done to it.
const (
	WallCrack       WallWhat = "crack"
	WallBurnThrough WallWhat = "burn-through"
	WallSlump       WallWhat = "slump"
	WallPatched     WallWhat = "patched"
)

// Weather is the weather at the furnace. What it does not say stands as it was.
type Weather struct {
	Rain string         `json:"rain,omitempty"`
	Wind string         `json:"wind,omitempty"`
	Air  Maybe[Celsius] `json:"air_c,omitzero"` // in the shade, away from the fire: what the blower draws
}

// What is offered to say of rain and of wind. Others may be said.
const (
	RainNone   = "none"
	RainDrops  = "a few drops"
	RainSteady = "steady"
	RainHeavy  = "heavy"
	RainSnow   = "snow"

	WindNone   = "none"
	WindLight  = "light"
	WindFresh  = "fresh"
	WindStrong = "strong"
	WindGusts  = "gusts"
)

// Rains and Winds are those words, the least first.
func Rains() []string { return []string{RainNone, RainDrops, RainSteady, RainHeavy, RainSnow} }

// Winds are those of the wind.
func Winds() []string { return []string{WindNone, WindLight, WindFresh, WindStrong, WindGusts} }

// Wet tells whether it says that rain or snow falls.
func (w Weather) Wet() bool { return w.Rain != "" && w.Rain != RainNone }

// AgainFromHere replaces the rest of a plan while the fire burns.
type AgainFromHere struct {
	Taken string       `json:"taken"` // which end was taken
	Steps []RecipeStep `json:"steps,omitempty"`
}

// Sealed holds what a rehearsal's furnace is like, until it is opened at the
// end. Only the rehearsal reads what was drawn.
type Sealed struct {
	Number  int64    `json:"number"`            // the furnace number
	Truth   string   `json:"truth"`             // version of the truth behind it
	Mishaps []string `json:"mishaps,omitempty"` // those chosen
	Drawn   string   `json:"drawn,omitempty"`   // base64
}

// Opened opens what was sealed.
type Opened struct{}

func (Incident) Kind() Kind      { return KindIncident }
func (WallSeen) Kind() Kind      { return KindWall }
func (Weather) Kind() Kind       { return KindWeather }
func (AgainFromHere) Kind() Kind { return KindAgainFromHere }
func (Sealed) Kind() Kind        { return KindSealed }
func (Opened) Kind() Kind        { return KindOpened }

// Recipe is the rest of the day as it was taken, as what the next charges are.
func (a AgainFromHere) Recipe() Recipe {
	var r Recipe
	for _, st := range a.Steps {
		if st.Charges > 0 {
			r.Ramp = append(r.Ramp, st)
		}
	}
	if len(r.Ramp) > 0 {
		r.Next = r.Ramp[0].Parts
	}
	return r
}
