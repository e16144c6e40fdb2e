//go:build unix

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// litTime is when state says that the fire was lit.
func litTime(t *testing.T, dir string) time.Time {
	t.Helper()
	var s stateJSON
	if err := json.Unmarshal([]byte(says(t, dir, "state", onlySmelt(t, dir), "--json", "--at", "+0h")), &s); err != nil {
		t.Fatal(err)
	}
	lit, err := time.Parse(timeForm, s.At)
	if err != nil {
		t.Fatal(err)
	}
	return lit
}

// The clock of the machine stood wrong when the fire was lit. Whether it was set since
// or not, one entry puts every time right, light's too, after the question has said by
// how much; what was done stands where it stood after light.
func TestAWrongClockPutRightOnATerminal(t *testing.T) {
	t.Parallel()
	for name, set := range map[string]bool{"set since": true, "wrong still": false} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			s := openWithClock(t, dir, 80, 24)
			s.lights()
			s.Does("c", "charge 1: 1 bucket")
			s.Press(tenMinutes)
			s.Does("c", "charge 2: 1 bucket")
			s.allKept()
			lit, before := litTime(t, dir), stateIn(t, dir, onlySmelt(t, dir))
			is := lit.Add(23 * time.Minute)
			if set {
				s.Does(clockIsSet, "23 min forward")
				s.Press("ovw")
			} else {
				s.Does("ovw", "what is the time")
				now := time.Now().UTC().Add(10*time.Minute + 23*time.Minute)
				if now.Second() > 57 { // the minute must not turn between the two
					time.Sleep(4 * time.Second)
					now = now.Add(4 * time.Second)
				}
				s.Press(now.Format("1504") + "\r")
			}
			s.Shows(fmt.Sprintf("23 min later: lit %s, not %s", is.Format("15:04"), lit.Format("15:04")))
			s.Does("y", "every time of this smelt is 23 min later")
			s.allKept()
			if got := litTime(t, dir); got.Sub(is).Abs() > 2*time.Second {
				t.Errorf("light stands at %v, want %v", got, is)
			}
			after := stateIn(t, dir, onlySmelt(t, dir))
			for _, figure := range []string{"charcoal_charged", "since_charge", "burn_rate"} {
				if b, a := asText(before.Figures[figure]), asText(after.Figures[figure]); a != b {
					t.Errorf("%s was %s, is %s", figure, b, a)
				}
			}
			s.Does("vb", "the clock stood wrong")
			s.Does("u", "crossed out: the clock stood wrong")
			s.allKept()
			if got := litTime(t, dir); !got.Equal(lit) {
				t.Errorf("crossed out, light stands at %v, want %v", got, lit)
			}
			s.Does("o", "holds again: the clock stood wrong")
			s.allKept()
			s.Kill()
			if got := litTime(t, dir); got.Sub(is).Abs() > 2*time.Second {
				t.Errorf("after a kill light stands at %v, want %v", got, is)
			}
			says(t, dir, "check")
			if n := righted(readSmelt(t, bookIn(dir), onlySmelt(t, dir))); n != 1 {
				t.Errorf("%d entries put the clock right, want one", n)
			}
		})
	}
}

func righted(es []entry.Entry) (n int) {
	for _, e := range es {
		if j, ok := e.Event.(entry.ClockJump); ok && !j.Right.IsZero() {
			n++
		}
	}
	return n
}

// bells is how often the terminal's bell was rung.
func (s *terminal) bells() int {
	return bytes.Count(s.Written(), []byte{'\a'})
}

// passes moves the clock on minute by minute, and waits each time until the screen has
// followed: the clock at its top shows what the clock of the machine is by then.
func (s *terminal) passes(minutes int) {
	s.t.Helper()
	for range minutes {
		before := s.Screen()
		s.Press(aMinute)
		s.Until("a later minute", func(screen string) bool { return screen != before })
		time.Sleep(1100 * time.Millisecond) // the next look at the clock, which rings
	}
}

// The bell on a terminal: an act rings each minute until it is acknowledged; a charge
// that falls due rings once where that was chosen; off is silent; so is Replay.
func TestTheBellOnATerminal(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		keys     string // in the settings
		act, due bool
	}{"at first": {"", true, false}, "all": {"r", true, true}, "off": {"rr", false, false}} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			s := openWithClock(t, dir, 80, 24)
			s.lights()
			s.Does("ve", "bell")
			for _, k := range c.keys {
				s.Does(string(k), "from now on")
				s.Press("y")
				s.Until("the list again", func(screen string) bool { return !strings.Contains(screen, "from now on") })
				time.Sleep(1500 * time.Millisecond) // quicker it is a glove that leans on the key
			}
			s.Press("\x1b")
			s.Until("no list", func(screen string) bool { return !strings.Contains(screen, "settings") })
			time.Sleep(time.Second) // or escape and c are one key
			s.Does("c", "charge 1")
			for n := 2; n <= 5; n++ {
				s.Press(tenMinutes)
				s.Does("c", fmt.Sprint("charge ", n))
			}
			rang := s.bells()
			s.Press(strings.Repeat(aMinute, 8))
			s.passes(5)
			if heard := s.bells() - rang; c.due && heard != 1 || !c.due && heard != 0 {
				t.Errorf("a charge that falls due rings %d times:\n%s", heard, s.Screen())
			}
			s.Does("c", "charge 6")
			s.Does("b700\r", "700 l/min")
			s.Does("bo", "blast off")
			rang = s.bells()
			s.passes(4)
			if heard := s.bells() - rang; c.act && (heard < 3 || heard > 5) || !c.act && heard != 0 {
				t.Errorf("a lost blast rings %d times in four minutes:\n%s", heard, s.Screen())
			}
			s.Press("a")
			time.Sleep(1200 * time.Millisecond)
			rang = s.bells()
			s.passes(3)
			if heard := s.bells() - rang; heard != 0 {
				t.Errorf("acknowledged, it rings %d times:\n%s", heard, s.Screen())
			}
			s.Press("vr")
			s.Shows("this is the past")
			rang = s.bells()
			for range 10 {
				s.Press("\x1b[D")
			}
			for range 20 {
				s.Press("\x1b[C")
			}
			s.Press(aMinute + aMinute)
			time.Sleep(2500 * time.Millisecond)
			if heard := s.bells() - rang; heard != 0 {
				t.Errorf("Replay rings %d times", heard)
			}
		})
	}
}
