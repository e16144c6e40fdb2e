//go:build linux

package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist"
	"chargehand/tui"
)

// tell gives the middle and the ninety-ninth of a hundred.
func tell(b *testing.B, took []time.Duration, what string) {
	slices.Sort(took)
	for _, p := range []int{50, 99} {
		b.ReportMetric(float64(took[(len(took)-1)*p/100].Microseconds())/1000, fmt.Sprintf("ms-%s-p%d", what, p))
	}
	b.ReportMetric(0, "ns/op")
}

// half is the time that half of them are below.
func half(took []time.Duration) time.Duration {
	slices.Sort(took)
	return took[(len(took)-1)/2]
}

// From the start of the process to the last line of the first frame, and to the
// line of the unfinished smelt, for which the shelf must have been read; in turn
// with the least program of the same libraries, of which x-bare is the multiple.
//
//	go test ./cmd/chargehand -run '^$' -bench Start -benchtime 60x
func BenchmarkStart(b *testing.B) {
	for _, smelts := range []int{0, 1000} {
		dir := b.TempDir()
		fillBook(b, dir, smelts)
		b.Run(fmt.Sprintf("%d smelts", smelts), func(b *testing.B) {
			var first, shelf, bare []time.Duration
			for range b.N {
				plain := bareWire(b, 200, 60)
				bare = append(bare, plain.until("help").Sub(plain.started))
				plain.end()
				w := openWire(b, dir, 200, 60)
				first = append(first, w.until("help").Sub(w.started))
				if smelts > 0 {
					shelf = append(shelf, w.until("go on with").Sub(w.started))
				}
				w.end()
			}
			tell(b, first, "frame")
			tell(b, bare, "bare")
			b.ReportMetric(float64(half(first))/float64(half(bare)), "x-bare")
			if smelts > 0 {
				tell(b, shelf, "shelf")
			}
		})
	}
}

// fillBook puts so many invented smelts of 500 entries into a new book. The
// newest is not finished.
func fillBook(b *testing.B, dir string, smelts int) {
	b.Helper()
	if err := os.MkdirAll(filepath.Dir(bookIn(dir)), 0o700); err != nil {
		b.Fatal(err)
	}
	book, err := persist.Open(bookIn(dir), persist.Options{Summarise: shelf.Of})
	if err != nil {
		b.Fatal(err)
	}
	for n := range smelts {
		id, entries := inventedDay(n, n == smelts-1)
		if _, err := book.Import(id, entries); err != nil {
			b.Fatal(err)
		}
	}
	if err := book.Close(); err != nil {
		b.Fatal(err)
	}
}

// inventedDay is the n-th invented smelt, of 500 entries in ten hours.
func inventedDay(n int, unfinished bool) (string, []entry.Entry) {
	lit := today.AddDate(0, 0, n-1000)
	id := tui.SmeltID(lit, "bench", nil)
	starter := tui.Starters()[0]
	events := []entry.Event{entry.Light{UID: id, Furnace: starter.Furnace, Measures: starter.Measures, Recipe: starter.Recipe}}
	for len(events) < 498 {
		events = append(events,
			entry.Charge{Parts: starter.Recipe}, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(700))},
			entry.Look{At: entry.AtPeep, Sees: "white"}, entry.Note{Text: "as ever"}, entry.Keys{Pressed: []entry.Press{{Key: "v"}, {Key: "esc"}}})
	}
	events = append(events[:498], entry.BurnDown{}, entry.Extract{})
	if unfinished {
		events[498], events[499] = entry.Rod{}, entry.Rod{}
	}
	entries := make([]entry.Entry, len(events))
	for i, ev := range events {
		at := time.Duration(i) * 72 * time.Second
		entries[i] = entry.Entry{
			Version: entry.Version, Stream: id, Happened: lit.Add(at), Kept: lit.Add(at),
			Screen: "fire", Event: ev,
		}
	}
	return id, entries
}

// From a key to the bytes of its answer on the terminal, and to the word kept
// behind it, keys at moments that have nothing to do with the frames: a scoop
// booked and crossed out again, in the last of ten hours with 500 entries.
//
//	go test ./cmd/chargehand -run '^$' -bench KeyToScreen -benchtime 300x
func BenchmarkKeyToScreen(b *testing.B) {
	dir := b.TempDir()
	workedDay(b, dir)
	b.Run("200x60", func(b *testing.B) {
		w := openWire(b, dir, 200, 60)
		defer w.end()
		w.until("go on with")
		w.press("g")
		w.until("this is")
		var answered, kept []time.Duration
		for n := range b.N {
			key, answer := "s", "of ore, to charge"
			if n%2 == 1 {
				key, answer = "u", "crossed out"
			}
			time.Sleep(200*time.Millisecond + time.Duration(rand.IntN(100_000))*time.Microsecond)
			w.skip()
			pressed := time.Now()
			w.press(key)
			answered = append(answered, w.until(answer).Sub(pressed))
			kept = append(kept, w.until("· kept").Sub(pressed))
		}
		tell(b, answered, "answer")
		tell(b, kept, "kept")
	})
}

// workedDay keys ten hours of practice into a new book, up to a minute ago.
func workedDay(b *testing.B, dir string) {
	b.Helper()
	if err := os.MkdirAll(filepath.Dir(bookIn(dir)), 0o700); err != nil {
		b.Fatal(err)
	}
	end := time.Now().Add(-time.Minute).UTC().Truncate(time.Millisecond)
	d := sit(b, bookIn(dir), entry.Stamp{Wall: end.Add(-10 * time.Hour), Boot: "before", Mono: time.Hour})
	d.press("p")
	for n := 1; n <= 83; n++ { // six entries each
		d.press("c", "s", "l", "p", "w", "t", "r")
		d.wait(end.Add(-10*time.Hour + time.Duration(n)*433*time.Second))
	}
	d.leave()
}

// A fire that nobody touches, on a big screen, looked at once a second: its
// share of one core (by the scheduler's account), and its own memory; beside it
// the least program of the same libraries at the same rate.
//
//	go test ./cmd/chargehand -run '^$' -bench Idle -benchtime 1x
func BenchmarkIdle(b *testing.B) {
	const long = time.Minute
	for _, size := range [][2]uint16{{80, 24}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			for range b.N {
				dir := b.TempDir()
				workedDay(b, dir)
				w := openWire(b, dir, size[0], size[1])
				w.until("go on with")
				w.press("g")
				w.until("this is")
				plain := bareWire(b, size[0], size[1])
				plain.until("help")
				time.Sleep(8 * time.Second) // what opening leaves to do: a summary is made in the first pause of five seconds
				before, bare := ranFor(b, w.cmd.Process.Pid), ranFor(b, plain.cmd.Process.Pid)
				time.Sleep(long)
				ran, bareRan := ranFor(b, w.cmd.Process.Pid)-before, ranFor(b, plain.cmd.Process.Pid)-bare
				plain.end()
				b.ReportMetric(100*ran.Seconds()/long.Seconds(), "%-of-a-core")
				b.ReportMetric(ran.Seconds()/bareRan.Seconds(), "x-bare")
				b.ReportMetric(ownMemory(b, w.cmd.Process.Pid), "MB")
				b.ReportMetric(0, "ns/op")
				w.end()
			}
		})
	}
}

// ranFor is how long the threads of a process have run.
func ranFor(b *testing.B, pid int) time.Duration {
	b.Helper()
	accounts, err := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/schedstat", pid))
	if err != nil || len(accounts) == 0 {
		b.Fatalf("no account of process %d: %v", pid, err)
	}
	var sum time.Duration
	for _, a := range accounts {
		text, err := os.ReadFile(a)
		if err != nil {
			b.Fatal(err)
		}
		ns, err := strconv.ParseInt(strings.Fields(string(text))[0], 10, 64)
		if err != nil {
			b.Fatal(err)
		}
		sum += time.Duration(ns)
	}
	return sum
}

// ownMemory is what a process has in memory that is no file's, in MB.
func ownMemory(b *testing.B, pid int) float64 {
	b.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		b.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if f := strings.Fields(line); len(f) == 3 && f[0] == "RssAnon:" {
			kb, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				b.Fatal(err)
			}
			return kb * 1024 / 1e6
		}
	}
	b.Fatal("no RssAnon in the status")
	return 0
}

// The program as it is given away: stripped, without cgo.
//
//	go test ./cmd/chargehand -run '^$' -bench Binary -benchtime 1x
func BenchmarkBinary(b *testing.B) {
	for range b.N {
		path := filepath.Join(b.TempDir(), "chargehand")
		cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", path, ".")
		cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("%v: %s", err, out)
		}
		info, err := os.Stat(path)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(info.Size())/1e6, "MB")
		b.ReportMetric(0, "ns/op")
	}
}
