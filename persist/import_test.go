package persist

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

func init() { secondProcess["PERSIST_TEST_IMPORTER"] = importUntilKilled }

// long is a smelt with n readings after its light.
func long(n int) []entry.Entry {
	es := lit("a1", "f00d")
	for i := range n {
		es = append(es, entry.Entry{Happened: noon, Event: entry.Note{Text: fmt.Sprintf("reading %d", i)}})
	}
	return es
}

// TestKeepingGoesOnDuringAnImport keys a charge after each tenth slice of an
// import of 50,000 rows. Each must be kept before two more slices are in.
func TestKeepingGoesOnDuringAnImport(t *testing.T) {
	path := placeOf(t)
	rows := uint64(50_000)
	if testing.Short() {
		rows = 25_000
	}
	var b *Book
	var a *acks
	keyed, late, slices := 0, 0, 0
	kept := func() int { a.mu.Lock(); defer a.mu.Unlock(); return len(a.kept[beta]) }
	b, a = open(t, path, Options{Progress: func(done, of int) {
		if done <= of/2 || done == of { // lines are being made, or it is over
			return
		}
		if slices++; slices%10 == 3 && kept() != keyed {
			late++
		}
		if slices%10 == 1 {
			keyed++
			b.Keep(note(beta, keyed))
		}
	}})
	if _, err := b.Import(smelt, long(int(rows))); err != nil {
		t.Fatal(err)
	}
	if keyed < 3 || late > 0 {
		t.Errorf("of %d entries keyed during %d slices, %d waited for more than two of them", keyed, slices, late)
	}
	if names, err := b.Streams(); err != nil || len(names) != 2 {
		t.Errorf("there are %v, %v", names, err)
	}
	if sums, err := b.Summaries(); err != nil || len(sums) != 2 || sums[1].Entries != 0 && sums[0].Entries != rows+3 {
		t.Errorf("the shelf has %+v, %v", sums, err)
	}
	shut(t, b)
}

func TestNobodySeesAnImportThatIsNotWhole(t *testing.T) {
	path := placeOf(t)
	var b *Book
	seen := 0
	b, _ = open(t, path, Options{Progress: func(done, of int) {
		if done <= of/2 || done == of {
			return
		}
		if names, err := b.Streams(); seen < 2 && (err != nil || slices.Contains(names, smelt)) {
			t.Errorf("at %d of %d there are %v, %v", done, of, names, err)
		}
		if seen++; seen == 2 {
			keep(t, b, note(smelt, 1)) // somebody takes the name meanwhile
		}
	}})
	var present *PresentError
	if _, err := b.Import(smelt, long(5000)); !errors.As(err, &present) || seen < 2 {
		t.Errorf("got %v after %d looks", err, seen)
	}
	if es, err := b.Entries(smelt); err != nil || len(es) != 1 {
		t.Errorf("the smelt that was there has %d entries, %v", len(es), err)
	}
	if _, err := b.Import(beta, long(5000)); err != nil {
		t.Errorf("the next import says %v", err)
	}
	shut(t, b)
	if left := leftOver(t, path); left {
		t.Error("lines of the import are left in the book")
	}
}

// TestAnImportGoesOnWhenAnotherBookTakesOver lets the book fail to be flushed in
// the middle of an import.
func TestAnImportGoesOnWhenAnotherBookTakesOver(t *testing.T) {
	path := placeOf(t)
	f := &faults{}
	opt := f.options()
	slice := 0
	opt.Progress = func(done, of int) {
		if done > of/2 {
			slice++
			f.set(func(f *faults) { f.syncOnce = slice == 2 || done == of && slice < 12 }) // also the step that makes it a stream
		}
	}
	b, _ := open(t, path, opt)
	if _, err := b.Import(smelt, long(3000)); err != nil {
		t.Fatal(err)
	}
	if es, err := b.Entries(smelt); err != nil || len(es) != 3003 {
		t.Errorf("there are %d entries, %v", len(es), err)
	}
	if !disk.Exists(path + disk.AsideExt + "2") {
		t.Error("the faults were not met")
	}
	shut(t, b)
	b, _ = open(t, path, Options{})
	if es, err := b.Entries(smelt); err != nil || len(es) != 3003 {
		t.Errorf("opened anew there are %d entries, %v", len(es), err)
	}
	shut(t, b)
}

// leftOver tells whether something of an import that is not whole stands in a book.
func leftOver(t *testing.T, path string) bool {
	t.Helper()
	db, err := bolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	left := false
	if err := db.View(func(tx *bolt.Tx) error { left = tx.Bucket([]byte("coming")) != nil; return nil }); err != nil {
		t.Fatal(err)
	}
	return left
}

// importUntilKilled is the second process: it imports.
func importUntilKilled(path string) {
	b, err := Open(path, Options{Summarise: counted, Progress: func(done, of int) { fmt.Println(done, of) }})
	if err == nil {
		_, err = b.Import(smelt, long(2000))
	}
	fmt.Println("whole", err)
	os.Exit(0)
}

func TestAKilledImportIsThereWholeOrNotAtAll(t *testing.T) {
	whole, none := 0, 0
	lasts := time.Duration(0) // from the mark to the end, where nobody kills it
	runs := 13
	if testing.Short() {
		runs = 5
	}
	for run := range runs {
		path := placeOf(t)
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), "PERSIST_TEST_IMPORTER="+path)
		out := &killAt{mark: "2003 4006"}
		marked := time.Now()
		out.then = func() {
			if marked = time.Now(); run > 0 {
				time.AfterFunc(lasts*time.Duration(run)/time.Duration(runs-2), func() { cmd.Process.Kill() })
			}
		}
		cmd.Stdout = out
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		_ = cmd.Wait()
		if run == 0 {
			lasts = time.Since(marked)
		}
		b, _ := open(t, path, Options{})
		es, err := b.Entries(smelt)
		switch {
		case err == nil && len(es) == 2003:
			whole++
		case errors.As(err, new(*twin.NoStreamError)):
			none++
			if strings.Contains(out.said.String(), "whole <nil>") {
				t.Error("an import that was called kept is gone")
			}
		default:
			t.Errorf("run %d: %d entries, %v", run, len(es), err)
		}
		shut(t, b)
	}
	t.Logf("%d whole, %d not at all", whole, none)
}

// killAt gathers what a process says, and does something once it has said a word.
type killAt struct {
	said strings.Builder
	mark string
	then func()
}

func (k *killAt) Write(b []byte) (int, error) {
	k.said.Write(b)
	if k.then != nil && strings.Contains(k.said.String(), k.mark) {
		k.then()
		k.then = nil
	}
	return len(b), nil
}

// TestKeepingGoesOnWhileASummaryIsMade holds a summary up until an entry is kept.
func TestKeepingGoesOnWhileASummaryIsMade(t *testing.T) {
	path := placeOf(t)
	begun, on := make(chan bool, 9), make(chan bool)
	b, _ := open(t, path, Options{idle: time.Millisecond, Summarise: func(stream string, es []entry.Entry) Summary {
		select {
		case begun <- true:
			<-on
		default:
		}
		return counted(stream, es)
	}})
	keep(t, b, note(smelt, 1))
	<-begun
	for len(begun) < cap(begun) {
		begun <- true // later ones are not held up
	}
	keep(t, b, note(smelt, 2))
	close(on)
	shut(t, b)
	r, err := OpenReader(path, Options{Summarise: counted})
	if err != nil {
		t.Fatal(err)
	}
	if sums, err := r.Summaries(); err != nil || len(sums) != 1 || sums[0].Entries != 2 {
		t.Errorf("the shelf has %+v, %v", sums, err)
	}
}

func TestAnImportOfEitherOfTwoCopiesNamesBoth(t *testing.T) {
	path := placeOf(t)
	b, _ := open(t, path, Options{})
	if _, err := b.Import(smelt, lit("a1", "")); err != nil {
		t.Fatal(err)
	}
	first, _ := linesOf(b, smelt)
	other, _ := open(t, placeOf(t), Options{})
	if err := other.ImportJSON(Journal{smelt, first}); err != nil {
		t.Fatal(err)
	}
	keep(t, b, note(smelt, 1))
	keep(t, other, note(smelt, 2))
	first, _ = linesOf(b, smelt)
	second, _ := linesOf(other, smelt)
	if name, _, err := b.Take(smelt, second); name != smelt+"-2" || err != nil {
		t.Fatalf("%q, %v", name, err)
	}
	for _, lines := range [][][]byte{first, second} {
		j, err := ReadJSON(strings.NewReader(string(twin.Joined(lines))))
		if err != nil {
			t.Fatal(err)
		}
		err = b.ImportJSON(j)
		var present *PresentError
		if !errors.As(err, &present) || !slices.Equal(present.As, []string{smelt, smelt + "-2"}) || !strings.Contains(err.Error(), "2 times") {
			t.Errorf("got %v", err)
		}
	}
	shut(t, b)
	shut(t, other)
}
