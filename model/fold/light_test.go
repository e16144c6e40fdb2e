package fold

import (
	"testing"
	"time"

	gocmp "github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
)

// What was wrong when the fire was lit is put right afterwards, and all follows; what
// the smelt is stays as it was lit.
func TestTheLightIsAmended(t *testing.T) {
	d := lit(entry.Furnace{Name: "guess"}, bucket(1.9))
	first := d.entries[0].Event.(entry.Light)
	first.Practice, first.Source, first.SourceHash, first.Solver = true, []string{"said so"}, "h", "s1"
	d.entries[0].Event = first
	d.key(5, charge(coal(2)))
	kg := func() float64 { return d.state(10).Charcoal.Charged.Kg }
	was := kg()
	d.key(6, entry.Amend{Target: ref(1), Event: entry.Light{
		UID: "other", Furnace: entry.Furnace{Name: "kiln field", Bore: entry.Some(entry.Centimetre(30))}, Measures: []entry.Measure{bucket(2.5)},
		Imported: true, Invented: true, Rehearsal: true, Solver: "s2", Trying: "a taller shaft",
	}})
	if got := kg(); !near(was, 3.8) || !near(got, 5) {
		t.Errorf("2 buckets were %v kg and are %v kg", was, got)
	}
	want := first
	want.Furnace = entry.Furnace{Name: "kiln field", Bore: entry.Some(entry.Centimetre(30))}
	want.Measures, want.Trying = []entry.Measure{bucket(2.5)}, "a taller shaft"
	if diff := gocmp.Diff(want, d.state(10).Light); diff != "" {
		t.Error(diff)
	}
	d.key(7, entry.Amend{Target: ref(1), Event: entry.Note{Text: "no light"}})
	if s := d.state(10); s.Light.Furnace.Name != "guess" || s.Phase == "" {
		t.Errorf("a light that was amended to a note: %+v", s.Light)
	}
	d.key(8, entry.Strike{Target: ref(4)})
	if s := d.state(10); s.Light.Furnace.Name != "kiln field" {
		t.Errorf("with the last amendment struck: %+v", s.Light)
	}
}

// Lit earlier than was keyed: the acts stay where they were on the clock of the wall.
func TestTheTimeOfTheLightIsAmended(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(1.9))
	c := d.key(5, charge(coal(2)))
	d.key(6, entry.Amend{Target: ref(1), Happened: noon.Add(-20 * time.Minute), Uncertain: time.Minute})
	late := d.late(30, -10, entry.Fill{Parts: entry.Parts{coal(6)}})
	k := JournalOf(d.entries).AsKnown(All)
	for seq, want := range map[uint64]time.Duration{1: 0, c: 25 * time.Minute, late: 10 * time.Minute} {
		if l, _ := k.Line(seq); l.At != want {
			t.Errorf("entry %d at %v, want %v", seq, l.At, want)
		}
	}
	if s := d.state(60); !s.Lit.Equal(noon.Add(-20*time.Minute)) || len(s.Charges) != 1 {
		t.Errorf("lit at %v, %d charges", s.Lit, len(s.Charges))
	}
}

// A log without a day gets one when its light is amended: its rows come along by whole
// days, the light alone moves by what is left; what is keyed afterwards goes by the
// days as they are shown then, and taking the day away again puts all back.
func TestALogGetsItsDay(t *testing.T) {
	var es []entry.Entry
	add := func(happened time.Time, boot string, ev entry.Event) uint64 {
		e := entry.Entry{Seq: uint64(len(es) + 1), Happened: happened, Boot: boot, Event: ev}
		if boot != "" {
			e.Kept = noon.AddDate(0, 1, 0).Add(time.Duration(len(es)) * time.Minute)
			e.Mono = time.Hour + time.Duration(len(es))*time.Minute
		}
		es = append(es, e)
		return e.Seq
	}
	undated := time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC)
	add(undated.Add(9*time.Hour), "", entry.Light{Imported: true, Undated: true})
	row := add(undated.Add(10*time.Hour), "", charge(coal(1)))
	before := add(undated.Add(11*time.Hour), "b", entry.Poke{})
	at := func(seq uint64) time.Duration {
		l, _ := JournalOf(es).AsKnown(All).Line(seq)
		return l.At
	}
	wall := func(seq uint64) string {
		return Fold(es, All, 0).Lit.Add(at(seq)).Format("2006-01-02 15:04")
	}
	if got := wall(before); got != "1970-01-01 11:00" {
		t.Fatalf("a late entry of a log without a day stands at %s", got)
	}
	dated := add(time.Time{}, "b", entry.Amend{Target: ref(1), Event: entry.Light{}, Happened: noon.Add(-3*time.Hour - 30*time.Minute)})
	es[dated-1].Happened = es[dated-1].Kept
	after := add(noon.Add(-30*time.Minute), "b", entry.Poke{})
	moved := add(time.Time{}, "b", entry.Amend{Target: ref(before), Happened: noon.Add(-15 * time.Minute)})
	es[moved-1].Happened = es[moved-1].Kept
	for seq, want := range map[uint64]string{1: "2026-05-09 08:30", row: "2026-05-09 10:00", after: "2026-05-09 11:30", before: "2026-05-09 11:45"} {
		if got := wall(seq); got != want {
			t.Errorf("entry %d at %s, want %s", seq, got, want)
		}
	}
	if l := Fold(es, All, 0).Light; l.Undated || !l.Imported {
		t.Errorf("with a day: %+v", l)
	}
	undo := add(time.Time{}, "b", entry.Strike{Target: ref(dated)})
	es[undo-1].Happened = es[undo-1].Kept
	last := add(undated.Add(12*time.Hour), "b", entry.Poke{})
	for seq, want := range map[uint64]string{1: "1970-01-01 09:00", row: "1970-01-01 10:00", last: "1970-01-01 12:00", after: "1970-01-01 11:30"} {
		if got := wall(seq); got != want {
			t.Errorf("without the day again: entry %d at %s, want %s", seq, got, want)
		}
	}
}
