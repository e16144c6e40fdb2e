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
func Leaning(s session.Session, lines [][]byte) (all [][]byte) {
	k := knownIn(s)
	var house []told
	for _, line := range lines {
		if e, err := entry.Decode(line); err == nil && e.Event != nil {
			house = append(house, told{e, line, uidsIn(line)})
		}
	}
	for before := -1; before < len(k.seqs); { // a piece is cut from a piece; a change speaks of a line before it
		before = len(k.seqs)
		for _, one := range house {
			if !k.seqs[one.Seq] && k.of(one) {
				k.take(one)
			}
		}
	}
	for _, one := range house {
		if k.seqs[one.Seq] {
			all = append(all, one.line)
		}
	}
	return all
}

// told is an entry of the house with its line, and all texts in it, among which are the uids.
type told struct {
	entry.Entry
	line  []byte
	texts []string
}

// event is what it says, or what it makes of what another said.
func (t told) event() entry.Event {
	if a, is := t.Event.(entry.Amend); is {
		return a.Event
	}
	return t.Event
}

// known is what a smelt leans on, as far as it was followed.
type known struct {
	uids     map[string]bool
	measures map[string]bool // of these only what names them: any deed may be counted in one
	samples  map[string]bool // by their labels
	seqs     map[uint64]bool // of the lines that are taken
}

func (k known) want(uid string) {
	if uid != "" {
		k.uids[uid] = true
	}
}

// knownIn is what the smelt itself names.
func knownIn(s session.Session) known {
	k := known{map[string]bool{}, map[string]bool{}, map[string]bool{}, map[uint64]bool{}}
	light := s.Light()
	k.want(light.UID)
	k.want(string(entry.NameUID(s.ID())))
	k.want(string(light.Furnace.UID))
	k.want(string(light.Learnt))
	if light.Plan != nil {
		k.want(string(light.Plan.UID))
	}
	for _, l := range s.Lots() {
		k.want(string(l.UID))
	}
	for _, m := range light.Measures {
		k.measures[string(m.ID())] = true
	}
	for l := range s.Of(entry.KindSample) {
		if label := entry.LabelOf(l.Event.(entry.Sample).Label); label != "" {
			k.samples[label] = true
		}
	}
	return k
}

// of tells whether a line speaks of anything known.
func (k known) of(t told) bool {
	if m, is := t.event().(entry.MeasureNamed); is && (k.measures[string(m.Measure.ID())] || k.measures[m.Measure.Name]) {
		return true
	}
	about, changes := spokenOf(t.Event)
	return changes && k.seqs[about] || k.samples[answered(t.Event)] ||
		slices.ContainsFunc(t.texts, func(text string) bool { return k.uids[text] })
}

// take adds what a line leads on to.
func (k known) take(t told) {
	k.seqs[t.Seq] = true
	switch ev := t.event().(type) {
	case entry.Piece:
		k.want(string(ev.UID))
	case entry.Deed: // a lot that lacks what came of it would have less left than none
		for _, a := range slices.Concat(ev.In, ev.Out, ev.Fuel) {
			k.want(string(a.Lot))
			k.measures[a.Measure] = true
		}
	}
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
