package persist

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// pace is the pause between two keys of the benchmark: near to a quick person,
// and long enough that the disk's queue is empty again.
const pace = 20 * time.Millisecond

// charge is what one key of a day most often makes.
func charge(n int) entry.Entry {
	return entry.Entry{Stream: smelt, Happened: noon.Add(time.Duration(n) * time.Minute), Boot: "b0075", Mono: time.Duration(n) * time.Minute,
		By: "MK", Screen: "fire", Key: "c", Local: fmt.Sprintf("l%d", n), Event: entry.Charge{Parts: entry.Parts{
			{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))},
			{What: entry.Ore, Lot: "pond", Measure: "scoop", Count: entry.Some(entry.Count(4))}}}}
}

// bare is the reference: a bbolt commit of one put, with an append and flush of
// the same bytes running beside it.
type bare struct {
	db   *bolt.DB
	file *os.File
	n    uint64
}

func openBare(b *testing.B) *bare {
	dir := b.TempDir()
	db, err := bolt.Open(filepath.Join(dir, "bare.db"), 0o600, nil)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	if err := db.Update(func(tx *bolt.Tx) error { _, err := tx.CreateBucket([]byte("b")); return err }); err != nil {
		b.Fatal(err)
	}
	f, err := os.OpenFile(filepath.Join(dir, "bare.txt"), os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { f.Close() })
	return &bare{db: db, file: f}
}

func (r *bare) keep(line []byte) error {
	appended := make(chan error, 1)
	go func() {
		_, err := r.file.Write(line)
		if err == nil {
			err = disk.Flush(r.file)
		}
		appended <- err
	}()
	r.n++
	err := r.db.Update(func(tx *bolt.Tx) error { return tx.Bucket([]byte("b")).Put(seqKey(r.n), line) })
	return disk.Both(err, <-appended)
}

// makes gives a reference a goroutine to which entries are handed over, and which
// makes their lines before it keeps them: what no journal of entries can do without.
func (r *bare) makes(b *testing.B) (keep func(entry.Entry) error) {
	in, out := make(chan entry.Entry, 1), make(chan error, 1)
	b.Cleanup(func() { close(in) })
	go func() {
		s := &stream{}
		for e := range in {
			_, line, err := s.number(e, entry.Stamp{Wall: noon})
			out <- disk.Both(err, r.keep(append(line, '\n')))
		}
	}()
	return func(e entry.Entry) error { in <- e; return <-out }
}

// BenchmarkKeyToKept times Keep until its acknowledgement against the bare
// reference, which is given a finished line. ratio-p50 is what counts. The second one
// shows how much of it a line costs that is made and handed over after a pause, when
// its code is in no cache: the reference with makes, against the same bare one. They
// do not take turns with the book, for that would keep this code warm for it.
func BenchmarkKeyToKept(b *testing.B) {
	b.Run("book", func(b *testing.B) {
		kept := make(chan Ack, 1)
		book, err := Open(filepath.Join(b.TempDir(), "book.db"), Options{Acked: func(a Ack) { kept <- a }})
		if err != nil {
			b.Fatal(err)
		}
		defer book.Close()
		againstBare(b, func(e entry.Entry) error { book.Keep(e); return (<-kept).Err })
	})
	b.Run("bare making lines", func(b *testing.B) { againstBare(b, openBare(b).makes(b)) })
}

// againstBare times one way of keeping and the bare reference, one after the other in
// turn, each after the same pause.
func againstBare(b *testing.B, ours func(entry.Entry) error) {
	ref := openBare(b)
	_, line, err := new(stream).number(charge(1), entry.Stamp{Wall: noon})
	if err != nil {
		b.Fatal(err)
	}
	line = append(line, '\n')
	for n := range 20 { // the first entries make files and buckets
		if err := disk.Both(ours(charge(n)), ref.keep(line)); err != nil {
			b.Fatal(err)
		}
	}
	var own, its []time.Duration
	timed := func(f func() error) time.Duration {
		time.Sleep(pace)
		start := time.Now()
		if err := f(); err != nil {
			b.Fatal(err)
		}
		return time.Since(start)
	}
	n := 20
	for b.Loop() {
		n++
		e := charge(n)
		a := func() { own = append(own, timed(func() error { return ours(e) })) }
		z := func() { its = append(its, timed(func() error { return ref.keep(line) })) }
		if n%2 == 0 { // each goes first as often as the other
			a, z = z, a
		}
		a()
		z()
	}
	slices.Sort(own)
	slices.Sort(its)
	at := func(d []time.Duration, share float64) float64 {
		return float64(d[int(share*float64(len(d)-1))]) / float64(time.Microsecond)
	}
	b.ReportMetric(at(own, .5), "p50-us")
	b.ReportMetric(at(own, .99), "p99-us")
	b.ReportMetric(at(its, .5), "ref-p50-us")
	b.ReportMetric(at(its, .99), "ref-p99-us")
	b.ReportMetric(at(own, .5)/at(its, .5), "ratio-p50")
	b.ReportMetric(at(own, .99)/at(its, .99), "ratio-p99")
}

// fullShelf makes a book of 1,000 smelts of 500 entries.
func fullShelf(b *testing.B) string {
	b.Helper()
	path := filepath.Join(b.TempDir(), "book.db")
	book, err := Open(path, Options{Summarise: counted})
	if err != nil {
		b.Fatal(err)
	}
	entries := make([]entry.Entry, 500)
	for s := range 1000 {
		entries[0] = entry.Entry{Happened: noon, Event: entry.Light{UID: fmt.Sprint(s), Furnace: entry.Furnace{Name: "Reed Hollow"}}}
		for i := 1; i < len(entries); i++ {
			entries[i] = charge(i)
		}
		if _, err := book.Import(fmt.Sprintf("2026-%02d-%02d-reedhollow-%d", s%12+1, s%28+1, s), entries); err != nil {
			b.Fatal(err)
		}
	}
	if err := book.Close(); err != nil {
		b.Fatal(err)
	}
	return path
}

// BenchmarkShelf opens, lists and reads a book of 1,000 smelts of 500 entries.
func BenchmarkShelf(b *testing.B) {
	path := fullShelf(b)
	opt := Options{Summarise: counted}
	b.Run("open", func(b *testing.B) {
		for b.Loop() {
			book, err := Open(path, opt)
			if err != nil {
				b.Fatal(err)
			}
			b.StopTimer()
			if err := book.Close(); err != nil || len(book.Mended()) > 0 {
				b.Fatal(err, book.Mended())
			}
			b.StartTimer()
		}
	})
	reader, err := OpenReader(path, opt)
	if err != nil {
		b.Fatal(err)
	}
	summaries := func(b *testing.B) {
		for b.Loop() {
			if s, err := reader.Summaries(); err != nil || len(s) != 1000 {
				b.Fatal(len(s), err)
			}
		}
	}
	b.Run("summaries", summaries)
	b.Run("entries", func(b *testing.B) {
		for b.Loop() {
			if es, err := reader.Entries("2026-01-01-reedhollow-0"); err != nil || len(es) != 500 {
				b.Fatal(len(es), err)
			}
		}
	})
	book, err := Open(path, opt)
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	b.Run("summaries of a held book", summaries)
}

// BenchmarkDamage checks and rescues a book of 1,000 smelts of 500 entries: whole,
// and with both heads damaged, so that every line is searched for.
func BenchmarkDamage(b *testing.B) {
	path := fullShelf(b)
	if info, err := os.Stat(path); err == nil {
		b.Logf("the book has %d MB", info.Size()>>20)
	}
	b.Run("pages", func(b *testing.B) {
		for b.Loop() {
			if err := sound(path); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("check", func(b *testing.B) {
		for b.Loop() {
			if r, err := Check(path, Options{Summarise: counted}); err != nil || !r.OK() {
				b.Fatal(r.Findings, err)
			}
		}
	})
	rescue := func(harm func(*os.File) error) func(b *testing.B) {
		return func(b *testing.B) {
			for b.Loop() {
				b.StopTimer()
				f, err := os.OpenFile(path, os.O_RDWR, 0)
				if err == nil {
					err = disk.Both(harm(f), f.Close())
				}
				if err != nil {
					b.Fatal(err)
				}
				b.StartTimer()
				r, err := Rescue(path, Options{})
				if err != nil || r.Entries != 500_000 {
					b.Fatal(r.Entries, err)
				}
				b.StopTimer()
				for _, old := range r.Aside {
					if err := os.Remove(old); err != nil {
						b.Fatal(err)
					}
				}
				b.StartTimer()
			}
		}
	}
	b.Run("rescue", rescue(func(*os.File) error { return nil }))
	b.Run("rescue without heads", rescue(func(f *os.File) error {
		for _, at := range []int64{pageHeader, int64(os.Getpagesize()) + pageHeader} {
			if _, err := f.WriteAt(make([]byte, metaBytes), at); err != nil {
				return err
			}
		}
		return nil
	}))
}

// BenchmarkVerifiedReading times what holding chain and head against each other
// costs at a reading, beside reading the lines, decoding them, and the fold that
// comes after. verify-share is its part of all four.
func BenchmarkVerifiedReading(b *testing.B) {
	for _, n := range []int{500, 5000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			book, _ := open(b, filepath.Join(b.TempDir(), "book.db"), Options{})
			events := lit("a1", "f00d")
			for i := len(events); i < n; i++ {
				events = append(events, charge(i))
			}
			if _, err := book.Import(smelt, events); err != nil {
				b.Fatal(err)
			}
			var read, verified, decoded, folded time.Duration
			rounds := 0
			for b.Loop() {
				rounds++
				at := time.Now()
				step := func(sum *time.Duration) {
					now := time.Now()
					*sum += now.Sub(at)
					at = now
				}
				rec, lines, err := book.store.book().Stream(smelt)
				step(&read)
				_, fault := copies{record: rec, book: lines}.inBook(smelt)
				step(&verified)
				es, derr := twin.DecodeAll(smelt, "", lines)
				step(&decoded)
				fold.Fold(es, fold.All, fold.Latest(es))
				step(&folded)
				if err := disk.Both(disk.Both(err, fault), derr); err != nil || len(es) != n {
					b.Fatal(len(es), err)
				}
			}
			for name, d := range map[string]time.Duration{"read-us": read, "verify-us": verified, "decode-us": decoded, "fold-us": folded} {
				b.ReportMetric(float64(d.Microseconds())/float64(rounds), name)
			}
			b.ReportMetric(float64(verified)/float64(read+verified+decoded+folded), "verify-share")
		})
	}
}
