package main

import (
	"fmt"
	"time"

	"chargehand/model/doubt"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/words"
)

// tellDoubts says of each entry of a smelt that was taken in what can hardly be: a wrong
// unit or a slip of the pen. On the screen it is asked about before it is kept; a log is
// kept as it was written.
func tellDoubts(w world, c common, id string) error {
	entries, err := smelt(w, c, id)
	if err != nil {
		return err
	}
	s := session.Open(id, entries)
	for l := range s.Lines() {
		if l.Event == nil || l.Struck() || l.Entry.Sure != "" {
			continue
		}
		for _, d := range doubt.Of(l.Event, s.AsOf(fold.All, l.At-time.Millisecond).Reading()) {
			fmt.Fprintln(w.out, words.ImportedDoubt(s.Wall(l), words.Units{}.Doubt(d)))
		}
	}
	return nil
}
