//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/invented"
)

// A second screen watches what is keyed at the first, by its own process: it shows each act,
// takes none, outlives the first, goes on with it after it was killed, and leaves no trace in
// the book. With no fire alight it waits for one.
func TestASecondScreenWatches(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.Shows("practise")
	far := openTerminal(t, dir, 80, 24, "watch")
	far.Shows("watching", "no fire is alight")
	s.lights()
	far.Shows("watching", "since it was lit")
	s.Does("f", "fill: 1 bucket", "· kept ✓")
	far.Shows("fill: 1 bucket")
	s.Does("c", "charge 1", "· kept ✓")
	far.Shows("charge 1")
	far.Does("c", "only watches")
	far.Does(" ", "no warning stands") // the far view
	time.Sleep(time.Second)            // or it is a leaning glove
	far.Does(" ", "watching", "charge 1")
	s.killedAtRest()
	far.Does("s", "only watches")
	s = openTerminal(t, dir, 120, 36)
	s.Shows("go on with")
	s.Does("g", "this is ")
	s.Does("c", "charge 2", "· kept ✓")
	far.Shows("charge 2")
	far.Press("\x03")
	if code := far.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	far.Restored()
	s.allKept()
	s.killedAtRest()
	charges := 0
	for _, e := range readSmelt(t, bookIn(dir), onlySmelt(t, dir)) {
		if e.Kind() == entry.KindCharge {
			charges++
		}
	}
	if charges != 2 {
		t.Errorf("%d charges in the book", charges)
	}
	if out := says(t, dir, "export", "--json", onlySmelt(t, dir)); strings.Count(out, `"key":"s"`) > 0 {
		t.Error("a key of the screen that watches is in the book")
	}
	says(t, dir, "check")
}

// A finished smelt is shown again while another screen writes the book, and so is the
// invented one, which stands in no book.
func TestReplayFromTheCommandLine(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	log := filepath.Join(dir, "log.csv")
	if err := os.WriteFile(log, []byte("clock,event,charcoal_kg\n10:00,charge,1.8\n10:12,charge,1.8\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	says(t, dir, "import", log, "--furnace", "Old Bank,bore=25,stack=50")
	imported := onlySmelt(t, dir)
	s := openTerminal(t, dir, 120, 36)
	s.Shows("practise")
	again := openTerminal(t, dir, 120, 36, "replay", imported)
	again.Shows(imported, "watching", "as we know it")
	invented := openTerminal(t, dir, 120, 36, "replay", invented.ID)
	invented.Shows("invented", "this is the past", "in no book")
	s.Does("v", "other screens")
}
