package rehearse

import (
	"encoding/base64"
	"encoding/json"
	"fmt"

	"chargehand/model/entry"
	"chargehand/model/truth"
)

// sealed is what stands in a seal: the furnace, and all that is to go wrong, chosen or not.
type sealed struct {
	Furnace truth.Drawn    `json:"furnace"`
	Mishaps []truth.Mishap `json:"mishaps,omitempty"`
	Crew    float64        `json:"crew,omitempty"` // s since light until which the scripted crew works, where a person goes on
}

// Seal is the entry that stands directly after light: what was drawn, closed until the end. Mishaps that somebody chose are
// named in it; those that came by chance are not. Nothing but this package opens it (tested), and no reading depends on it
// (tested).
func Seal(number int64, mishaps []truth.Mishap, chosen bool) (entry.Sealed, error) {
	return seal(number, sealed{Furnace: truth.Draw(number, 1), Mishaps: mishaps}, chosen)
}

func seal(number int64, what sealed, chosen bool) (entry.Sealed, error) {
	text, err := json.Marshal(what)
	if err != nil {
		return entry.Sealed{}, err
	}
	s := entry.Sealed{Number: number, Truth: truth.Version, Drawn: base64.StdEncoding.EncodeToString(text)}
	for _, m := range what.Mishaps {
		if chosen {
			s.Mishaps = append(s.Mishaps, string(m))
		}
	}
	return s, nil
}

// Unseal opens a seal: what was drawn, and what was to go wrong.
func Unseal(s entry.Sealed) (truth.Drawn, []truth.Mishap, error) {
	d, err := unseal(s)
	return d.Furnace, d.Mishaps, err
}

func unseal(s entry.Sealed) (d sealed, err error) {
	text, err := base64.StdEncoding.DecodeString(s.Drawn)
	if err == nil {
		err = json.Unmarshal(text, &d)
	}
	if err != nil {
		return d, fmt.Errorf("the seal of furnace number %d cannot be read: %w", s.Number, err)
	}
	return d, nil
}
