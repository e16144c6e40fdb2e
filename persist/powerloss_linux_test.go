//go:build linux && (amd64 || arm64)

package persist

import (
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/sys/unix"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

var everyLoss = flag.Bool("everyloss", false, "TestPowerLoss tries every state of the disk, instead of some of them")

// platter is what a process has written, call by call, and what of it the disk was
// told to hold fast. A call is named by its place in time.
type platter struct {
	now   int
	names map[string]int // as the process sees them: path -> file
	files []blob
	moves []move
	said  []spoken
	sums  map[string][32]byte // of what files hold, by the way their writes end
}

// blob is the content of a file: what was written, and when it was flushed.
type blob struct {
	writes  []patch
	flushed []int
	folder  bool
}

// patch is one write, or, without bytes, a cut or growth to a length.
type patch struct {
	when int
	at   int64
	text []byte
	cut  bool
}

// move is a change of names: path comes to lead to a file, and old to none.
type move struct {
	when      int
	path, old string
	file      int // -1 for none
}

// spoken is what the process had said by then.
type spoken struct {
	when int
	text string
}

func newPlatter(folder string) *platter {
	return &platter{names: map[string]int{folder: 0}, files: []blob{{folder: true}}, sums: map[string][32]byte{}}
}

// make lets a path lead to a new file.
func (p *platter) make(path string, folder bool) {
	if _, there := p.names[path]; !there {
		p.files = append(p.files, blob{folder: folder})
		p.name(path, "", len(p.files)-1)
	}
}

func (p *platter) name(path, old string, file int) {
	p.moves = append(p.moves, move{p.now, path, old, file})
	delete(p.names, old)
	if file >= 0 {
		p.names[path] = file
	} else {
		delete(p.names, path)
	}
}

// length is how long a file is to the process.
func (b blob) length() (n int64) {
	for _, w := range b.writes {
		n = max(n, w.at+int64(len(w.text)))
		if w.cut {
			n = w.at
		}
	}
	return n
}

// take notes a call that the system is about to do.
func (p *platter) take(c diskCall) {
	p.now++
	n := c.notice
	file, known := p.names[c.path]
	put := func(w patch) {
		if known {
			w.when = p.now
			p.files[file].writes = append(p.files[file].writes, w)
		}
	}
	switch n.nr {
	case unix.SYS_OPENAT:
		if n.args[2]&unix.O_CREAT != 0 {
			p.make(c.path, false)
		}
	case unix.SYS_MKDIRAT:
		p.make(c.path, true)
	case unix.SYS_WRITE:
		if known {
			put(patch{at: p.files[file].length(), text: n.bytes(1, int(n.args[2]))})
		}
	case unix.SYS_PWRITE64:
		put(patch{at: int64(n.args[3]), text: n.bytes(1, int(n.args[2]))})
	case unix.SYS_FTRUNCATE, unix.SYS_TRUNCATE:
		put(patch{at: int64(n.args[1]), cut: true})
	case unix.SYS_FSYNC, unix.SYS_FDATASYNC:
		if known {
			p.files[file].flushed = append(p.files[file].flushed, p.now)
		}
	case unix.SYS_RENAMEAT, unix.SYS_RENAMEAT2, unix.SYS_LINKAT:
		old := n.text(1)
		if from, there := p.names[old]; there {
			if n.nr == unix.SYS_LINKAT {
				old = ""
			}
			p.name(c.path, old, from)
		}
	case unix.SYS_UNLINKAT:
		if known {
			p.name(c.path, "", -1)
		}
	}
}

// waiting are the writes and moves before a moment that no flush holds fast.
func (p *platter) waiting(when int) (writes []patch, moves []move) {
	fast := func(b blob, then int) bool {
		return slices.ContainsFunc(b.flushed, func(f int) bool { return then < f && f < when })
	}
	for _, b := range p.files {
		for _, w := range b.writes {
			if w.when < when && !fast(b, w.when) {
				writes = append(writes, w)
			}
		}
	}
	for _, m := range p.moves {
		if m.when < when && !fast(p.files[p.folderOf(m.path)], m.when) {
			moves = append(moves, m)
		}
	}
	return writes, moves
}

// folderOf is the file that a path's folder is. No folder changes its name here.
func (p *platter) folderOf(path string) int {
	for _, m := range p.moves {
		if m.path == filepath.Dir(path) && m.file >= 0 {
			return m.file
		}
	}
	return 0
}

// fate is what becomes of a write that no flush holds fast.
type fate int

const (
	arrives fate = iota
	isLost
	isTorn  // only its beginning arrives
	isZeros // the length arrives, and the bytes do not
)

// state is what may be found after the power went at a moment. Moves that no flush
// holds fast arrive or not.
type state struct {
	p     *platter
	when  int
	of    func(patch) fate
	names map[string]int // the files by their paths
}

func (p *platter) state(when int, of func(patch) fate, moved func(move) bool) state {
	names := map[string]int{}
	for _, m := range p.moves {
		if m.when < when && moved(m) {
			delete(names, m.old)
			names[m.path] = m.file
			if m.file < 0 {
				delete(names, m.path)
			}
		}
	}
	return state{p, when, of, names}
}

// text is what a file holds, nil for a folder.
func (s state) text(file int) []byte {
	b := s.p.files[file]
	if b.folder {
		return nil
	}
	text := []byte{}
	for _, w := range b.writes {
		if w.when >= s.when {
			continue
		}
		if w.cut {
			if s.of(w) == arrives {
				text = append(text, make([]byte, max(0, int(w.at)-len(text)))...)[:w.at]
			}
			continue
		}
		part := w.text
		switch s.of(w) {
		case isLost:
			continue
		case isTorn:
			if part = part[:len(part)/2]; len(part) > 512 {
				part = part[:len(part)/512*512]
			}
		case isZeros:
			part = make([]byte, len(part))
		}
		text = append(text, make([]byte, max(0, int(w.at)+len(part)-len(text)))...)
		copy(text[w.at:], part)
	}
	return text
}

// sum tells states apart by what their files hold. What a file holds is made only once
// for each way in which its writes can end.
func (s state) sum() [32]byte {
	all := sha256.New()
	for _, path := range slices.Sorted(maps.Keys(s.names)) {
		file := s.names[path]
		way := fmt.Appendf(nil, "%d", file)
		for _, w := range s.p.files[file].writes {
			if w.when < s.when {
				way = append(way, ' ', byte('0'+s.of(w)))
			}
		}
		sum, known := s.p.sums[string(way)]
		if !known {
			text := s.text(file)
			sum = sha256.Sum256(fmt.Appendf(nil, "%t %s", text == nil, text))
			s.p.sums[string(way)] = sum
		}
		fmt.Fprintf(all, "%s %x ", path, sum)
	}
	return [32]byte(all.Sum(nil))
}

// states gives what may be found after the power went at a moment: all that waits
// for a flush arrives, nothing of it, one thing alone (so that the later comes without
// the earlier), all but one, and one of them torn or as zeros; the names that wait
// arrive or do not, each time.
func (p *platter) states(when int, try func(state)) {
	writes, moves := p.waiting(when)
	waits, unsure := map[int]bool{}, map[int]bool{}
	for _, w := range writes {
		waits[w.when] = true
	}
	for _, m := range moves {
		unsure[m.when] = true
	}
	for names := 0; names <= len(moves); names++ { // names come in their order
		moved := func(m move) bool { return !unsure[m.when] || names > 0 && m.when <= moves[names-1].when }
		all := func(f, others fate, one int) {
			try(p.state(when, func(w patch) fate {
				switch {
				case !waits[w.when]:
					return arrives
				case w.when == one:
					return f
				}
				return others
			}, moved))
		}
		all(arrives, arrives, 0)
		all(isLost, isLost, 0)
		for _, w := range writes {
			all(arrives, isLost, w.when)
			all(isLost, arrives, w.when)
			all(isTorn, arrives, w.when)
			all(isTorn, isLost, w.when)
			all(isZeros, arrives, w.when)
		}
	}
}

// The power goes at any moment of a real session, which opens a book, keeps entries
// and closes it, twice over, with a sound disk and with a flush that fails: whatever the
// disk had not been told to hold fast may be lost, torn, or come without what was
// written before. Nothing that was called kept is missing afterwards.
func TestPowerLoss(t *testing.T) {
	for name, fails := range map[string]string{"sound": "", "book not flushed": "book.db", "twin not flushed": smelt + ".jsonl"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			path := filepath.Join(folder, "shelf", "book.db")
			p, flushes := newPlatter(folder), 0
			heard(t, folder, func(c diskCall) syscall.Errno {
				if c.name == "fdatasync" && filepath.Base(c.path) == fails {
					if flushes++; flushes == 4 {
						p.now++
						return syscall.EIO
					}
				}
				if c.changes {
					p.take(c)
				}
				return 0
			}, func(said string) { p.said = append(p.said, spoken{p.now, said}) }, "PERSIST_TEST_KEEP_TWICE="+path)
			if fails != "" && flushes < 4 {
				t.Fatal("no flush failed")
			}
			type found struct {
				state [32]byte
				kept  int
			}
			seen, tried, each := map[found]bool{}, 0, 29
			if *everyLoss {
				each = 1
			}
			for when := 1; when <= p.now+1; when++ {
				kept := p.kept(t, when)
				p.states(when, func(s state) {
					id := found{s.sum(), len(kept)}
					if seen[id] {
						return
					}
					seen[id] = true
					if len(seen)%each == 0 {
						tried++
						afterLoss(t, folder, path, s, kept)
						if t.Failed() {
							t.Fatalf("the power went at call %d of %d", when, p.now)
						}
					}
				})
			}
			if len(seen) < 300 {
				t.Errorf("there were only %d states", len(seen))
			}
			t.Logf("%d calls, %d states of the disk, of them %d opened", p.now, len(seen), tried)
		})
	}
}

// kept are the entries that the process had called kept before a moment.
func (p *platter) kept(t *testing.T, when int) (kept []entry.Entry) {
	for _, s := range p.said {
		rest, isKept := strings.CutPrefix(s.text, "kept ")
		if s.when >= when || !isKept {
			continue
		}
		e, err := entry.Decode([]byte(strings.TrimSuffix(rest, " <nil>\n")))
		must(t, err)
		kept = append(kept, e)
	}
	return kept
}

// afterLoss opens what is left and looks for all that was kept.
func afterLoss(t *testing.T, folder, path string, s state, kept []entry.Entry) {
	at := t.TempDir()
	defer os.RemoveAll(at)
	for _, name := range slices.Sorted(maps.Keys(s.names)) {
		to := filepath.Join(at, strings.TrimPrefix(name, folder))
		if _, err := os.Stat(filepath.Dir(to)); err != nil {
			continue // its folder did not arrive
		}
		if text := s.text(s.names[name]); text == nil {
			must(t, os.Mkdir(to, 0o700))
		} else {
			write(t, to, text)
		}
	}
	path = filepath.Join(at, strings.TrimPrefix(path, folder))
	b, err := Open(path, Options{Summarise: counted})
	if err != nil {
		if _, rerr := Rescue(path, Options{}); rerr != nil {
			t.Fatalf("opening says %v, a rescue %v", err, rerr)
		}
		b, err = Open(path, Options{Summarise: counted})
		must(t, err)
	}
	for _, stream := range []string{smelt, beta, entry.House} {
		es, err := b.Entries(stream)
		if err != nil && !errors.As(err, new(*twin.NoStreamError)) {
			t.Errorf("%s reads %v", stream, err)
		}
		for _, k := range kept {
			if k.Stream != stream {
				continue
			}
			if k.Seq > uint64(len(es)) || !cmp.Equal(es[k.Seq-1], k) {
				t.Errorf("%s: entry %d was called kept and is not there as it was; there are %d", stream, k.Seq, len(es))
			}
		}
		if next := keep(t, b, note(stream, 999)); next[0].Seq != uint64(len(es)+1) {
			t.Errorf("%s: the next entry is %d after %d", stream, next[0].Seq, len(es))
		}
	}
	shut(t, b)
	whole(t, path)
}
