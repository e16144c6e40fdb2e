package house

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Journal is the stream of the house as a program holds it that keys into it: what is
// kept and what waits to be, in order. It is a value. Of what is kept it holds only what
// says something of the house; keys and drafts, which are most of the stream, it counts.
type Journal struct {
	kept    []entry.Entry
	waiting []entry.Entry // all of it, since each takes a number
	last    uint64        // of the last kept
	shown   []entry.Entry // the cautions among those kept
}

// JournalOf is the stream as it is kept.
func JournalOf(kept []entry.Entry) Journal {
	var j Journal
	for _, e := range kept {
		j = j.taken(e)
	}
	return j
}

// taken takes a kept entry in.
func (j Journal) taken(e entry.Entry) Journal {
	j.last = max(j.last, e.Seq)
	if e.Kind() == entry.KindCaution {
		j.shown = append(j.shown[:len(j.shown):len(j.shown)], e)
	}
	if len(j.kept) > 0 && !tells(e) { // the first ties the house's clock to the wall
		return j
	}
	j.kept = append(j.kept[:len(j.kept):len(j.kept)], e)
	return j
}

// tells tells whether an entry says something of the house, of its clock, or of who was
// shown what.
func tells(e entry.Entry) bool {
	switch e.Kind() {
	case "", entry.KindKeys, entry.KindDraft, entry.KindTestimony:
		return false
	}
	return true
}

// Last is the number of the last kept entry, 0 for none.
func (j Journal) Last() uint64 { return j.last }

// Add adds an entry that was handed over and is not kept yet, with the number that it is
// going to have.
func (j Journal) Add(e entry.Entry) (Journal, entry.Entry) {
	e.Seq = j.last + uint64(len(j.waiting)) + 1
	j.waiting = append(j.waiting[:len(j.waiting):len(j.waiting)], e)
	return j, e
}

// Keep puts a kept entry in the place of the one that waited for it. One that was read
// with the others already changes nothing.
func (j Journal) Keep(e entry.Entry) Journal {
	if e.Seq > j.last {
		j = j.taken(e)
	}
	return j.Drop(e.Local)
}

// Drop takes out an entry that waited. Those behind it get the numbers that they are
// going to have, and what speaks of one of them points at its number.
func (j Journal) Drop(local string) Journal {
	waiting := make([]entry.Entry, 0, len(j.waiting))
	numbers := map[string]uint64{}
	for _, e := range j.waiting {
		if e.Local == local {
			continue
		}
		e.Seq = j.last + uint64(len(waiting)) + 1
		numbers[e.Local] = e.Seq
		for i := len(j.kept) - 1; i >= 0 && i >= len(j.kept)-recent; i-- {
			numbers[j.kept[i].Local] = j.kept[i].Seq
		}
		waiting = append(waiting, e.Aim(func(local string) (uint64, bool) { seq, ok := numbers[local]; return seq, ok }))
	}
	j.waiting = waiting
	return j
}

// recent is among how many of the last kept entries one is looked for that a waiting one
// still names by its local id.
const recent = 64

// Onto is what waits here, put behind what was read meanwhile.
func (j Journal) Onto(read Journal) Journal {
	for _, e := range j.kept {
		if e.Seq > read.last {
			read = read.taken(e)
		}
	}
	for _, e := range j.shown {
		if e.Seq > read.last {
			read = read.taken(e)
		}
	}
	for _, e := range j.waiting {
		read, _ = read.Add(e)
	}
	return read
}

// Cautioned tells whether a person, by these initials, was shown a caution in the house.
func (j Journal) Cautioned(id, by string) bool {
	for _, es := range [][]entry.Entry{j.shown, j.waiting} {
		for _, e := range es {
			if c, ok := e.Event.(entry.CautionShown); ok && c.Caution == id && e.By == by {
				return true
			}
		}
	}
	return false
}

// Lately are the last few entries, as they were keyed, the newest first.
func (j Journal) Lately() (es []entry.Entry) {
	for _, of := range [][]entry.Entry{j.waiting, j.kept} {
		for i := len(of) - 1; i >= 0 && len(es) < recent; i-- {
			es = append(es, of[i])
		}
	}
	return es
}

// Ref names an entry of the house, by its local id too until it is kept.
func (j Journal) Ref(seq uint64) entry.Ref {
	for _, e := range j.waiting {
		if e.Seq == seq {
			return entry.Ref{Seq: seq, Local: e.Local}
		}
	}
	return entry.Ref{Seq: seq}
}

// entries are those that say something of the house, in order.
func (j Journal) entries() []entry.Entry {
	es := slices.Clone(j.kept)
	for _, e := range j.waiting {
		if len(es) == 0 || tells(e) {
			es = append(es, e)
		}
	}
	return es
}

// Lines are the entries with what became of them, in the order of their numbers.
func (j Journal) Lines() []Line {
	return placed(j.entries())
}

// Line is an entry of the house with what became of it.
type Line struct {
	fold.Line
	Happened time.Time // by the wall clock, stepped clocks put right
}

// Fold gives the house as all that was keyed makes it, and what smelts used.
func (j Journal) Fold(uses []Use) State { return Fold(j.entries(), uses, ever) }

// ever is after all that is keyed.
var ever = time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)
