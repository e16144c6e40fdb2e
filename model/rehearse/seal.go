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
}

// Seal is the entry that stands directly after light: what was drawn, closed until the end. Mishaps that somebody chose are
// named in it; those that came by chance are not. Nothing but this package opens it (tested), and no reading depends on it
// (tested).
func Seal(number int64, mishaps []truth.Mishap, chosen bool) (entry.Sealed, error) {
	text, err := json.Marshal(sealed{truth.Draw(number, 1), mishaps})
	if err != nil {
		return entry.Sealed{}, err
	}
	s := entry.Sealed{Number: number, Truth: truth.Version, Drawn: base64.StdEncoding.EncodeToString(text)}
	for _, m := range mishaps {
		if chosen {
			s.Mishaps = append(s.Mishaps, string(m))
		}
	}
	return s, nil
}

// Unseal opens a seal: what was drawn, and what was to go wrong.
func Unseal(s entry.Sealed) (truth.Drawn, []truth.Mishap, error) {
	var d sealed
	text, err := base64.StdEncoding.DecodeString(s.Drawn)
	if err == nil {
		err = json.Unmarshal(text, &d)
	}
	if err != nil {
		return d.Furnace, nil, fmt.Errorf("the seal of furnace number %d cannot be read: %w", s.Number, err)
	}
	return d.Furnace, d.Mishaps, nil
}
