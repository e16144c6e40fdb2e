package rehearse

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/physics/shaft"
)

// A hearth that is far colder than it is believed, on a day on which nobody looks: the program asks how the slag runs, and one
// look brings what it believes down to where the hearth is. (Furnace 913381: 865 C by then, believed to be 1020 to 1470.)
func TestAHearthThatNobodyLooksAtIsAskedAfter(t *testing.T) {
	d, err := Run(913381, nil, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var unseen []entry.Entry
	for _, e := range d.Entries {
		if l, is := e.Event.(entry.Look); is && (l.At == entry.AtSlag || l.At == entry.AtPeep) {
			continue
		}
		e.Seq = uint64(len(unseen) + 1)
		unseen = append(unseen, e)
	}
	v := &solve.Solver{Grid: shaft.Coarse}
	at := func(es []entry.Entry, moment time.Duration) session.Session {
		s := session.Open(d.crew.stream, es)
		s = s.AsOf(s.KnownAt(moment), moment)
		if j, ok := s.Job(); ok {
			s = s.Solved(j.Run(v))
		}
		return s
	}
	asked := time.Duration(0)
	for _, w := range at(unseen, seconds(d.crew.burning)).Warnings() {
		if w.Rule == rule.SlagUnseen && asked == 0 {
			asked = w.Onset
		}
	}
	if asked == 0 {
		t.Fatal("nobody was asked")
	}
	moment := asked + 2*time.Minute
	is := d.crew.at(moment).HearthC
	before := at(unseen, moment).Reading().Figure(figure.HearthTemperature)
	if before.P10 < is+100 {
		t.Fatalf("the hearth is at %.0f C and believed at %+v: another furnace has to show this", is, before.Band)
	}
	looked := append([]entry.Entry(nil), unseen[0])
	for _, e := range unseen[1:] {
		if SecondsOf(e) > (asked + time.Minute).Seconds() {
			break
		}
		looked = append(looked, e)
	}
	j := journal{stream: d.crew.stream, entries: looked}
	j.key((asked + time.Minute).Seconds(), entry.Look{At: entry.AtSlag, Sees: entry.SlagStiff})
	after := at(j.entries, moment).Reading().Figure(figure.HearthTemperature)
	if after.P10 > is || after.P50 > before.P50-100 {
		t.Errorf("the hearth is at %.0f C, believed at %+v before somebody looked and at %+v after", is, before.Band, after.Band)
	}
	t.Logf("%v: %.0f C, believed %+v, then %+v", asked, is, before.Band, after.Band)
}
