package rehearse

import (
	"strconv"
	"time"

	"chargehand/model/entry"
)

// begins is where the own clock of a rehearsal begins: on a day that nobody takes for a real one.
var begins = time.Date(2000, 1, 1, 8, 0, 0, 0, time.UTC)

// Stream names the smelt of a rehearsal.
func Stream(number int64) string { return "undated-rehearsal-" + strconv.FormatInt(number, 10) }

// journal is what is keyed, in order, on the rehearsal's own clock.
type journal struct {
	stream  string
	entries []entry.Entry
}

// key keeps an event at so many s since light. The clock of acceptance runs a little behind what happened, as at a furnace.
func (j *journal) key(seconds float64, ev entry.Event) {
	at := time.Duration(seconds * float64(time.Second)).Truncate(time.Millisecond)
	j.entries = append(j.entries, entry.Entry{
		Version: entry.Version, Stream: j.stream, Seq: uint64(len(j.entries) + 1), Happened: begins.Add(at), Kept: begins.Add(at),
		Boot: "rehearsal", Mono: time.Hour + at, Screen: "fire", Event: ev,
	})
}
