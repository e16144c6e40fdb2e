package rehearsal_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rehearse"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/desk"
	"chargehand/tui/rehearsal"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// worked is a rehearsal that somebody has worked to its end: charged by the plan, looked now and then, rodded half an hour late.
func worked(t testing.TB, number int64, mishaps ...rehearse.Mishap) []entry.Entry {
	t.Helper()
	es, err := rehearse.Begin(rehearse.Beginning{Number: number, Mishaps: mishaps, Chosen: true, Stream: "rehearsal-1", UnderWay: true})
	if err != nil {
		t.Fatal(err)
	}
	live, err := rehearse.Resume(es)
	if err != nil {
		t.Fatal(err)
	}
	plan, done := es[len(es)-1].Event.(entry.Recipe), 0
	keep := func(at float64, on string, ev entry.Event) entry.Entry {
		m := rehearse.Moment(at)
		e := entry.Entry{
			Version: entry.Version, Stream: "rehearsal-1", Seq: uint64(len(es) + 1), Happened: m.Wall, Kept: m.Wall, Boot: m.Boot, Mono: m.Mono,
			Screen: on, Event: ev,
		}
		es = append(es, e)
		return e
	}
	key := func(ev entry.Event) { live.Take(keep(live.Seconds()+1, "fire", ev)) }
	see := func(ask entry.Event) entry.Event {
		ev, why := live.See(ask)
		if why == "" {
			keep(live.Seconds()+1, rehearse.Answers, ev)
		}
		return ev
	}
	oreIn, burns, pulled, dim := false, 0.0, false, 0.0
	for !live.Over() {
		now := live.Seconds()
		switch {
		case pulled:
		case burns > 0 && now > burns+1800:
			see(entry.Extract{From: "top"})
			pulled = true
		case burns > 0:
		case live.Room():
			key(entry.Charge{Parts: fold.Planned(plan, done)})
			if done++; oreIn {
				key(entry.BurnDown{})
				burns = now
			}
		case dim > 0 && now > dim+1800:
			key(entry.Rod{})
			dim = 0
		case int(now)%720 == 0:
			l, _ := see(entry.Look{At: entry.AtPeep}).(entry.Look)
			if dim == 0 && (l.Sees == entry.PeepDim || l.Sees == entry.PeepDark) {
				dim = now
			}
		case int(now)%3600 == 1800:
			see(entry.Tap{})
		}
		for _, h := range live.Step() {
			switch {
			case h.Event != nil:
				keep(live.Seconds(), rehearse.Answers, h.Event)
			case h.Notice == rehearse.OreIsIn && !oreIn:
				key(entry.LastOre{})
				oreIn = true
			case !h.Notice.Shown():
				keep(live.Seconds(), rehearse.Answers, entry.Note{Text: string(h.Notice)})
			}
		}
		if now > 16*3600 {
			t.Fatal("no end")
		}
	}
	return es
}

// opened is the screen of a rehearsal that is over, with its end worked out.
func opened(t testing.TB, es []entry.Entry) (screen.Screen, *screen.Shared) {
	t.Helper()
	sh := &screen.Shared{W: 120, H: 36, Theme: theme.Theme{}, Smelt: session.Open("rehearsal-1", es), Mark: "practice", Now: rehearse.Moment(rehearse.SecondsOf(es[len(es)-1]))}
	s, e := rehearsal.New().Entered(sh, nil)
	run, ok := screen.First[screen.Run](e)
	if !ok {
		t.Fatal("the seal is not opened")
	}
	s, _, _ = s.(rehearsal.Screen).Receive(sh, run.Cmd())
	return s, sh
}

func shown(s screen.Screen, sh *screen.Shared, w, h int) string {
	sh.W, sh.H = w, h
	g := sh.Theme.Grid(w, h)
	s.Paint(g, sh)
	return g.String()
}

// What happened, what was believed and what was done stand on one time line, with three sentences, at each size.
func TestTheEndOfARehearsal(t *testing.T) {
	s, sh := opened(t, worked(t, 11, "tuyere-blocked", "bad-ore"))
	for _, size := range [][2]int{desk.Small, desk.Usual, desk.Large} {
		t.Run(fmt.Sprintf("end_%dx%d", size[0], size[1]), func(t *testing.T) {
			golden.RequireEqual(t, []byte(shown(s, sh, size[0], size[1])))
		})
	}
	for range 2 {
		s = pressed(s, sh, "right")
	}
	if text := shown(s, sh, 120, 36); !strings.Contains(text, "hearth ") || !strings.Contains(text, ", believed ") || strings.Contains(text, words.NothingIsKept) {
		t.Errorf("walked on the line:\n%s", text)
	}
	for range 99 {
		s = pressed(s, sh, "left")
	}
	if text := shown(s, sh, 120, 36); !strings.Contains(text, "tuyere blocked begins") {
		t.Errorf("walked to the first:\n%s", text)
	}
	calm, sh := opened(t, worked(t, 6))
	if text := shown(calm, sh, 120, 36); !strings.Contains(text, words.NothingBefell) || !strings.Contains(text, " 3  ") {
		t.Errorf("a calm rehearsal:\n%s", text)
	}
}

// As long as the seal is closed nothing is told, whatever is asked.
func TestNothingIsToldWhileItIsSealed(t *testing.T) {
	es := worked(t, 11, "tuyere-blocked")
	sealed := es[:len(es)-1]
	if _, err := rehearse.EndOf(sealed); err == nil {
		t.Error("the end is told of a sealed rehearsal")
	}
	sh := &screen.Shared{W: 120, H: 36, Smelt: session.Open("rehearsal-1", sealed)}
	s, e := rehearsal.New().Entered(sh, nil)
	if e != nil {
		t.Errorf("it is opened: %v", e)
	}
	if text := shown(s, sh, 120, 36); !strings.Contains(text, words.StillSealed) || strings.Contains(text, "tuyere") {
		t.Errorf("while sealed:\n%s", text)
	}
}

// A hearth that went cold while nobody looked into the peep says so; who looked is not told it.
func TestAColdHearthThatNobodyLookedAt(t *testing.T) {
	const unseen = "nobody looked into the peep"
	d := rehearse.End{OreKg: 10, Cold: time.Hour, True: []rehearse.Heat{{C: 900}}}
	if said := strings.Join(words.ThreeSentences(modelwords.Units{}, d), " "); !strings.Contains(said, unseen) {
		t.Errorf("nobody looked: %s", said)
	}
	d.Looked = 1
	if said := strings.Join(words.ThreeSentences(modelwords.Units{}, d), " "); strings.Contains(said, unseen) {
		t.Errorf("somebody looked: %s", said)
	}
}
