//go:build linux && (amd64 || arm64)

package persist

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

var everyCall = flag.Bool("everycall", false, "TestEveryCallFails tries each call with each fault, instead of each with one of them")

const (
	perRound  = 9 // entries that a round of keepTwice keys
	callsBase = 20
)

func init() {
	secondProcess["PERSIST_TEST_KEEP_TWICE"] = func(path string) { gated(func() { keepTwice(path) }) }
	secondProcess["PERSIST_TEST_RESCUE"] = func(path string) { gated(func() { rescueTwice(path) }) }
}

func gated(run func()) {
	if err := enterGate(); err != nil {
		fmt.Println(err)
		return
	}
	run()
}

// keepTwice opens a book, keeps entries in three streams and closes it, twice
// over, and says what became of each entry. Opening that fails is tried once
// more, as a person would.
func keepTwice(path string) {
	dropped := func(word string, es []entry.Entry) {
		for _, e := range es {
			fmt.Println(word, e.Event.(entry.Note).Text)
		}
	}
	for round := range 2 {
		opt := Options{Summarise: counted, retryEvery: time.Millisecond, idle: time.Millisecond, Acked: func(a Ack) {
			if a.Err != nil {
				dropped("refused", a.Entries)
				return
			}
			for _, e := range a.Entries {
				line, err := entry.Encode(e)
				fmt.Println("kept", string(line), err)
			}
		}}
		b, err := Open(path, opt)
		if err != nil {
			fmt.Println("closed", err)
			if b, err = Open(path, opt); err != nil {
				fmt.Println("closed", err)
				continue
			}
		}
		n := perRound * round
		keepNow(b, note(smelt, n+1))
		keepNow(b, append(notes(smelt, n+2, n+3), note(beta, n+4))...)
		keepNow(b, note(entry.House, n+5))
		keepNow(b, notes(beta, n+6, n+9)...)
		time.Sleep(3 * time.Millisecond) // a pause, in which summaries are renewed
		var lost *NotKeptError
		if err := b.Close(); errors.As(err, &lost) {
			dropped("lost", lost.Entries)
			fmt.Println("cause", lost)
		} else if err != nil {
			fmt.Println("ending", err)
		}
	}
	fmt.Println("end")
}

// fault is how calls fail: the n-th alone, or all from the n-th on; those that
// change the disk, or those that read it.
type fault struct {
	name  string
	errno syscall.Errno
	on    bool
	reads bool
}

var faultKinds = []fault{
	{"EIO once", syscall.EIO, false, false}, {"ENOSPC once", syscall.ENOSPC, false, false},
	{"EIO from then on", syscall.EIO, true, false}, {"ENOSPC from then on", syscall.ENOSPC, true, false},
	{"reading EIO once", syscall.EIO, false, true}, {"reading EIO from then on", syscall.EIO, true, true},
}

// eachCall runs a second process again and again, a later call failing each
// time, until none is left to fail.
func eachCall(t *testing.T, f fault, of, each int, again func(t *testing.T, folder string, judge func(diskCall) syscall.Errno)) {
	met, name := 0, ""
	defer func() {
		if t.Failed() {
			t.Logf("at %s", name)
		}
	}()
	for n := 1 + of; ; n += each {
		folder := t.TempDir()
		count, failed := 0, diskCall{}
		again(t, folder, func(c diskCall) syscall.Errno {
			if c.changes == f.reads {
				return 0
			}
			count++
			if count == n {
				failed, name = c, fmt.Sprintf("%s %d: %s %s", f.name, n, c.name, strings.TrimPrefix(c.path, folder))
			}
			if count == n || f.on && count > n {
				return f.errno
			}
			return 0
		})
		if t.Failed() {
			return
		}
		if failed.name == "" {
			break
		}
		met++
		os.RemoveAll(folder)
	}
	if met < callsBase/each {
		t.Errorf("only %d calls failed", met)
	}
	t.Logf("%s: %d calls failed in turn", f.name, met)
}

// strides shares the calls out among the kinds of fault, so that each call
// fails at least once in an ordinary run.
func strides(kind int) (of, each int) {
	if *everyCall {
		return 0, 1
	}
	return kind, len(faultKinds)
}

// Every call on the disk fails in turn, in the way that a well-tested
// store is tested: whatever fails, nothing called kept is lost, nothing is there
// twice, every entry's fate is told, and the next opening finds a whole book.
func TestEveryCallFails(t *testing.T) {
	for i, f := range faultKinds {
		t.Run(f.name, func(t *testing.T) {
			t.Parallel()
			of, each := strides(i)
			eachCall(t, f, of, each, func(t *testing.T, folder string, judge func(diskCall) syscall.Errno) {
				path := filepath.Join(folder, "shelf", "book.db")
				afterwards(t, path, behindGate(t, folder, judge, "PERSIST_TEST_KEEP_TWICE="+path))
			})
		})
	}
}

// afterwards holds what a process said against what is found in its book.
func afterwards(t *testing.T, path, said string) {
	t.Helper()
	fate, kept := map[string]string{}, map[string][]entry.Entry{}
	closed, ended := 0, false
	for line := range strings.Lines(said) {
		word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
		switch word {
		case "kept", "lost":
			text := rest
			if word == "kept" {
				e, err := entry.Decode([]byte(strings.TrimSuffix(rest, " <nil>")))
				if err != nil {
					t.Fatalf("%v: %s", err, line)
				}
				text = e.Event.(entry.Note).Text
				kept[e.Stream] = append(kept[e.Stream], e)
			}
			if fate[text] != "" {
				t.Errorf("%s was %s and then %s", text, fate[text], word)
			}
			fate[text] = word
		case "cause":
			if !strings.Contains(rest, filepath.Dir(path)) {
				t.Errorf("what is lost is told without saying where: %s", rest)
			}
		case "closed":
			closed++
			if !strings.Contains(rest, filepath.Dir(path)) {
				t.Errorf("opening does not say where: %s", rest)
			}
		case "ending": // all is kept, only the closing failed
			if !strings.Contains(rest, path) {
				t.Errorf("closing does not say where: %s", rest)
			}
		case "end":
			ended = true
		default:
			t.Errorf("it said: %s", line)
		}
	}
	if !ended || closed == 0 && len(fate) != 2*perRound {
		t.Errorf("of %d entries the fate of %d was told:\n%s", 2*perRound, len(fate), said)
	}
	b, _ := open(t, path, Options{})
	found := map[string]bool{}
	for _, stream := range []string{smelt, beta, entry.House} {
		es, err := b.Entries(stream)
		if none := new(twin.NoStreamError); err != nil && !errors.As(err, &none) {
			t.Fatal(err)
		}
		for i, e := range es {
			text := e.Event.(entry.Note).Text
			if found[text] || e.Seq != uint64(i+1) {
				t.Errorf("%s, entry %d: %s is there twice or out of order", stream, e.Seq, text)
			}
			found[text] = true
		}
		for _, k := range kept[stream] {
			if k.Seq > uint64(len(es)) {
				t.Fatalf("%s: entry %d was called kept and is not there", stream, k.Seq)
			}
			if d := cmp.Diff(k, es[k.Seq-1]); d != "" {
				t.Errorf("%s: entry %d was kept otherwise:\n%s", stream, k.Seq, d)
			}
		}
	}
	shut(t, b)
	r, err := Check(path, Options{Summarise: counted})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Findings {
		t.Errorf("check: %s", f)
	}
	if t.Failed() {
		t.Logf("the second process said:\n%s", said)
	}
}

// rescueTwice rescues a book, and again if that failed.
func rescueTwice(path string) {
	for range 2 {
		if _, err := Rescue(path, Options{}); err != nil {
			fmt.Println("failed", err)
			continue
		}
		break
	}
	fmt.Println("end")
}

// Every call of a rescue fails in turn: nothing of book and twins is lost, and
// a rescue on a sound disk brings back all.
func TestEveryCallOfARescueFails(t *testing.T) {
	made := filepath.Join(t.TempDir(), "book.db")
	b, a := open(t, made, Options{idle: time.Hour}) // a summary in between would move the last pages behind the cut
	keep(t, b, notes(smelt, 1, 60)...)
	keep(t, b, notes(beta, 1, 3)...)
	shut(t, b)
	text := read(t, made)
	lines := read(t, twinOf(made, smelt))
	for i, f := range faultKinds {
		t.Run(f.name, func(t *testing.T) {
			t.Parallel()
			of, each := strides(i)
			eachCall(t, f, of, each, func(t *testing.T, folder string, judge func(diskCall) syscall.Errno) {
				path := filepath.Join(folder, "book.db")
				write(t, path, text[:len(text)-len(text)/4]) // the book lacks its end, one twin its end, the other is gone
				if err := os.Mkdir(twin.Folder(path), 0o700); err != nil {
					t.Fatal(err)
				}
				write(t, twinOf(path, smelt), lines[:len(lines)-10])
				said := behindGate(t, folder, judge, "PERSIST_TEST_RESCUE="+path)
				if !strings.HasSuffix(said, "end\n") {
					t.Errorf("it said: %s", said)
				}
				if _, err := Rescue(path, Options{}); err != nil {
					t.Fatal(err)
				}
				b, _ := open(t, path, Options{})
				for s, want := range a.kept {
					same(t, b, s, want)
				}
				shut(t, b)
			})
		})
	}
}
