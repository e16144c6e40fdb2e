package logcsv

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"chargehand/model/entry"
)

// sheet is a random log before it is put on paper: rows of cells by column.
type sheet struct {
	remarks []string
	rows    []map[column]string
	cols    []column
}

var words = rapid.StringMatching(`[a-zA-Z0-9 ,;"'#=<&äß-]{0,12}`)

// drawSheet draws a log that is well formed.
func drawSheet(t *rapid.T) sheet {
	var s sheet
	for i := range rapid.IntRange(0, 3).Draw(t, "remarks") {
		s.remarks = append(s.remarks, words.Draw(t, fmt.Sprint("remark ", i)))
	}
	s.cols = append(s.cols, colClock, colEvent)
	for c := range column(columns) {
		if c != colClock && c != colEvent && rapid.Bool().Draw(t, c.String()) {
			s.cols = append(s.cols, c)
		}
	}
	secs := rapid.IntRange(0, daySecs-1).Draw(t, "start")
	for range rapid.IntRange(1, 20).Draw(t, "rows") {
		r := map[column]string{}
		r[colClock] = clock(secs % daySecs).String()
		secs += rapid.SampledFrom([]int{0, 0, 1, 60, 600, 3600, 11 * 3600}).Draw(t, "after")
		ev := rapid.SampledFrom(eventNames()).Draw(t, "event")
		r[colEvent] = ev
		for _, c := range s.cols {
			switch {
			case c.numeric():
				charged := c == colCharcoal || c == colMeasures || c == colOre || c == colScoops
				if charged && !(row{event: ev}).charges() {
					r[c] = rapid.SampledFrom([]string{"", "", "0"}).Draw(t, c.String())
				} else {
					r[c] = rapid.SampledFrom([]string{"", "0", "0.5", "1", "1.92", "12.125", "3.0"}).Draw(t, c.String())
				}
			case c == colNote:
				r[c] = words.Draw(t, "note")
			}
		}
		s.rows = append(s.rows, r)
	}
	return s
}

// dialect is a way of putting a sheet on paper.
type dialect struct {
	sep, end, point, mark string
	order                 []column
}

func (s sheet) text(d dialect) string {
	var b strings.Builder
	b.WriteString(d.mark)
	for _, r := range s.remarks {
		b.WriteString("#" + r + d.end)
	}
	line := func(cell func(column) string) {
		for i, c := range d.order {
			if i > 0 {
				b.WriteString(d.sep)
			}
			text := cell(c)
			if c.numeric() {
				text = strings.Replace(text, ".", d.point, 1)
			}
			if strings.ContainsAny(text, d.sep+`"`) || strings.HasPrefix(text, "#") {
				text = `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
			}
			b.WriteString(text)
		}
		b.WriteString(d.end)
	}
	line(column.String)
	for _, r := range s.rows {
		line(func(c column) string { return r[c] })
	}
	return b.String()
}

// Order of columns, separator, decimal comma, line ends and the mark before
// UTF-8 change nothing, and what was read comes back after writing.
func TestRandomLogs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSheet(t)
		plain := s.text(dialect{sep: ",", end: "\n", point: ".", order: s.cols})
		opt := Options{UID: "u", Stream: "s"}
		if rapid.Bool().Draw(t, "dated") {
			opt.Date = time.Date(2026, 12, 31, 0, 0, 0, 0, time.UTC)
			opt.Location = time.FixedZone("", 60*rapid.IntRange(-12*60, 14*60).Draw(t, "offset"))
		}
		if rapid.Bool().Draw(t, "named") {
			opt.Measures = []entry.Measure{{Name: "bucket", Mass: entry.Some(entry.Kilogram(1.9))}}
		}
		es, err := Read(strings.NewReader(plain), opt)
		if err != nil {
			t.Fatalf("%v in\n%s", err, plain)
		}
		sums(t, s, es)

		d := dialect{sep: ",", end: "\n", point: ".", order: rapid.Permutation(s.cols).Draw(t, "order")}
		if rapid.Bool().Draw(t, "semicolon") {
			d.sep, d.point = ";", rapid.SampledFrom([]string{".", ","}).Draw(t, "point")
		}
		d.end = rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
		d.mark = rapid.SampledFrom([]string{"", "\ufeff"}).Draw(t, "mark")
		other, err := Read(strings.NewReader(s.text(d)), opt)
		if err != nil {
			t.Fatalf("%v in\n%s", err, s.text(d))
		}
		if diff := sameButHash(es, other); diff != "" {
			t.Fatalf("the dialect made a difference:\n%s", diff)
		}
		comesBack(t, es, opt)
	})
}

// fataler is what the checks need of a test.
type fataler interface{ Fatalf(string, ...any) }

// comesBack checks that what was read gives the same after writing, and that
// nothing of it counts as lost.
func comesBack(t fataler, es []entry.Entry, opt Options) {
	var b strings.Builder
	lost, err := Write(&b, es)
	if err != nil || lost != (Lost{}) {
		t.Fatalf("lost %+v, %v in\n%s", lost, err, &b)
	}
	back, err := Read(strings.NewReader(b.String()), opt)
	if err != nil {
		t.Fatalf("what was written is refused: %v in\n%s", err, &b)
	}
	if diff := sameButHash(es, back); diff != "" {
		t.Fatalf("comes back otherwise:\n%s\n%s", diff, &b)
	}
}

// sums checks the totals against the cells of the sheet, added up here.
func sums(t *rapid.T, s sheet, es []entry.Entry) {
	for c, what := range map[column]entry.What{colCharcoal: entry.Charcoal, colOre: entry.Ore} {
		var want float64
		for _, r := range s.rows {
			v, _ := strconv.ParseFloat(r[c], 64)
			want += v
		}
		if got := totals(es, what, ""); math.Abs(got.kg-want) > 1e-6 {
			t.Fatalf("%s: %g kg of %g", what, got.kg, want)
		}
	}
}

// drawEvent draws an event as it might be keyed on the day.
func drawEvent(t *rapid.T) entry.Event {
	num := rapid.SampledFrom([]float64{0, 0.2, 0.5, 1, 1.92, 7, 400, -3, 1e7, math.NaN(), math.Inf(1)})
	maybe := func(label string) number {
		if !rapid.Bool().Draw(t, label+" known") {
			return number{}
		}
		return entry.Some(num.Draw(t, label))
	}
	parts := func() entry.Parts {
		var ps entry.Parts
		for range rapid.IntRange(0, 4).Draw(t, "parts") {
			ps = append(ps, entry.Part{
				What:    rapid.SampledFrom([]entry.What{entry.Charcoal, entry.Ore, entry.Ore, entry.Flux}).Draw(t, "what"),
				Lot:     rapid.SampledFrom([]string{"", "pond"}).Draw(t, "lot"),
				Measure: rapid.SampledFrom([]string{"", "bucket", "bag", "scoop"}).Draw(t, "measure"),
				Count:   quantity[entry.Count](maybe("count")), Mass: quantity[entry.Kilogram](maybe("mass")),
			})
		}
		return ps
	}
	switch rapid.IntRange(0, 12).Draw(t, "kind") {
	case 0:
		return entry.PhaseSet{Phase: rapid.SampledFrom([]entry.Phase{entry.Preheat, entry.Closed}).Draw(t, "phase")}
	case 1:
		return entry.Fill{Parts: parts()}
	case 2, 3, 4:
		return entry.Charge{Parts: parts()}
	case 5:
		return entry.Tap{}
	case 6:
		return entry.BurnDown{}
	case 7:
		return entry.Extract{}
	case 8:
		return entry.Blast{State: rapid.SampledFrom([]entry.BlastState{"", entry.BlastOn, entry.BlastOff}).Draw(t, "state"),
			Volume: quantity[entry.LitrePerMinute](maybe("air"))}
	case 9:
		return entry.Temperature{Degrees: entry.Celsius(num.Draw(t, "degrees"))}
	case 10:
		return entry.Dip{AboveTuyere: quantity[entry.Centimetre](maybe("height"))}
	case 11:
		return entry.Note{Text: rapid.String().Draw(t, "text")}
	default:
		return entry.Poke{}
	}
}

// eventsOf gives the events at the furnace with their second, in an order that
// does not hang on which of one second was written first.
func eventsOf(es []entry.Entry) []string {
	var out []string
	for _, e := range es[1:] {
		out = append(out, fmt.Sprintf("%d %#v", e.Happened.Unix(), plain(e.Event)))
	}
	slices.Sort(out)
	return out
}

// Whatever is keyed: what Write writes, Read takes; no kilogram that was
// recorded is lost or made up; and the second time nothing more is lost.
func TestRandomSmelts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := time.Date(2026, 5, 9, 22, 0, 0, 0, time.FixedZone("", 7200))
		measures := []entry.Measure{{Name: "bucket", What: entry.Charcoal}, {Name: "scoop", What: entry.Ore}}
		es := []entry.Entry{{Happened: at, Event: entry.Light{Measures: measures, Source: []string{rapid.String().Draw(t, "remark")}}}}
		for range rapid.IntRange(1, 15).Draw(t, "entries") {
			at = at.Add(time.Duration(rapid.SampledFrom([]int{0, 0, 300, 60_000, 7_200_000, 72_000_000}).Draw(t, "ms")) * time.Millisecond)
			es = append(es, entry.Entry{Happened: at, Event: drawEvent(t), Group: rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "group")})
		}
		var b strings.Builder
		lost, err := Write(&b, es)
		if err != nil {
			t.Fatal(err)
		}
		if lost.Entries+lost.Partly > len(es)-1 {
			t.Fatalf("lost %+v of %d", lost, len(es)-1)
		}
		opt := Options{Location: time.FixedZone("", 7200), Measures: measures}
		back, err := Read(strings.NewReader(b.String()), opt)
		if err != nil {
			t.Fatalf("what was written is refused: %v in\n%s", err, &b)
		}
		for what, c := range map[entry.What]column{entry.Charcoal: colCharcoal, entry.Ore: colOre} {
			var want float64
			for _, e := range es {
				for _, p := range entry.PartsIn(e.Event) {
					if m := float64(p.Mass.Value); p.What == what && p.Mass.Known && c.takes(m) {
						want += m
					}
				}
			}
			if got := totals(back, what, ""); math.Abs(got.kg-want) > 1e-6 {
				t.Fatalf("%s: %g kg of %g in\n%s", what, got.kg, want, &b)
			}
		}
		if !back[0].Happened.Equal(es[0].Happened) {
			t.Fatalf("lit at %v, not %v", back[0].Happened, es[0].Happened)
		}
		if lost == (Lost{}) {
			if d := cmp.Diff(eventsOf(es), eventsOf(back)); d != "" {
				t.Fatalf("nothing counted as lost, but:\n%s\n%s", d, &b)
			}
		}
		comesBack(t, back, opt)
	})
}
