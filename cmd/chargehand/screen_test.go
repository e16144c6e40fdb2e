package main

import (
	"errors"
	"path/filepath"
	"testing"

	"chargehand/model/entry"
	"chargehand/persist"
)

// An entry that the book will never take is told to the screen as refused.
func TestRefusedIsNotKept(t *testing.T) {
	acks := make(chan persist.Ack, 1)
	book, err := persist.Open(filepath.Join(t.TempDir(), "book.db"), persist.Options{Acked: func(a persist.Ack) { acks <- a }})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	book.Keep(entry.Entry{Stream: "not a name!", Event: entry.Rod{}})
	k := keptOf(<-acks)
	if len(k.Entries) != 0 || len(k.Refused) != 1 || !errors.As(k.Err, new(*persist.RefusedError)) {
		t.Errorf("the screen is told %+v", k)
	}
}
