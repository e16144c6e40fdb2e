package rehearse

import (
	"encoding/json"
	"fmt"

	"chargehand/model/truth"
	"chargehand/model/truth/zones"
)

// Answerer is one of the made-up furnaces that can answer in a rehearsal, by its name on the command line.
type Answerer string

// The furnaces: two columns of slices with lengths and times; and stirred zones, written by another hand.
const (
	Columns Answerer = "columns"
	Zones   Answerer = "zones"
)

// answerer is what there is to know of one of them.
type answerer struct {
	name    Answerer
	version string // in seals and scores
	build   func(number int64, noise float64, mishaps []truth.Mishap) furnace
	draw    func(number int64) any
	open    func(sealed json.RawMessage) (any, error)
}

var answerers = []answerer{
	{Columns, truth.Version, func(number int64, noise float64, mishaps []truth.Mishap) furnace {
		f := truth.New(number, noise, mishaps...)
		return furnace{f.Setting(), f}
	}, func(number int64) any { return truth.Draw(number, 1) }, drawnIn[truth.Drawn]},
	{Zones, zones.Version, func(number int64, noise float64, mishaps []truth.Mishap) furnace {
		f := zones.New(number, noise, mishaps...)
		return furnace{f.Setting(), f}
	}, func(number int64) any { return zones.Draw(number, 1) }, drawnIn[zones.Drawn]},
}

// drawnIn reads what was drawn out of a seal.
func drawnIn[D any](sealed json.RawMessage) (any, error) {
	var d D
	err := json.Unmarshal(sealed, &d)
	return d, err
}

// Answerers are all of them, the usual one first.
func Answerers() (all []Answerer) {
	for _, a := range answerers {
		all = append(all, a.name)
	}
	return all
}

// Version names the furnace in seals and scores; empty for one that is none.
func (a Answerer) Version() string {
	if known, err := a.known(); err == nil {
		return known.version
	}
	return ""
}

// known is what there is to know of one; of the usual one where none is named.
func (a Answerer) known() (answerer, error) {
	for _, k := range answerers {
		if k.name == a || a == "" && k.name == Columns {
			return k, nil
		}
	}
	return answerer{}, fmt.Errorf("no furnace of the program's own is named %q", string(a))
}

// sealedBy finds the one that a seal names.
func sealedBy(version string) (answerer, error) {
	for _, k := range answerers {
		if k.version == version {
			return k, nil
		}
	}
	return answerer{}, fmt.Errorf("its furnace is that of another version of the program: %s", version)
}
