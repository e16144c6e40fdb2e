package logcsv

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
)

// published are the ten published logs; each names its source at its head.
func published(t testing.TB) map[string][]byte {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/logs/*.csv")
	if err != nil || len(paths) != 10 {
		t.Fatalf("want ten logs, found %d (%v)", len(paths), err)
	}
	logs := map[string][]byte{}
	for _, p := range paths {
		b, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		logs[filepath.Base(p)[:2]] = b
	}
	return logs
}

var options = Options{
	Name: "log.csv", UID: "u1", Stream: "s1", Furnace: entry.Furnace{Name: "Reed Hollow"},
	Imported: time.Date(2026, 5, 9, 20, 0, 0, 0, time.UTC),
}

func read(t testing.TB, text string, opt Options) []entry.Entry {
	t.Helper()
	es, err := Read(strings.NewReader(text), opt)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return es
}

func write(t testing.TB, es []entry.Entry) (string, Lost) {
	t.Helper()
	var b bytes.Buffer
	lost, err := Write(&b, es)
	if err != nil {
		t.Fatal(err)
	}
	return b.String(), lost
}

// sameButHash compares entries without the hash of the file they came from.
func sameButHash(a, b []entry.Entry) string { return cmp.Diff(withoutHash(a), withoutHash(b)) }

func withoutHash(es []entry.Entry) []entry.Entry {
	es = slices.Clone(es)
	for i, e := range es {
		if l, ok := e.Event.(entry.Light); ok {
			l.SourceHash = ""
			es[i].Event = l
		}
	}
	return es
}

// total is what a log holds of one material.
type total struct {
	kg      float64 // of known mass
	count   float64
	unknown int // parts of neither mass nor count
}

func totals(es []entry.Entry, what entry.What, upTo string) total {
	var s total
	for _, e := range es {
		if upTo != "" && e.Happened.Format("15:04") > upTo {
			break
		}
		for _, p := range entry.PartsIn(e.Event) {
			switch {
			case p.What != what:
			case !p.Mass.Known && !p.Count.Known:
				s.unknown++
			default:
				s.kg += float64(p.Mass.Value)
				s.count += float64(p.Count.Value)
			}
		}
	}
	s.kg = math.Round(s.kg*1e6) / 1e6
	return s
}

// The totals stand in the logs themselves: in the header, or in a note that
// gives the running total at some time. Source of each: the head of the log.
func TestPublishedLogsSumUpAsTheySay(t *testing.T) {
	const lb = 0.45359237
	logs := published(t)
	for _, c := range []struct {
		log, upTo string
		what      entry.What
		want      total
		within    float64 // kg
		says      string
	}{
		{"01", "", entry.Charcoal, total{count: 14, unknown: 1}, 0, "14 buckets after the rough fill, whose amount is not stated"},
		{"01", "", entry.Ore, total{kg: 17.96}, 0, "17.96 logged"},
		{"02", "", entry.Charcoal, total{kg: 11, count: 20}, 0, "20 measures after the fill; initial fill 11"},
		{"02", "", entry.Ore, total{kg: 15.2}, 0, "total 15.2 kg by source"},
		{"03", "", entry.Charcoal, total{kg: 55.68, count: 26}, 0, "55.68 logged; buckets 4 to 29 after a fill of 3"},
		{"03", "", entry.Ore, total{kg: 31.7}, 0, "total 31.7 kg"},
		{"03", "15:10", entry.Ore, total{kg: 6.5}, 0, "6.5 kg limonite, the last of it at 15:10"},
		{"05", "", entry.Charcoal, total{kg: 18 * 1.9, count: 15}, 0, "bucket 18 of 1.9 kg is the last, 3 of them in the fill"},
		{"07", "", entry.Ore, total{unknown: 25}, 0, "ore_kg is blank, since its unit is not clear"},
		{"07", "", entry.Charcoal, total{kg: 32, count: 16}, 0, "bucket counts 2 to 17, 2 kg each; at 12:12 the count does not rise"},
		{"09", "", entry.Charcoal, total{kg: 12 * 4 * lb, count: 12, unknown: 1}, 0.005, "charcoal 12, measure 4 lb; a fill of unknown mass"},
		{"09", "", entry.Ore, total{kg: (5*0.75 + 2*1.5) * lb}, 0.01, "five seed charges of 0.75 lb, then 1.5 lb"},
		{"11", "20:13", entry.Charcoal, total{kg: 205 * lb, count: 1, unknown: 2}, 0.01, "charcoal total 205 lb at 20:13"},
		{"11", "20:13", entry.Ore, total{kg: 10 * lb}, 0.01, "ore total 10 lb at 20:13"},
		{"12", "", entry.Ore, total{kg: 2 * 0.5 * lb}, 0.01, "two half pounds recorded"},
		{"14", "", entry.Charcoal, total{kg: 7, count: 3.5}, 0, "seventh kg"},
		{"14", "", entry.Ore, total{}, 0, "no ore rows readable"},
		{"15", "", entry.Ore, total{kg: 3, unknown: 2}, 0, "first slug 3 kg; the second of a mass not readable; none noted at 16:28"},
		{"15", "", entry.Charcoal, total{kg: 21}, 0, "7 kg, 3 x 4 kg, 2 x 1 kg"},
	} {
		got := totals(read(t, string(logs[c.log]), options), c.what, c.upTo)
		if math.Abs(got.kg-c.want.kg) > c.within+1e-6 || got.count != c.want.count || got.unknown != c.want.unknown {
			t.Errorf("log %s %s: got %+v, want %+v (%s)", c.log, c.what, got, c.want, c.says)
		}
	}
}

func TestPublishedLogsComeBackTheSame(t *testing.T) {
	for name, b := range published(t) {
		for how, opt := range map[string]Options{
			"undated": options,
			"dated": {UID: "u", Stream: "s", Date: time.Date(2009, 11, 7, 0, 0, 0, 0, time.UTC), Location: time.FixedZone("", -3*3600-1800),
				Measures: []entry.Measure{{Name: "bucket", Mass: entry.Some(entry.Kilogram(1.8))}, {Name: "scoop", Mass: entry.Some(entry.Kilogram(0.25))}}},
		} {
			first := read(t, string(b), opt)
			text, lost := write(t, first)
			if lost != (Lost{}) {
				t.Errorf("%s %s: %+v", name, how, lost)
			}
			if d := sameButHash(first, read(t, text, opt)); d != "" {
				t.Errorf("%s %s:\n%s", name, how, d)
			}
			again, _ := write(t, read(t, text, opt))
			if again != text {
				t.Errorf("%s %s: the second writing differs:\n%s", name, how, cmp.Diff(text, again))
			}
		}
	}
}

// Every entry must also pass through the journal's own form, which refuses
// what is no entry and keeps whole milliseconds only.
func TestPublishedLogsFitTheJournal(t *testing.T) {
	for name, b := range published(t) {
		for i, e := range read(t, string(b), options) {
			line, err := entry.Encode(e)
			if err != nil {
				t.Fatal(err)
			}
			back, err := entry.Decode(line)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if d := cmp.Diff(e, back); d != "" {
				t.Errorf("%s: %s", name, d)
			}
			if e.Seq != uint64(i+1) || e.Boot != "" || e.Screen != Screen || e.Stream != "s1" || !e.Kept.Equal(options.Imported) {
				t.Errorf("%s: %+v", name, e)
			}
		}
	}
}

func TestLightOfALog(t *testing.T) {
	b := published(t)["01"]
	opt := options
	opt.Measures = []entry.Measure{{Name: "bucket", Mass: entry.Some(entry.Kilogram(1.8))}}
	es := read(t, string(b), opt)
	sum := sha256.Sum256(b)
	l := es[0].Event.(entry.Light)
	if l.SourceHash != hex.EncodeToString(sum[:]) {
		t.Error("the hash is not that of the file")
	}
	if len(l.Source) != 11 || !strings.HasPrefix(l.Source[0], "source: ") || !strings.HasPrefix(l.Source[10], "columns: ") {
		t.Errorf("remarks: %q", l.Source)
	}
	l.Source, l.SourceHash = nil, ""
	want := entry.Light{UID: "u1", Furnace: options.Furnace, Imported: true, Undated: true,
		Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}}}
	if d := cmp.Diff(want, l); d != "" {
		t.Error(d)
	}
	if at := es[0].Happened; !at.Equal(Undated.Add(9*time.Hour + 35*time.Minute)) {
		t.Errorf("lit at %v", at)
	}
}

// Rows of the published logs that are easily misread, one of each kind.
func TestOddRowsOfThePublishedLogs(t *testing.T) {
	kg := func(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }
	n := func(v float64) entry.Maybe[entry.Count] { return entry.Some(entry.Count(v)) }
	air := func(v float64) entry.Maybe[entry.LitrePerMinute] { return entry.Some(entry.LitrePerMinute(v)) }
	none := entry.Part{What: entry.Charcoal, Measure: "measure", Count: n(0), Mass: kg(0)}
	logs := published(t)
	for _, c := range []struct {
		log, at string
		want    []entry.Event
	}{
		{"01", "11:09", []entry.Event{
			entry.Fill{Parts: entry.Parts{{What: entry.Charcoal}}},
			entry.Note{Text: "filled with rough (ungraded) charcoal; amount not stated"}}},
		{"01", "11:40", []entry.Event{
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "measure", Count: n(1)}, {What: entry.Ore, Mass: kg(0)}}},
			entry.Note{Text: "charcoal bucket no 1; no ore"}}},
		{"02", "10:01", []entry.Event{
			entry.Charge{Parts: entry.Parts{none, {What: entry.Ore, Mass: kg(0.4)}}},
			entry.Note{Text: "ore only between charcoal measures; first ore (Heltborg bog ore), 2 scoops"}}},
		{"02", "12:35", []entry.Event{
			entry.Charge{Parts: entry.Parts{none, {What: entry.Ore, Mass: kg(1)}}},
			entry.Note{Text: "5 scoops; burn-down starts"}, entry.BurnDown{}}},
		{"03", "12:00", []entry.Event{
			entry.Blast{Volume: air(400.8)},
			entry.Note{Text: "main sequence starts, blower gate at mark 8; meter reads 6.68 m/s"}}},
		{"07", "12:12", []entry.Event{
			entry.Charge{Parts: entry.Parts{none, {What: entry.Ore}}}, entry.Note{Text: "bucket count 2"}}},
		{"11", "19:25", []entry.Event{
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal}, {What: entry.Ore, Mass: kg(1.36)}}},
			entry.Note{Text: "time not recorded; rough charcoal topped up too"}}},
		{"11", "21:40", []entry.Event{
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "measure", Count: n(1), Mass: kg(2.27)}, {What: entry.Ore, Mass: kg(2.27)}}}}},
		{"14", "13:30", []entry.Event{
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "measure", Count: n(0.5), Mass: kg(0.5)}, {What: entry.Ore, Mass: kg(0)}}},
			entry.Note{Text: "rest of fourth kg"}}},
		{"14", "13:41", []entry.Event{
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: "measure", Count: n(1), Mass: kg(1)}, {What: entry.Ore, Mass: kg(0)}}},
			entry.Temperature{Degrees: 1304}, entry.Note{Text: "fifth kg gone; optical pyrometer 2380 F"}}},
		{"14", "13:58", []entry.Event{
			entry.Blast{State: entry.BlastOff, Volume: air(0)}, entry.Note{Text: "bellows stopped"}}},
		{"14", "14:00", []entry.Event{
			entry.Blast{}, entry.Note{Text: "bellows restarted"}}},
		{"15", "14:41", []entry.Event{
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: kg(4)}, {What: entry.Ore, Mass: kg(3)}}},
			entry.Note{Text: "first slug: 3 kg of forge scale, sand and some bog ore, topped with charcoal"}}},
	} {
		var got []entry.Event
		groups := map[string]bool{}
		for _, e := range read(t, string(logs[c.log]), options) {
			if e.Happened.Format("15:04") == c.at && e.Kind() != entry.KindLight {
				got = append(got, e.Event)
				groups[e.Group] = true
			}
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("log %s %s:\n%s", c.log, c.at, d)
		}
		if alone := len(c.want) == 1; groups[""] != (alone || c.log+c.at == "0212:35") {
			t.Errorf("log %s %s: groups %v", c.log, c.at, groups)
		}
	}
}
