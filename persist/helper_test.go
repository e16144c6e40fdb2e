package persist

import (
	"encoding/binary"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// secondProcess is what the test binary does instead of testing when it is
// started again with a variable set: by the variable, which is given its value.
var secondProcess = map[string]func(string){"PERSIST_TEST_WRITER": writeUntilKilled}

// TestMain lets the test binary stand in for the program in the tests that
// need a second process.
func TestMain(m *testing.M) {
	for name, run := range secondProcess {
		if value := os.Getenv(name); value != "" {
			run(value)
			return
		}
	}
	os.Setenv("GORACE", "atexit_sleep_ms=0") // or a second process that ends by itself waits a second under the race detector
	os.Exit(m.Run())
}

// What tests change behind the program's back: buckets and keys of the book,
// and where things stand in bbolt's pages.
var (
	bucketMeta    = []byte("meta")
	bucketStreams = []byte("streams")
	bucketSummary = []byte("summary")
	keySchema     = []byte("schema")
)

const (
	pageHeader = 16
	metaBytes  = 64
	atTxID     = 48 // in a meta, after the header
	atKind     = 8
	kindBranch = 1
)

func seqKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

// Two streams.
const (
	smelt = "2026-05-09-reedhollow-a"
	beta  = "2026-06-01-reedhollow-b"
)

var noon = entry.Wall(time.Date(2026, 5, 9, 12, 0, 0, 0, time.FixedZone("", 2*3600)))

// acks collects what became of entries.
type acks struct {
	mu   sync.Mutex
	all  []Ack    // without those that only note something
	note []string // what was noted
	kept map[string][]entry.Entry
	came chan struct{} // one for each ack, as long as there is room
}

func newAcks() *acks {
	return &acks{kept: map[string][]entry.Entry{}, came: make(chan struct{}, 1<<16)}
}

func (a *acks) acked(k Ack) {
	a.mu.Lock()
	if k.Noted != nil {
		a.note = append(a.note, k.Noted...)
	} else {
		a.all = append(a.all, k)
	}
	if k.Err == nil {
		for _, e := range k.Entries {
			a.kept[e.Stream] = append(a.kept[e.Stream], e)
		}
	}
	a.mu.Unlock()
	select {
	case a.came <- struct{}{}:
	default:
	}
}

func (a *acks) list() []Ack {
	a.mu.Lock()
	defer a.mu.Unlock()
	return append([]Ack(nil), a.all...)
}

// count is how many entries are kept, of all streams.
func (a *acks) count() (n int) {
	a.mu.Lock()
	defer a.mu.Unlock()
	for _, es := range a.kept {
		n += len(es)
	}
	return n
}

func (a *acks) noted() []string {
	a.mu.Lock()
	defer a.mu.Unlock()
	return append([]string(nil), a.note...)
}

// until waits for an ack that fits, those before included.
func (a *acks) until(t testing.TB, what string, fits func(Ack) bool) Ack {
	t.Helper()
	end := time.After(20 * time.Second)
	for {
		for _, k := range a.list() {
			if fits(k) {
				return k
			}
		}
		select {
		case <-a.came:
		case <-end:
			t.Fatalf("%s never came; there were %+v", what, a.list())
		}
	}
}

// placeOf gives a book's path in a folder of the test's own, or in folders under
// it. When the test ends the book is checked whole.
func placeOf(t testing.TB, under ...string) string {
	t.Helper()
	path := filepath.Join(append(append([]string{t.TempDir()}, under...), "book.db")...)
	t.Cleanup(func() {
		if t.Failed() || !disk.Exists(path) {
			return
		}
		r, err := Check(path, Options{Summarise: counted})
		if err != nil {
			t.Errorf("check: %v", err)
		}
		for _, f := range r.Findings {
			t.Errorf("check: %s", f)
		}
	})
	return path
}

// whole checks a book.
func whole(t *testing.T, path string) {
	t.Helper()
	r, err := Check(path, Options{Summarise: counted})
	must(t, err)
	for _, f := range r.Findings {
		t.Errorf("check: %s", f)
	}
}

// open opens a book with quick retries; it is closed when the test ends.
func open(t testing.TB, path string, opt Options) (*Book, *acks) {
	t.Helper()
	a := newAcks()
	opt.Acked = a.acked
	if opt.retryEvery == 0 {
		opt.retryEvery = 5 * time.Millisecond
	}
	if opt.Summarise == nil {
		opt.Summarise = counted
	}
	if opt.Clock == nil {
		opt.Clock = func() entry.Stamp { return entry.Stamp{Wall: noon.Add(time.Hour)} }
	}
	b, err := Open(path, opt)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b, a
}

// counted stands in for the model: it counts charges and takes the furnace of
// the light.
func counted(_ string, entries []entry.Entry) (s Summary) {
	for _, e := range entries {
		switch ev := e.Event.(type) {
		case entry.Light:
			s.UID, s.Furnace, s.Lit = ev.UID, ev.Furnace.Name, e.Happened
		case entry.Charge:
			s.Charges++
		}
	}
	return s
}

// note is an entry of a stream that can be told from the others.
func note(stream string, n int) entry.Entry {
	return entry.Entry{Stream: stream, Happened: noon.Add(time.Duration(n) * time.Second), Screen: "fire", Key: "n",
		Local: fmt.Sprintf("k%d", n), Event: entry.Note{Text: fmt.Sprintf("note %d", n)}}
}

func notes(stream string, from, to int) (es []entry.Entry) {
	for n := from; n <= to; n++ {
		es = append(es, note(stream, n))
	}
	return es
}

// keep keeps entries and waits for it.
func keep(t testing.TB, b *Book, es ...entry.Entry) []entry.Entry {
	t.Helper()
	kept, err := keepNow(b, es...)
	if err != nil {
		t.Fatal(err)
	}
	return kept
}

// keepNow keeps entries and waits until they are kept, or could not be written at
// the first try.
func keepNow(b *Book, es ...entry.Entry) (kept []entry.Entry, err error) {
	b.Keep(es...)
	if err := b.onWriter(func(w *writer) error {
		if queued, _ := w.b.taken(); len(queued) > 0 { // the writer has not come to it
			w.take(queued)
		}
		if n := w.waiting(); n > 0 {
			return &NotKeptError{Count: n, Cause: w.cause}
		}
		return nil
	}); err != nil {
		return nil, err
	}
	all, last := map[string][]entry.Entry{}, map[string]int{}
	for _, e := range es {
		if all[e.Stream] == nil {
			if all[e.Stream], err = b.Entries(e.Stream); err != nil {
				return nil, err
			}
		}
		last[e.Stream]++
	}
	for _, e := range es {
		n := len(all[e.Stream])
		kept = append(kept, all[e.Stream][n-last[e.Stream]])
		last[e.Stream]--
	}
	return kept, nil
}

func shut(t testing.TB, b *Book) {
	t.Helper()
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
}

// same fails when a stream does not read as it was kept.
func same(t testing.TB, from interface {
	Entries(string) ([]entry.Entry, error)
}, stream string, want []entry.Entry) {
	t.Helper()
	got, err := from.Entries(stream)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Fatalf("%s reads otherwise than it was kept:\n%s", stream, d)
	}
}

// linesOf gives the stored lines of a stream.
func linesOf(b *Book, stream string) ([][]byte, error) {
	r, err := b.Read(stream)
	return r.Lines, err
}

// must fails the test on an error of its own making.
func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func write(t testing.TB, path string, b []byte) {
	t.Helper()
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
}

// sound tells whether every page of a book can be followed.
func sound(path string) error {
	b, err := Options{}.filled().openSound(path)
	if err != nil {
		return err
	}
	return b.Close()
}

// twinLines reads a stream from its twin alone.
func twinLines(path, stream string) ([][]byte, error) {
	text := twin.Read(twin.Folder(path), stream)
	return text.Lines, text.Wrong(stream)
}

func twinOf(path, stream string) string { return twin.TextFile(twin.Folder(path), stream) }
