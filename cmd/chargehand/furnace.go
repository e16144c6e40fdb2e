package main

import (
	"encoding/json"
	"fmt"
	"time"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/model/words"
)

func furnaceCommand() command {
	return command{name: "furnace", does: words.FurnaceDoes, setUp: wing{where: entry.OnFurnace, examples: furnaceExamples}.setUp(func(w world, c common) error {
		h, err := theHouse(w, c)
		if err != nil {
			return err
		}
		if c.json {
			return json.NewEncoder(w.out).Encode(map[string]any{"furnaces": furnacesOf(h)})
		}
		_, err = fmt.Fprint(w.out, words.Furnaces(h.Furnaces))
		return err
	})}
}

// furnaceExamples are invented.
func furnaceExamples() []entry.Event {
	f := entry.Furnace{
		Name: "Reed Hollow", Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50)), Rim: entry.Some(entry.Centimetre(60)),
		TuyereBase: entry.Some(entry.Centimetre(15)), TuyereBore: entry.Some(entry.Millimetre(20)), TuyereAngle: entry.Some(entry.Degree(20)), Wall: entry.Some(entry.Centimetre(5)),
	}
	worn := f
	worn.Bores = []entry.BoreAt{{At: 0, Bore: 26.5}, {At: 50, Bore: 25}}
	return []entry.Event{
		entry.FurnaceBuilt{Furnace: f, Why: entry.Built},
		entry.Drying{Furnace: f.ID(), Day: entry.Some(entry.Count(2)), Fires: entry.Some(entry.Count(0)), Weather: "dry wind"},
		entry.FurnaceBuilt{Furnace: worn, Why: entry.Worn},
	}
}

type furnaceJSON struct {
	UID      string        `json:"uid"`
	Name     string        `json:"name"`
	Versions []versionJSON `json:"versions"`
	Litres   *number       `json:"volume_l"`    // from the tuyere to the mark, of the version in force; null without its sizes
	Blast    []number      `json:"blast_l_min"` // advised for the bore
}

type versionJSON struct {
	Since   string        `json:"since"`
	Why     string        `json:"why"`
	Furnace entry.Furnace `json:"furnace"`
}

func furnacesOf(h household) []furnaceJSON {
	all := []furnaceJSON{}
	for _, f := range h.Furnaces {
		last := f.Last().Furnace
		j := furnaceJSON{UID: string(f.ID), Name: last.Name}
		for _, v := range f.Versions {
			j.Versions = append(j.Versions, versionJSON{v.From.Format(time.RFC3339), string(v.Why), v.Furnace})
		}
		if s := plan.ShaftOf(last); plan.Sized(last) {
			j.Litres = some(s.Litres)
			j.Blast = []number{number(s.Advised.P10), number(s.Advised.P90)}
		}
		all = append(all, j)
	}
	return all
}
