package persist

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// lit is a smelt that begins with its light.
func lit(uid, source string) []entry.Entry {
	light := entry.Entry{Happened: noon, Event: entry.Light{UID: uid, SourceHash: source, Furnace: entry.Furnace{Name: "Reed Hollow"}}}
	charge := entry.Entry{Happened: noon, Local: "c1", Event: entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}}}}
	level := entry.Entry{Happened: noon, Event: entry.Level{Charge: entry.Ref{Local: "c1"}, Remark: entry.Heaped}}
	return []entry.Entry{light, charge, level}
}

func TestExportAndImportAreExact(t *testing.T) {
	path := placeOf(t)
	b, _ := open(t, path, Options{})
	kept, err := b.Import(smelt, lit("a1", ""))
	if err != nil {
		t.Fatal(err)
	}
	if got := kept[2].Event.(entry.Level).Charge; got != (entry.Ref{Seq: 2}) {
		t.Errorf("the remark names %+v", got)
	}
	lines, err := linesOf(b, smelt)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := ExportJSON(&out, lines); err != nil {
		t.Fatal(err)
	}
	if twin := read(t, twinOf(path, smelt)); !bytes.Equal(twin, out.Bytes()) {
		t.Errorf("export and twin differ:\n%s\n%s", out.Bytes(), twin)
	}
	for name, text := range map[string]string{"as it was": out.String(), "from an editor": strings.ReplaceAll(out.String(), "\n", "\r\n")} {
		j, err := ReadJSON(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if es, err := j.Entries(); err != nil || !cmp.Equal(es, kept) {
			t.Errorf("%s: %v, %v", name, es, err)
		}
		other, _ := open(t, placeOf(t), Options{})
		if err := other.ImportJSON(j); err != nil {
			t.Fatal(err)
		}
		back, err := linesOf(other, smelt)
		if err != nil || !cmp.Equal(lines, back) {
			t.Errorf("%s: the lines came back as %s, %v", name, back, err)
		}
		if got := keep(t, other, note(smelt, 4)); got[0].Seq != 4 {
			t.Errorf("%s: the next is %d", name, got[0].Seq)
		}
	}
}

func TestTheSameSmeltTwiceIsNoticed(t *testing.T) {
	b, _ := open(t, placeOf(t), Options{})
	if _, err := b.Import(smelt, lit("a1", "f00d")); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ stream, uid, source, by string }{
		{smelt, "b2", "beef", "id"}, {"undated-x-a", "a1", "", "uid"}, {"undated-x-a", "b2", "f00d", "source"},
	} {
		_, err := b.Import(c.stream, lit(c.uid, c.source))
		var present *PresentError
		if !errors.As(err, &present) || present.By != c.by || !slices.Equal(present.As, []string{smelt}) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	if names, _ := b.Streams(); len(names) != 1 {
		t.Errorf("there are %v", names)
	}
	if _, err := b.Import("undated-x-a", lit("", "")); err != nil {
		t.Errorf("a smelt without uid: %v", err)
	}
	if _, err := b.Import("undated-x-b", lit("", "")); err != nil {
		t.Errorf("another without uid: %v", err)
	}
}

func TestAnImportThatFailsLeavesNothing(t *testing.T) {
	f := &faults{}
	path := placeOf(t)
	b, _ := open(t, path, f.options())
	bad := lit("a1", "")
	bad[2].Event = entry.Strike{Target: entry.Ref{Local: "nowhere"}}
	var refused *RefusedError
	if _, err := b.Import(smelt, bad); !errors.As(err, &refused) {
		t.Errorf("got %v", err)
	}
	if _, err := b.Import("No Name", lit("a1", "")); !errors.As(err, &refused) {
		t.Errorf("got %v", err)
	}
	f.set(func(f *faults) { f.book = true })
	if _, err := b.Import(smelt, lit("a1", "")); !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("got %v", err)
	}
	f.set(func(f *faults) { f.book = false })
	if names, err := b.Streams(); len(names) > 0 || err != nil || disk.Exists(twinOf(path, smelt)) {
		t.Errorf("left behind: %v, %v", names, err)
	}
	if _, err := b.Import(smelt, lit("a1", "")); err != nil {
		t.Errorf("with room again: %v", err)
	}
}

func TestFilesThatAreNoExport(t *testing.T) {
	b, _ := open(t, placeOf(t), Options{})
	if _, err := b.Import(smelt, lit("a1", "")); err != nil {
		t.Fatal(err)
	}
	lines, _ := linesOf(b, smelt)
	whole := string(twin.Joined(lines))
	for name, c := range map[string]struct {
		text string
		line int
	}{
		"empty":        {"", 1},
		"a table":      {"clock,event\n12:00,fill\n", 1},
		"cut":          {whole[:len(whole)-9], 3},
		"one changed":  {strings.Replace(whole, "1.8", "1.9", 1), 2},
		"endless":      {whole + strings.Repeat("x", entry.MaxBytes+2), 4},
		"out of order": {string(twin.Joined([][]byte{lines[1], lines[0], lines[2]})), 2},
	} {
		_, err := ReadJSON(strings.NewReader(c.text))
		var bad *twin.LineError
		if !errors.As(err, &bad) || bad.Line != c.line || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := b.ImportJSON(Journal{Stream: "undated-x-a", Lines: lines}); err == nil {
		t.Error("lines of another stream were imported")
	}
}

func TestImportRefusesWhatIsOutOfBounds(t *testing.T) {
	b, _ := open(t, placeOf(t), Options{})
	es := append(lit("a1", ""), entry.Entry{Stream: smelt, Happened: noon, Event: entry.Dip{BelowRim: entry.Some(entry.Centimetre(9999))}})
	var refused *RefusedError
	if _, err := b.Import(smelt, es); !errors.As(err, &refused) || !strings.Contains(refused.Why, "below rim") || !strings.Contains(refused.Why, "9999") {
		t.Errorf("got %v", err)
	}
	if ss, err := b.Streams(); err != nil || slices.Contains(ss, smelt) {
		t.Errorf("half done: %q, %v", ss, err)
	}
}
