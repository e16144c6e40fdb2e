package house

import (
	"cmp"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Fold gives the house at a moment, from the entries of its stream and what
// smelts used. What happens later than that is left out, but for the weights of
// measures: these hold for what was counted before, as on the day.
func Fold(entries []entry.Entry, uses []Use, at time.Time) State {
	f := folder{met: map[entry.UID]bool{}, called: map[entry.UID]entry.UID{}, places: map[entry.UID]int{}, blooms: map[string]entry.UID{}, State: State{
		Settings: map[string]string{}, Drafts: map[string]Drafted{}, Mappings: map[string]entry.Mapping{}, Samples: map[string]entry.Assay{},
	}}
	lines := happened(entries)
	for _, l := range lines {
		switch ev := l.ev.(type) {
		case entry.MeasureNamed:
			f.nameMeasure(ev.Measure)
		case entry.Piece:
			f.nameBloom(ev)
		}
	}
	for _, u := range uses {
		for _, t := range u.Takes {
			lines = append(lines, line{at: t.At, smelt: u.Smelt, taken: t})
		}
		for _, b := range u.Bloom {
			lines = append(lines, line{at: b.At, smelt: u.Smelt, ev: ofBloom{b, u.Smelt, u.UID}})
		}
	}
	sortByTime(lines)
	for _, l := range lines {
		if l.at.After(at) {
			break
		}
		f.apply(l)
	}
	f.lit(uses, at)
	f.Measures = slices.DeleteFunc(f.Measures, func(m entry.Measure) bool { return !f.met[m.ID()] })
	return f.State
}

// line is one thing that happened: an entry of the house in force, or what a
// smelt took.
type line struct {
	at    time.Time
	seq   uint64
	ev    entry.Event
	smelt string
	taken Taken
}

// happened are the entries in force with the wall time of each, in order.
// Stepped clocks are put right as in a smelt.
func happened(entries []entry.Entry) []line {
	var lines []line
	all := placed(entries)
	for _, l := range all {
		if l.Event != nil && !l.Struck() && l.Event.Kind() != entry.KindKeys { // keys are most of the stream
			lines = append(lines, line{at: l.Happened, seq: l.Seq(), ev: l.Event})
		}
	}
	sortByTime(lines)
	return lines
}

// placed are all entries with what became of them, each at its wall time.
func placed(entries []entry.Entry) (lines []Line) {
	if len(entries) == 0 {
		return nil
	}
	all := fold.Lines(entries, fold.All)
	first := all[0] // its acceptance ties the house's clock to the wall, whatever became of it
	wall := first.Entry.Happened
	if first.Entry.Boot != "" && !first.Entry.Kept.IsZero() {
		wall = first.Entry.Kept
	}
	for _, l := range all {
		at := wall.Add(l.At - first.Accepted)
		if n := len(lines) - 1; n >= 0 && l.Entry.Group != "" && l.Entry.Group == lines[n].Entry.Group && at.Sub(lines[n].Happened).Abs() < together {
			at = lines[n].Happened
		}
		lines = append(lines, Line{l, at})
	}
	return lines
}

// together is within what entries of one key are kept, one after the other: they happened
// at one moment, in their order.
const together = time.Second

func sortByTime(lines []line) {
	slices.SortStableFunc(lines, func(a, b line) int { return cmp.Compare(a.at.UnixMilli(), b.at.UnixMilli()) })
}

// folder is a state on the way.
type folder struct {
	State
	met    map[entry.UID]bool      // measures said by now
	called map[entry.UID]entry.UID // the measure that a name stands for, the last so called
	places map[entry.UID]int       // of the lots, by their own uid
	blooms map[string]entry.UID    // the piece that is the bloom of a smelt, by the smelt's uid
}

func (f *folder) nameMeasure(m entry.Measure) {
	f.called[entry.NameUID(m.Name)] = m.ID()
	if i := slices.IndexFunc(f.Measures, func(o entry.Measure) bool { return o.ID() == m.ID() }); i >= 0 {
		f.Measures[i] = m
		return
	}
	f.Measures = append(f.Measures, m)
}

// measure finds a measure by its uid, then by any name that it ever had.
func (f *folder) measure(ref string) (entry.Measure, bool) {
	if ref == "" {
		return entry.Measure{}, false
	}
	id, ok := f.called[idOf(ref)]
	if !ok {
		id = idOf(ref)
	}
	i := slices.IndexFunc(f.Measures, func(m entry.Measure) bool { return m.ID() == id })
	if i < 0 {
		return entry.Measure{}, false
	}
	return f.Measures[i], true
}

// at gives the place of a lot, which is made where it was only met in a deed.
func (f *folder) at(id entry.UID) *Lot {
	i := f.placeOf(id)
	if i < 0 {
		name, _ := id.Name()
		i, f.Lots = len(f.Lots), append(f.Lots, Lot{ID: id, Lot: entry.Lot{Name: name}})
		f.places[id] = i
	}
	return &f.Lots[i]
}

// placeOf is the place of a lot, -1 for none.
func (f *folder) placeOf(id entry.UID) int {
	if i, ok := f.places[id]; ok {
		return i
	}
	if _, byName := id.Name(); !byName {
		return -1
	}
	return f.lot(id)
}

// known gives the place of a thing in a list, which grows where it is new.
func known[T any](list []T, is func(T) bool) ([]T, *T) {
	i := slices.IndexFunc(list, is)
	if i < 0 {
		i, list = len(list), append(list, *new(T))
	}
	return list, &list[i]
}

// InForce are the entries of the house that hold, each with the event and the time in
// force: those crossed out are left out, and so are strikes, changes and keys.
func InForce(entries []entry.Entry) []entry.Entry {
	var all []entry.Entry
	for _, l := range placed(entries) {
		if l.Event == nil || l.Struck() {
			continue
		}
		switch l.Event.Kind() {
		case entry.KindKeys, entry.KindStrike, entry.KindAmend:
			continue
		}
		e := l.Entry
		e.Event, e.Happened = l.Event, l.Happened
		all = append(all, e)
	}
	return all
}
