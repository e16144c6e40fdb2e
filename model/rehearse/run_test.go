package rehearse

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/truth"
	"chargehand/model/truth/zones"
)

// The same number gives the same entries, byte for byte; another one does not.
func TestTheSameNumberIsTheSameDay(t *testing.T) {
	a, err := Run(3, []truth.Mishap{truth.Bridge}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := Run(3, []truth.Mishap{truth.Bridge}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if a.Hash != b.Hash || !reflect.DeepEqual(a.Believed, b.Believed) || !reflect.DeepEqual(a.Warnings, b.Warnings) {
		t.Errorf("%s, then %s", a.Hash, b.Hash)
	}
	if c, err := Run(4, nil, Options{}); err != nil || c.Hash == a.Hash {
		t.Errorf("another number is the same day: %v", err)
	}
}

// What a crew keys can be kept: the clock never runs back, every event lies in its bounds, the seal stands directly after light
// and is opened by the last entry, and the smelt is a rehearsal.
func TestWhatTheCrewKeysCanBeKept(t *testing.T) {
	for n := int64(1); n <= 4; n++ {
		d, err := Run(n, ByChance(n), Options{Chance: true})
		if err != nil {
			t.Fatal(err)
		}
		last := time.Duration(0)
		for i, e := range d.Entries {
			if err := entry.Check(e.Event); err != nil {
				t.Errorf("furnace %d, entry %d: %v", n, e.Seq, err)
			}
			if e.Mono < last || e.Seq != uint64(i+1) {
				t.Errorf("furnace %d: entry %d at %v, the one before at %v", n, e.Seq, e.Mono, last)
			}
			last = e.Mono
		}
		light, _ := d.Entries[0].Event.(entry.Light)
		seal, _ := d.Entries[1].Event.(entry.Sealed)
		if !light.Rehearsal || d.Entries[len(d.Entries)-1].Kind() != entry.KindOpened {
			t.Errorf("furnace %d: not sealed and opened as a rehearsal is", n)
		}
		drawn, mishaps, err := Unseal(seal)
		if err != nil || drawn != truth.Draw(n, 1) || !reflect.DeepEqual(mishaps, ByChance(n)) || len(seal.Mishaps) > 0 {
			t.Errorf("furnace %d: the seal holds %v, %v", n, mishaps, err)
		}
	}
}

// A seal is opened by the furnace that it names, and by no other.
func TestASealNamesItsFurnace(t *testing.T) {
	d, err := Run(2, []truth.Mishap{truth.BadOre}, Options{By: Zones})
	if err != nil {
		t.Fatal(err)
	}
	seal := d.Entries[1].Event.(entry.Sealed)
	drawn, mishaps, err := Unseal(seal)
	if err != nil || seal.Truth != zones.Version || drawn != zones.Draw(2, 1) || len(mishaps) != 1 {
		t.Errorf("sealed by %s: %v, %v, %v", seal.Truth, drawn, mishaps, err)
	}
	for _, e := range d.Entries {
		if err := entry.Check(e.Event); err != nil {
			t.Errorf("entry %d: %v", e.Seq, err)
		}
	}
	l, err := Resume(d.Entries)
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := l.f.responder.(*zones.Furnace); !ok || !l.Over() || l.f.Look() != d.crew.f.Look() || l.bloom != d.BloomKg {
		t.Errorf("a day that a crew worked alone leads to a %T, over %v: %+v, was %+v", l.f.responder, l.Over(), l.f.Look(), d.crew.f.Look())
	}
	seal.Truth = "zones 0"
	if _, _, err := Unseal(seal); err == nil {
		t.Error("a seal of an unknown furnace is opened")
	}
	if _, err := Run(2, nil, Options{By: "clay"}); err == nil {
		t.Error("a furnace of clay answers")
	}
}

// Nothing of the sealed truth reaches a reading or a warning: with another seal in its place, or an empty one, they are the
// same at every moment, before it is opened and after.
func TestNothingSealedReachesAReading(t *testing.T) {
	d, err := Run(3, []truth.Mishap{truth.TuyereBlocked}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	other, err := Seal(77, []truth.Mishap{truth.Crack}, true)
	if err != nil {
		t.Fatal(err)
	}
	for _, seal := range []entry.Sealed{other, {Number: 3}} {
		swapped := append([]entry.Entry(nil), d.Entries...)
		swapped[1].Event = seal
		a, b := session.Open("s", d.Entries), session.Open("s", swapped)
		end := a.End() + time.Hour
		for at := time.Duration(0); at <= end; at += 17 * time.Minute {
			is, was := a.AsOf(a.KnownAt(at), at), b.AsOf(b.KnownAt(at), at)
			if !reflect.DeepEqual(is.Reading(), was.Reading()) || !reflect.DeepEqual(is.Warnings(), was.Warnings()) {
				t.Fatalf("another seal reads otherwise at %v", at)
			}
		}
	}
}

// Only this package knows the furnace that answers, and only it opens a seal.
func TestOnlyTheRehearsalOpensTheSeal(t *testing.T) {
	const root = "../.."
	files, drawn := token.NewFileSet(), regexp.MustCompile(`\.Drawn\b`)
	err := filepath.WalkDir(root, func(path string, f fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if f.IsDir() && strings.HasPrefix(f.Name(), ".") && path != root {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		dir, _ := filepath.Rel(root, filepath.Dir(path))
		if dir = filepath.ToSlash(dir); dir == "model/rehearse" || strings.HasPrefix(dir, "model/truth") {
			return nil
		}
		src, err := parser.ParseFile(files, path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range src.Imports {
			if strings.HasPrefix(i.Path.Value, `"chargehand/model/truth`) {
				t.Errorf("%s imports the furnace that answers", path)
			}
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if strings.Contains(string(text), "rehearse.Unseal(") || dir != "model/entry" && drawn.Match(text) {
			t.Errorf("%s opens a seal", path)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
