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
	Furnace json.RawMessage `json:"furnace"`
	Mishaps []truth.Mishap  `json:"mishaps,omitempty"`
	Crew    float64         `json:"crew,omitempty"` // s since light until which the scripted crew works, where a person goes on
}

// Seal is the entry that stands directly after light: what was drawn, closed until the end. Mishaps that somebody chose are
// named in it; those that came by chance are not. Nothing but this package opens it (tested), and no reading depends on it
// (tested).
func Seal(number int64, mishaps []truth.Mishap, chosen bool) (entry.Sealed, error) {
	return seal(answerers[0], number, mishaps, 0, chosen)
}

// seal names the furnace's version: it is opened by the furnace that it is of.
func seal(by answerer, number int64, mishaps []truth.Mishap, crew float64, chosen bool) (entry.Sealed, error) {
	drawn, err := json.Marshal(by.draw(number))
	if err != nil {
		return entry.Sealed{}, err
	}
	text, err := json.Marshal(sealed{drawn, mishaps, crew})
	if err != nil {
		return entry.Sealed{}, err
	}
	s := entry.Sealed{Number: number, Truth: by.version, Drawn: base64.StdEncoding.EncodeToString(text)}
	for _, m := range mishaps {
		if chosen {
			s.Mishaps = append(s.Mishaps, string(m))
		}
	}
	return s, nil
}

// Unseal opens a seal: what was drawn (a Drawn of the package of its furnace), and what was to go wrong. An error where the seal
// is of a furnace that this program does not have.
func Unseal(s entry.Sealed) (drawn any, mishaps []truth.Mishap, err error) {
	by, err := sealedBy(s.Truth)
	if err != nil {
		return nil, nil, err
	}
	d, err := unseal(s)
	if err != nil {
		return nil, nil, err
	}
	if drawn, err = by.open(d.Furnace); err != nil {
		return nil, nil, unreadable(s, err)
	}
	return drawn, d.Mishaps, nil
}

func unseal(s entry.Sealed) (d sealed, err error) {
	text, err := base64.StdEncoding.DecodeString(s.Drawn)
	if err == nil {
		err = json.Unmarshal(text, &d)
	}
	if err != nil {
		return d, unreadable(s, err)
	}
	return d, nil
}

func unreadable(s entry.Sealed, err error) error {
	return fmt.Errorf("the seal of furnace number %d cannot be read: %w", s.Number, err)
}
