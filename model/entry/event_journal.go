package entry

import (
	"encoding/json"
	"fmt"
	"time"
)

// Strike crosses an earlier entry out. Striking a strike or an amendment
// undoes it.
type Strike struct {
	Target Ref    `json:"target"`
	Moved  string `json:"moved_to,omitempty"` // the smelt that it was moved to; empty where it was crossed out
}

// Amend replaces the whole event of an earlier entry, and its time. An event
// left out keeps the target's own; a time left out keeps its time.
type Amend struct {
	Target    Ref
	Event     Event
	Happened  time.Time // zero keeps the target's
	Uncertain time.Duration
}

// amendWire is Amend on the wire.
type amendWire struct {
	Target     Ref             `json:"target"`
	Happened   string          `json:"happened,omitempty"`
	UncertainS float64         `json:"uncertain_s,omitempty"`
	Kind       Kind            `json:"kind,omitempty"`
	Event      json.RawMessage `json:"event,omitempty"`
}

// MarshalJSON writes the amended event with its kind.
func (a Amend) MarshalJSON() ([]byte, error) {
	w := amendWire{Target: a.Target, UncertainS: a.Uncertain.Seconds()}
	if !a.Happened.IsZero() {
		w.Happened = formatTime(a.Happened)
	}
	var err error
	if w.Event, err = encodeEvent(a.Event); err != nil {
		return nil, err
	}
	if a.Event != nil {
		w.Kind = a.Event.Kind()
	}
	return marshal(w)
}

// UnmarshalJSON reads the amended event by its kind.
func (a *Amend) UnmarshalJSON(b []byte) error {
	var w amendWire
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	*a = Amend{Target: w.Target, Uncertain: seconds(w.UncertainS)}
	var err error
	if w.Happened != "" {
		if a.Happened, err = parseTime(w.Happened); err != nil {
			return fmt.Errorf("happened: %w", err)
		}
	}
	a.Event, err = decodeEvent(w.Kind, w.Event)
	return err
}

// Keys is a batch of keys that did not act on the smelt by themselves: keys of
// moving about, of typing in a field, and those a guard held back.
type Keys struct {
	Pressed []Press `json:"pressed"`
}

// Press is one key and when it was pressed, in milliseconds after the batch's
// own time.
type Press struct {
	Key     string `json:"key"`
	AfterMs int64  `json:"after_ms,omitempty"`
	Held    bool   `json:"held_back,omitempty"` // taken for a leaning glove: written down, not acted on
}

// Acknowledge says that a person has seen a warning. It names the rule and the
// onset, so that the same rule raised again is a new warning.
type Acknowledge struct {
	Rule    string `json:"rule"`
	OnsetMs int64  `json:"onset_ms"` // on the smelt's clock
}

// CautionShown says that a caution stood on the screen.
type CautionShown struct {
	Caution string `json:"caution"`
}

// Setting is a choice of the user's, of the house or of one smelt.
type Setting struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// ClockJump says that the wall clock was stepped while the boot clock ran on.
// Shift moves every entry of that start of the machine on the smelt's clock: a
// board without a battery clock starts with a wrong time, and what it kept
// before its clock was set stands as wrong as that. It is nought where the
// boot clock already tells (the start in which the smelt was lit).
//
// Right is the true wall time at which the entry happened, when a person said it
// because the clock stood wrong. In the start in which the fire was lit every wall
// time of the smelt, that of light too, follows from it; in a later one Shift goes
// with it.
type ClockJump struct {
	ByMs    int64     `json:"by_ms"`
	ShiftMs int64     `json:"shift_ms,omitempty"`
	Boot    string    `json:"boot,omitempty"` // which start; empty is the entry's own
	Right   time.Time `json:"right,omitzero"`
}

// Testimony is what the program showed: a warning raised or cleared, by which
// version. The fold does not read it; warnings are derived.
type Testimony struct {
	Rule    string `json:"rule"`
	State   string `json:"state"` // raised, cleared
	Program string `json:"program,omitempty"`
	Solver  string `json:"solver,omitempty"`
	Text    string `json:"text,omitempty"`
}

func (Strike) Kind() Kind       { return KindStrike }
func (Amend) Kind() Kind        { return KindAmend }
func (Keys) Kind() Kind         { return KindKeys }
func (Acknowledge) Kind() Kind  { return KindAcknowledge }
func (CautionShown) Kind() Kind { return KindCaution }
func (Setting) Kind() Kind      { return KindSetting }
func (ClockJump) Kind() Kind    { return KindClockJump }
func (Testimony) Kind() Kind    { return KindTestimony }

func (s Strike) target() Ref       { return s.Target }
func (s Strike) aimed(r Ref) Event { s.Target = r; return s }
func (a Amend) target() Ref        { return a.Target }
func (a Amend) aimed(r Ref) Event  { a.Target = r; return a }
