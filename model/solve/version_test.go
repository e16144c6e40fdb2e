package solve_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/solve"
)

var update = flag.Bool("update", false, "write what this version of the solver gives")

// What the solver gives of one invented smelt, to as many digits as processors
// agree on, stands under its version: figures in old journals name it. When this
// fails, the numbers have changed: look why, then raise solve.Version and run the
// test with -update.
func TestVersionNamesWhatTheSolverGives(t *testing.T) {
	const golden = "testdata/version.golden"
	d := newDay(entry.Furnace{Bore: cm(25), BoreTop: cm(22), Stack: cm(55), Wall: cm(6), TuyereBase: cm(15), TuyereBore: entry.Some(entry.Millimetre(22))}).
		key(entry.Fill{Parts: entry.Parts{buckets(4)}}).key(blast(650)).wait(20 * time.Minute)
	for i := range 14 {
		d.key(charge(buckets(1), ore(float64(min(i, 6))/3))).wait(11 * time.Minute)
	}
	d.key(entry.Poke{}).key(blast(0)).wait(6 * time.Minute).key(blast(720)).wait(9 * time.Minute).key(entry.Tap{}).key(charge(buckets(1), ore(2))).wait(25 * time.Minute)
	var b strings.Builder
	fmt.Fprintln(&b, solve.Version)
	for at := 30 * time.Minute; at <= d.now; at += 30 * time.Minute {
		s := d.fresh(at)
		g, _ := s.SampleAt(at)
		fmt.Fprintf(&b, "%v: %.4g K hearth, %.4g K top, %.4g m high, %.4g kg iron, %.4g kg slag, %.4g Pa, air %.4g\n",
			at, s.Hearth.Temperature, s.TopGas.Temperature, s.Height, s.Hearth.Iron, s.Hearth.Slag.Sum(), g.Holds, s.AirFactor.P50)
	}
	if *update {
		if err := os.WriteFile(golden, []byte(b.String()), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.String(); got != string(want) {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}
