package session

import (
	"reflect"
	"sync"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/solve"
)

// The screen hands the solver's job and looks ahead to goroutines and keys on meanwhile.
// Sessions that came of each other share checkpoints and lists, so this is read under the
// race detector; and each says in the end what it says when nothing runs beside it.
func TestASessionIsReadBesideItsSolver(t *testing.T) {
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	var (
		s       = Open(invented.ID, es[:20], ToLookAt)
		solver  = new(solve.Solver)
		solved  = make(chan Result, 1)
		reads   sync.WaitGroup
		at      = func(s Session) time.Duration { return s.End() }
		working bool
		came    int
	)
	for i, e := range es[20:] {
		s = s.Keep(e)
		s = s.MoveTo(at(s))
		older := s
		reads.Go(func() { older.Reading(); older.Warnings(); older.Ahead(10 * time.Minute).Reading() })
		reads.Go(func() { older.AsOf(uint64(10+i), older.At()-time.Minute).Warnings() })
		if j, due := s.Job(); due && !working {
			working = true
			go func() { solved <- j.Run(solver) }()
		}
		s.Reading()
		s.Warnings()
		if i%3 == 2 && working { // as late as it comes, but often enough
			s, working = s.Solved(<-solved), false
			came++
		}
	}
	if working {
		s = s.Solved(<-solved)
	}
	reads.Wait()
	if came < 5 || !s.solver.told {
		t.Fatalf("only %d answers of the solver: the day is too short to try anything", came)
	}
	agrees(t, s, "with a solver beside it")
	alone := Open(invented.ID, append([]entry.Entry(nil), es...), ToLookAt)
	alone.solver = s.solver
	if alone = alone.MoveTo(s.At()); !reflect.DeepEqual(s.Reading(), alone.Reading()) || !reflect.DeepEqual(s.Warnings(), alone.Warnings()) {
		t.Error("it says something else than with nothing beside it")
	}
}
