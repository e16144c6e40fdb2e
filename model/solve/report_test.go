package solve_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// published is a published log of a furnace.
func published(tb testing.TB, number string, f entry.Furnace, measures ...entry.Measure) []entry.Entry {
	tb.Helper()
	return logcsvtest.Read(tb, number, logcsv.Options{Furnace: f, Measures: measures})
}

func cm(v float64) entry.Maybe[entry.Centimetre] { return entry.Some(entry.Centimetre(v)) }

// Sizes as on the logs' own pages: see their # lines.
var (
	norse = entry.Furnace{Name: "Norse short shaft", Bore: cm(25), Stack: cm(50), Rim: cm(50), TuyereBase: cm(15)}
	wind  = entry.Furnace{Name: "short shaft", Bore: cm(28), Stack: cm(50), Rim: cm(62), TuyereBase: cm(15), Wall: cm(4.5)}
)

// publishedSmelt is a published log with its sizes and measures.
type publishedSmelt struct {
	name     string
	furnace  entry.Furnace
	measures []entry.Measure
}

// publishedSmelts are the published logs that the shaft is held to. Bore and
// stack of 01 and 02 are not on their pages: the usual short shaft of that
// author; a bucket of theirs is 1.8 kg elsewhere by the same author.
var publishedSmelts = []publishedSmelt{
	{"01", norse, []entry.Measure{bucketOf(1.8)}},
	{"02", norse, []entry.Measure{bucketOf(1.8)}},
	{"03", norse, nil},
	{"05", wind, nil},
	{"07", entry.Furnace{Name: "drum", Bore: cm(25), Stack: cm(65), Rim: cm(65), TuyereBase: cm(20)}, nil},
}

func bucketOf(kg float64) entry.Measure {
	return entry.Measure{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(kg))}
}

func celsius(k float64) float64 { return physics.ToCelsius(k) }

// layerAt is the layer at a height in m; the highest one above them all.
func layerAt(profile []shaft.Layer, height float64) shaft.Layer {
	for _, l := range profile {
		if height < l.Top {
			return l
		}
	}
	if len(profile) == 0 {
		return shaft.Layer{}
	}
	return profile[len(profile)-1]
}

// The published logs through the solver as they were kept, printed with -v:
//
//	go test -run TestReportLogs -v ./model/solve
func TestReportLogs(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	for _, log := range []struct {
		name    string
		furnace entry.Furnace
	}{{"03", norse}, {"05", wind}, {"01", norse}} {
		entries := published(t, log.name, log.furnace)
		var v solve.Solver
		for at := time.Duration(0); at <= fold.End(entries)+10*time.Minute; at += 10 * time.Minute {
			c := fold.Trace(entries, fold.All, at)
			s := v.Solve(&c)
			var b strings.Builder
			for _, h := range []float64{0.02, 0.10, 0.20, 0.30, 0.40, 0.48} {
				l := layerAt(s.Profile, h)
				fmt.Fprintf(&b, " %4.0f/%-4.0f", celsius(l.WallSide), celsius(l.Middle))
			}
			slag := s.Hearth.Slag
			level, _ := c.LevelThen(at)
			t.Logf("%s %s lack %d, %2.0f cm (level %2.0f), wall side/middle at 2..48 cm%s, top %4.0f, CO/CO2 %4.1f, hearth %4.0f, iron %.2f, slag %.1f (FeO %.2f), factor %.2f (%.2f-%.2f) of %d, guessed air %v",
				log.name, c.Lit.Add(at).Format("15:04"), s.Status, 100*s.Height, 100*level.Height, b.String(), celsius(s.TopGas.Temperature), s.TopGas.CO/s.TopGas.CO2,
				celsius(s.Hearth.Temperature), s.Hearth.Iron, slag.Sum(), slag.FeO/slag.Sum(), s.AirFactor.P50, s.AirFactor.P10, s.AirFactor.P90, s.Intervals, s.GuessedAir)
		}
	}
}
