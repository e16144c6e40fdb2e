package entry

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"
	"time"
)

// byLibrary writes an entry as encoding/json writes its frame and event, and
// the parts without what they append themselves.
func byLibrary(t *testing.T, e Entry) string {
	t.Helper()
	marshal := func(v any) []byte {
		var b bytes.Buffer
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		if err := enc.Encode(v); err != nil {
			t.Fatal(err)
		}
		return bytes.TrimSuffix(b.Bytes(), []byte("\n"))
	}
	w := wire{
		V: Version, Stream: e.Stream, Seq: e.Seq, Prev: e.Prev, Happened: formatTime(e.Happened), UncertainS: e.Uncertain.Seconds(),
		Boot: e.Boot, MonoMs: e.Mono.Milliseconds(), By: e.By, Screen: e.Screen, Key: e.Key, Group: e.Group, Local: e.Local, Kind: e.Kind(),
	}
	if !e.Kept.IsZero() {
		w.Kept = formatTime(e.Kept)
	}
	if e.Event != nil {
		if b := marshal(e.Event); string(b) != "{}" {
			w.Event = b
		}
	}
	return string(marshal(w))
}

func TestWrittenAsTheLibraryWritesIt(t *testing.T) {
	es := full()
	for _, name := range []string{"", "Eimer", `"big" \ bucket`, "Kübel 🪣", "a < b & c", "tab\there", "\x7f\xff\u2028"} {
		for _, v := range []float64{0, math.Copysign(0, -1), 1, -2.5, 0.1, 1e-6, 1e-7, 123456789.25, 1e15, 1e21, 5e-324, math.MaxFloat64} {
			e := es[4]
			e.Stream, e.By, e.Key, e.Uncertain = name, name, name, time.Duration(v)
			e.Event = Charge{Parts: Parts{{What: What(name), Lot: name, Count: Some(Count(v))}, {Measure: name, Mass: Some(Kilogram(v))}}}
			es = append(es, e)
		}
	}
	es = append(es, Entry{Event: Charge{}}, Entry{Event: Charge{Parts: Parts{}}}, Entry{})
	for _, e := range es {
		got, err := Encode(e)
		if err != nil {
			t.Fatal(err)
		}
		if want := byLibrary(t, e); string(got) != want {
			t.Errorf("wrote\n%s\nthe library writes\n%s", got, want)
		}
	}
}

func TestWhatIsNoNumberIsNotWritten(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, ev := range []Event{Charge{Parts: Parts{{What: Ore, Mass: Some(Kilogram(v))}}}, Dip{BelowRim: Some(Centimetre(v))},
			Amend{Event: Charge{Parts: Parts{{What: Ore, Count: Some(Count(v))}}}}} {
			if b, err := Encode(Entry{Stream: "s", Seq: 1, Event: ev}); err == nil {
				t.Errorf("%v was written: %s", v, b)
			}
		}
	}
}
