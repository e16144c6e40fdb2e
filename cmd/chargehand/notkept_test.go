package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

// What could not be kept is written where the person says, in a form that rescue
// takes in; a file that is there is left alone.
func TestWhatIsNotKeptIsOfferedAnotherPlace(t *testing.T) {
	dir := t.TempDir()
	there, free := filepath.Join(dir, "there"), filepath.Join(dir, "free")
	if err := os.WriteFile(there, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	at := time.Date(2026, 5, 9, 12, 0, 0, 0, time.UTC)
	entries := []entry.Entry{
		{Version: 1, Stream: "a", Seq: 7, Happened: at, Event: entry.Note{Text: "numbered"}},
		{Stream: "a", Happened: at, Event: entry.Note{Text: "not yet"}},
		{Stream: "house", Happened: at, Event: entry.Note{Text: "of the house"}},
	}
	var out bytes.Buffer
	offer(strings.NewReader(there+"\n"+free+"\n"), &out, entries)
	if b, _ := os.ReadFile(there); string(b) != "mine" {
		t.Errorf("the file that was there holds %q", b)
	}
	found, err := twin.Salvage(free)
	if err != nil || len(found["a"]) != 2 || len(found["house"]) != 1 {
		t.Errorf("found %d streams, %v; it said %q", len(found), err, out.String())
	}
	out.Reset()
	offer(strings.NewReader("\n"), &out, entries)
	if files, _ := os.ReadDir(dir); len(files) != 2 {
		t.Errorf("there are %v", files)
	}
}
