//go:build unix

package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// aGlove is a little longer than within which a key that comes twice is taken for a leaning
// glove.
const aGlove = 450 * time.Millisecond

// fields types answers, each ended by enter; enter twice at once would be a leaning glove.
func fields(s *terminal, typed string, leads ...string) {
	s.t.Helper()
	for _, c := range typed {
		s.Press(string(c))
		s.Drained()
		if c == '\r' {
			time.Sleep(aGlove)
		}
	}
	s.Shows(leads...)
}

// From an empty book to the first warning off the plan's line on a true terminal: a furnace,
// ore and charcoal and their measures, a plan, a fire lit by it, and charges with too little
// ore. What the screen called kept is in the book, the smelt runs on the plan, and the stores
// are less by what went in.
func TestTheWeekOnATerminal(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: a week and half a day of keys")
	}
	t.Parallel()
	dir := t.TempDir()
	s := openWithClock(t, dir, 120, 36)
	s.Shows("practise")
	s.Does("vu", "No furnace here yet")
	fields(s, "nReed Hollow\r25\r\r50\r60\r15\r5\r20\r20\r", "furnace Reed Hollow")
	s.Does("vt", "Nothing here yet")
	fields(s, "n1rpond, roasted\r31\r3\r", "31 kg pond, roasted")
	fields(s, "n2balder\r64\r12\r", "64 kg alder")
	fields(s, "ka1bucket\r1.8\r", "bucket")
	fields(s, "ka2scoop\r0.5\r", "scoop")
	s.Does("vp", "wanted: a bloom of 4 kg", "fears nothing")
	fields(s, "wb3\r", "wanted: a bloom of 3 kg")
	fields(s, "n4\r", "of it, about", "its range") // reckoned, and solved in every plausible furnace
	fields(s, "mi1\r", "by when", "today")
	s.Does("\x1b", "wanted: a bloom of 3 kg")
	s.Drained()
	s.Does("\r", "plan taken: bloom of 3 kg, usual")
	s.Does("l", "as planned: bloom of 3 kg")
	s.Does("\x1b[6~\r", "since it was lit", "charges go by the plan")
	s.Press(aMinute)
	s.Does("f", "fill: 1 bucket")
	s.Press(aMinute)
	for n := 1; n <= 6; n++ { // of charcoal alone
		s.Does("c", fmt.Sprintf("charge %d: 1 bucket", n))
		s.Press(tenMinutes + aMinute)
	}
	s.Does("c", "charge 7: 1 bucket", "kg ore")
	s.Press(tenMinutes + aMinute)
	s.Does("c", "charge 8: 1 bucket", "kg ore")
	s.Press(tenMinutes + aMinute)
	for n := 9; n < 14; n++ { // charcoal and half a scoop
		s.Does("f", fmt.Sprintf("charge %d: 1 bucket", n))
		s.Press("d")
		s.Drained()
		time.Sleep(settling)
		s.Press(tenMinutes + aMinute)
	}
	s.Shows("ratio off plan")
	s.Does("vt", "pond, roasted", "to Reed Hollow") // what it used is taken from the stores
	time.Sleep(1200 * time.Millisecond)             // what was shown is written down with the next second
	s.Drained()
	s.allKept()
	s.Kill()

	es := readSmelt(t, bookIn(dir), onlySmelt(t, dir))
	l, ok := es[0].Event.(entry.Light)
	if !ok || l.Plan == nil || l.Plan.Wanted.Mass.Value != 3 || len(l.Lots) != 2 || !l.Plan.Promised["ore_planned"].P50.Known {
		t.Fatalf("lit with %+v", es[0].Event)
	}
	if !strings.Contains(strings.Join(shown(es), "\n"), "raised ratio off") {
		t.Errorf("no testimony of the warning: %v\n%s", shown(es), s.Screen())
	}
}

// A newcomer's first plan, by three times enter in the smallest window.
func TestPreparedInThreeEntersOnATerminal(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 80, 24)
	s.Shows("prepare one")
	s.Does("e", "in which furnace")
	for _, leads := range []string{"roasted ore, dry", "what the blower gives"} {
		s.Does("\r", leads)
		time.Sleep(aGlove)
	}
	s.Does("\r", "20 kg ore dry", "in 10", "needs", "charcoal", "light the wood fire", "pull the bloom", "you judge")
	s.Does("a", "weigh a bucket", "the bag test", "measure, n at the furnaces")
	s.Kill()
}
