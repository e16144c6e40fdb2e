package rehearse

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/truth"
)

// hand is somebody who charges by the plan when there is room, looks round, and pulls the bloom in its time.
type hand struct {
	t       *testing.T
	l       *Live
	entries []entry.Entry
	ore     bool // the last ore is in
	pulled  bool
}

func (h *hand) stamp(seconds float64, screen string, ev entry.Event) entry.Entry {
	m := Moment(seconds)
	e := entry.Entry{
		Version: entry.Version, Stream: h.entries[0].Stream, Seq: uint64(len(h.entries) + 1), Happened: m.Wall, Kept: m.Wall,
		Boot: m.Boot, Mono: m.Mono, Screen: screen, Event: ev,
	}
	h.entries = append(h.entries, e)
	return e
}

func (h *hand) key(ev entry.Event) { h.l.Take(h.stamp(h.l.Seconds()+1, "fire", ev)) }

func (h *hand) see(ask entry.Event) {
	if ev, why := h.l.See(ask); why == "" {
		h.stamp(h.l.Seconds()+1, Answers, ev)
	}
}

// next is the charge that the plan has.
func (h *hand) next() entry.Parts {
	var r entry.Recipe
	done := 0
	for _, e := range h.entries {
		switch ev := e.Event.(type) {
		case entry.Recipe:
			r, done = ev, 0
		case entry.Charge:
			done++
		}
	}
	return fold.Planned(r, done)
}

// second keys what the furnace asks for and lets a second pass.
func (h *hand) second() {
	now := h.l.Seconds()
	switch {
	case h.pulled:
	case h.l.burning > 0 && now >= h.l.burning+burnsDown:
		h.see(entry.Extract{From: "top"})
		h.pulled = true
	case h.l.burning > 0:
	case h.l.Asks() == OreIsIn && !h.ore:
		h.ore = true
		h.key(entry.LastOre{})
	case h.l.Room():
		h.key(entry.Charge{Parts: h.next()})
		if h.ore {
			h.key(entry.BurnDown{})
		}
	case int(now)%600 == 0:
		h.see(entry.Look{At: entry.AtPeep})
		if l, ok := h.entries[len(h.entries)-1].Event.(entry.Look); ok && (l.Sees == entry.PeepDim || l.Sees == entry.PeepDark) {
			h.key(entry.Rod{})
			h.key(entry.Poke{})
		}
		h.see(entry.Look{At: entry.AtTopGas})
		h.see(entry.Dip{})
		h.see(entry.Tap{})
	}
	h.passes()
}

// passes lets the second pass.
func (h *hand) passes() {
	for _, s := range h.l.Step() {
		switch {
		case s.Event != nil:
			h.stamp(h.l.Seconds(), Answers, s.Event)
		case !s.Notice.Shown():
			h.stamp(h.l.Seconds(), Answers, entry.Note{Text: string(s.Notice)})
		}
	}
}

func lives(t *testing.T, number int64, ms []truth.Mishap) *hand {
	t.Helper()
	begun, err := Begin(Beginning{Number: number, Mishaps: ms, Chosen: true, Stream: Stream(number), UnderWay: true})
	if err != nil {
		t.Fatal(err)
	}
	l, err := Resume(begun)
	if err != nil {
		t.Fatal(err)
	}
	h := &hand{t: t, l: l, entries: begun}
	for !l.Over() {
		h.second()
		if l.Seconds() > longest+7200 {
			t.Fatalf("furnace %d %v: no end after %v s: %+v", number, ms, l.Seconds(), l.f.Look())
		}
	}
	return h
}

// A rehearsal is sealed directly after light, taken over in its main burn, and opened after its bloom; what it adds of
// itself can be kept.
func TestALivedRehearsalIsOpenedAfterItsBloom(t *testing.T) {
	for _, m := range append([]truth.Mishap{""}, truth.Mishaps()...) {
		h := lives(t, 11, []truth.Mishap{m})
		if h.entries[0].Kind() != entry.KindLight || h.entries[1].Kind() != entry.KindSealed || h.entries[len(h.entries)-1].Kind() != entry.KindOpened {
			t.Errorf("%s: not sealed after light and opened last", m)
		}
		opened, charges := 0, 0
		for i, e := range h.entries {
			if err := entry.Check(e.Event); err != nil {
				t.Errorf("%s: %v", m, err)
			}
			if i > 0 && e.Mono < h.entries[i-1].Mono {
				t.Errorf("%s: entry %d comes before the one above it", m, e.Seq)
			}
			switch e.Kind() {
			case entry.KindOpened:
				opened++
			case entry.KindCharge:
				charges++
			}
		}
		if opened != 1 || charges < 10 {
			t.Errorf("%s: opened %d times, %d charges", m, opened, charges)
		}
	}
}

// Wherever a rehearsal stops, its entries lead back to the same furnace: gone on with by the same hand it is the same to the
// last entry.
func TestAStoppedRehearsalGoesOnTheSame(t *testing.T) {
	whole := lives(t, 5, []truth.Mishap{truth.TuyereBlocked, truth.ForgottenKey})
	begun := slices.IndexFunc(whole.entries, func(e entry.Entry) bool { r, ok := e.Event.(entry.Recipe); return ok && len(r.Ramp) > 0 })
	for _, cut := range []int{begun + 1, len(whole.entries) / 3, len(whole.entries) / 2, len(whole.entries) - 4, len(whole.entries) - 1} {
		for cut < len(whole.entries) && whole.entries[cut].Mono == whole.entries[cut-1].Mono {
			cut++ // this hand keys all of a second at once
		}
		entries := append([]entry.Entry(nil), whole.entries[:cut]...)
		l, err := Resume(entries)
		if err != nil {
			t.Fatal(err)
		}
		h := &hand{t: t, l: l, entries: entries}
		for _, e := range entries {
			h.ore = h.ore || e.Kind() == entry.KindLastOre
			h.pulled = h.pulled || e.Kind() == entry.KindExtract
		}
		h.passes() // of the second of the last entry all is keyed
		for !l.Over() {
			h.second()
			if l.Seconds() > longest+7200 {
				t.Fatal("no end")
			}
		}
		if got, want := fmt.Sprint(len(h.entries)), fmt.Sprint(len(whole.entries)); got != want {
			t.Errorf("cut after %d: %s entries, whole %s", cut, got, want)
			for i := range min(len(h.entries), len(whole.entries)) {
				if !reflect.DeepEqual(h.entries[i], whole.entries[i]) {
					t.Errorf("first other: %v %#v, whole %v %#v", h.entries[i].Mono, h.entries[i].Event, whole.entries[i].Mono, whole.entries[i].Event)
					break
				}
			}
			continue
		}
		if !reflect.DeepEqual(h.entries, whole.entries) {
			t.Errorf("cut after %d: not the same", cut)
		}
	}
}

// What was sealed cannot be read out of the book by a furnace of another version.
func TestAnotherVersionsFurnaceIsRefused(t *testing.T) {
	begun, err := Begin(Beginning{Number: 3, Stream: "s"})
	if err != nil {
		t.Fatal(err)
	}
	s := begun[1].Event.(entry.Sealed)
	s.Truth = "furnace 0"
	begun[1].Event = s
	if _, err := Resume(begun); err == nil {
		t.Error("taken for a furnace of this version")
	}
	if _, err := Resume(begun[:1]); err == nil {
		t.Error("a smelt without a seal is a rehearsal")
	}
}

// Whoever takes over has ore in the furnace, and so something to lose, also where the furnace was slow to get hot.
func TestATakenOverRehearsalHasOreIn(t *testing.T) {
	for number := range int64(20) {
		begun, err := Begin(Beginning{Number: number, Stream: "s", UnderWay: true})
		if err != nil {
			t.Fatal(err)
		}
		ore := false
		for _, e := range begun {
			c, ok := e.Event.(entry.Charge)
			ore = ore || ok && c.Parts.Holds(entry.Ore)
		}
		if !ore {
			t.Errorf("furnace %d is handed over without ore after %v", number, SecondsOf(begun[len(begun)-1]))
		}
	}
}
