package datapack

import (
	"bytes"
	"encoding/json"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/session"
)

// Leaning are the lines of the house that a smelt leans on: those that speak of its
// lots, of the lots that these were made of and the measures they were counted in, of its
// furnace, its plan or itself, of the samples taken of it, of the pieces that came of it
// (its bloom goes by the name of its stream where nobody gave it another), and those that
// cross out or change such a line.
func Leaning(s session.Session, lines [][]byte) [][]byte {
	light := s.Light()
	wanted := map[string]bool{}
	want := func(uid string) {
		if uid != "" {
			wanted[uid] = true
		}
	}
	want(light.UID)
	want(string(entry.NameUID(s.ID())))
	want(string(light.Furnace.UID))
	want(string(light.Learnt))
	if light.Plan != nil {
		want(string(light.Plan.UID))
	}
	for _, l := range s.Lots() {
		want(string(l.UID))
	}
	measures := map[string]bool{} // of these only what names them: any deed may be counted in one
	for _, m := range light.Measures {
		measures[string(m.ID())] = true
	}
	samples := map[string]bool{}
	for l := range s.Of(entry.KindSample) {
		if label := entry.LabelOf(l.Event.(entry.Sample).Label); label != "" {
			samples[label] = true
		}
	}
	in, seqs := map[int]bool{}, map[uint64]bool{}
	for grew := true; grew; { // a piece is cut from a piece; a change speaks of a line before it
		grew = false
		for i, line := range lines {
			e, err := entry.Decode(line)
			if in[i] || err != nil || e.Event == nil {
				continue
			}
			about, ok := spokenOf(e.Event)
			leans := ok && seqs[about] || samples[answered(e.Event)]
			for _, uid := range uidsIn(line) {
				leans = leans || wanted[uid]
			}
			said := e.Event
			if a, is := said.(entry.Amend); is {
				said = a.Event
			}
			if m, is := said.(entry.MeasureNamed); is {
				leans = leans || measures[string(m.Measure.ID())] || measures[m.Measure.Name]
			}
			if !leans {
				continue
			}
			grew, in[i], seqs[e.Seq] = true, true, true
			switch ev := said.(type) {
			case entry.Piece:
				want(string(ev.UID))
			case entry.Deed: // a lot that lacks what came of it would have less left than none
				for _, a := range slices.Concat(ev.In, ev.Out, ev.Fuel) {
					want(string(a.Lot))
					measures[a.Measure] = true
				}
			}
		}
	}
	var all [][]byte
	for i, line := range lines {
		if in[i] {
			all = append(all, line)
		}
	}
	return all
}

// answered is the label of the sample that a lab's answer is about, "" for none.
func answered(ev entry.Event) string {
	switch ev := ev.(type) {
	case entry.SampleResult:
		return entry.LabelOf(ev.Sample)
	case entry.Assay:
		return entry.LabelOf(ev.Sample)
	}
	return ""
}

// spokenOf is the entry that a strike or an amendment speaks of.
func spokenOf(ev entry.Event) (seq uint64, ok bool) {
	switch ev := ev.(type) {
	case entry.Strike:
		return ev.Target.Seq, true
	case entry.Amend:
		return ev.Target.Seq, true
	}
	return 0, false
}

// uidsIn are all texts in what a line says happened: a uid stands in many places.
func uidsIn(line []byte) (texts []string) {
	var l struct {
		Event json.RawMessage `json:"event"`
	}
	if json.Unmarshal(line, &l) != nil {
		return nil
	}
	d := json.NewDecoder(bytes.NewReader(l.Event))
	for {
		t, err := d.Token()
		if err != nil {
			return texts
		}
		if s, is := t.(string); is {
			texts = append(texts, s)
		}
	}
}
