package boltfile

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"maps"
	"os"
	"slices"
	"sync"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// Pages of bbolt's file format, version 2, in the byte order of the machine: a
// header (id, kind, count of elements, pages that follow on), the elements, and
// what they point to, counted from the element. A bucket is an element of a leaf
// that names the first page of its tree, or, where that is 0, holds it itself.
const (
	atKind, atCount, atOverflow = 8, 10, 12
	kindBranch, kindLeaf        = 1, 2
	kindFree                    = 16
	elementBytes                = 16
	bucketElement               = 1  // the flag of a leaf's element
	bucketHeader                = 16 // before the page that a bucket holds itself
	atRoot, atFreelist          = 16, 32
	noFreelist                  = ^uint64(0)
	manyFree                    = 0xffff // then the count is the first number of the list
)

// Pages goes through the pages of a book's newest state without mapping the
// file, and tells whether each can be followed: bbolt trusts what pages say of
// each other, and one bad number can lead it in a circle or out of the file,
// which ends the program. What the lines say is for the chain to judge.
//
// The pages of single streams can wait until the stream is wanted, also while
// others are written to: bbolt writes no page anew that a stream is made of,
// and a stream is written to only after it was walked.
type Pages struct {
	file                io.ReaderAt
	pageSize, highWater uint64

	mu    sync.Mutex
	seen  []uint64          // a bit for each page that is in use or called free
	roots map[string]uint64 // streams that were not walked yet, by their first page
	spare [][]byte          // room for pages, to be used again
}

// startWalk walks all but what the streams hold.
func startWalk(f *os.File) (*Pages, error) {
	info, err := f.Stat()
	if err != nil {
		return nil, disk.AccessError(f.Name(), err)
	}
	meta, _, _ := newestMeta(f, info.Size())
	w := &Pages{file: f, pageSize: uint64(meta.pageSize), highWater: meta.highWater, seen: make([]uint64, meta.highWater/64+1), roots: map[string]uint64{}}
	if meta.freelist != noFreelist {
		err = w.free(meta.freelist)
	}
	if err == nil {
		err = w.tree(meta.root, &order{only: buckets}, func(name, value []byte) error {
			holds := anything
			if string(name) == string(bucketStreams) {
				holds = buckets
			}
			return w.bucket(value, holds, func(stream, value []byte) error { return w.later(string(name), string(stream), value) })
		})
	}
	return w, damagedPages(f.Name(), err)
}

func damagedPages(path string, err error) error {
	if err == nil {
		return nil
	}
	return disk.Damaged(path, words.FileDamaged(err))
}

// later leaves the pages of a bucket in a bucket for when they are wanted.
func (w *Pages) later(in, name string, value []byte) error {
	if len(value) < bucketHeader {
		return errors.New(words.PageNoBucket(len(value)))
	}
	root := binary.NativeEndian.Uint64(value)
	if root == 0 || in != string(bucketStreams) {
		return w.within(nil, value)
	}
	w.roots[name] = root
	return nil
}

// within follows what is deeper than a stream: nothing of ours.
func (w *Pages) within(_, value []byte) error { return w.bucket(value, anything, w.within) }

// stream walks the pages of one stream, unless that was done.
func (w *Pages) stream(name string) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	root, waits := w.roots[name]
	if !waits {
		return nil
	}
	delete(w.roots, name)
	return w.tree(root, &order{only: anything}, w.within)
}

// rest walks all that was left for later.
func (w *Pages) rest() error {
	w.mu.Lock()
	names := slices.Collect(maps.Keys(w.roots))
	w.mu.Unlock()
	for _, name := range names {
		if err := w.stream(name); err != nil {
			return err
		}
	}
	return nil
}

// smallFile bounds, in bytes, the books whose pages are all walked when they are
// opened: up to here it takes a few milliseconds. Of larger ones what the streams
// hold is walked when it is wanted first.
const smallFile = 8 << 20

// walkAtOpening walks the pages that bbolt will follow next. The lock is held,
// so that nobody changes them.
func walkAtOpening(f *os.File) (*Pages, error) {
	w, err := startWalk(f)
	if err != nil || int64(w.highWater*w.pageSize) > smallFile {
		return w, err
	}
	return w, damagedPages(f.Name(), w.rest())
}

// Sound tells whether every page of a book can be followed.
func Sound(path string) error {
	if _, err := preflight(path); err != nil {
		return err
	}
	f, err := os.Open(path)
	if err != nil {
		return disk.AccessError(path, err)
	}
	defer f.Close()
	w, err := startWalk(f)
	if err != nil {
		return err
	}
	return damagedPages(path, w.rest())
}

// mark notes a page as seen; false when it was.
func (w *Pages) mark(id uint64) bool {
	bit := uint64(1) << (id % 64)
	was := w.seen[id/64]&bit != 0
	w.seen[id/64] |= bit
	return !was
}

// page reads a page with those that follow on, and marks them as seen.
func (w *Pages) page(id uint64) ([]byte, error) {
	if id < 2 || id >= w.highWater {
		return nil, errors.New(words.PageOfTooMany(id, w.highWater))
	}
	b := w.room()
	if _, err := w.file.ReadAt(b, int64(id*w.pageSize)); err != nil {
		return nil, words.InPage(id, err)
	}
	more := uint64(binary.NativeEndian.Uint32(b[atOverflow:]))
	if binary.NativeEndian.Uint64(b) != id || id+more >= w.highWater {
		return nil, errors.New(words.PageOfAnother(id))
	}
	for i := id; i <= id+more; i++ {
		if !w.mark(i) {
			return nil, errors.New(words.PageTwice(i))
		}
	}
	if more == 0 {
		return b, nil
	}
	b = append(b, make([]byte, more*w.pageSize)...)
	if _, err := w.file.ReadAt(b[w.pageSize:], int64((id+1)*w.pageSize)); err != nil {
		return nil, words.InPage(id, err)
	}
	return b, nil
}

// What a bucket holds. A bucket whose mark was changed would be taken for a value.
const (
	anything = false
	buckets  = true // and nothing else
)

// tree follows the tree that starts at a page, and gives each bucket in it to
// entered.
func (w *Pages) tree(id uint64, o *order, entered func(name, value []byte) error) error {
	b, err := w.page(id)
	if err != nil {
		return err
	}
	if err := w.elements(b, o, entered); err != nil {
		return words.InPage(id, err)
	}
	if len(b) == int(w.pageSize) {
		w.spare = append(w.spare, b)
	}
	return nil
}

// room is where a page is read to.
func (w *Pages) room() []byte {
	if n := len(w.spare) - 1; n >= 0 {
		b := w.spare[n]
		w.spare = w.spare[:n]
		return b
	}
	return make([]byte, w.pageSize)
}

// elements follows what the elements of one page point to.
func (w *Pages) elements(b []byte, o *order, entered func(name, value []byte) error) error {
	native := binary.NativeEndian
	kind, count := native.Uint16(b[atKind:]), int(native.Uint16(b[atCount:]))
	if kind != kindBranch && kind != kindLeaf || pageHeader+count*elementBytes > len(b) || kind == kindBranch && count == 0 {
		return errors.New(words.PageKind(kind, count))
	}
	for i := range count {
		at := pageHeader + i*elementBytes
		e := b[at : at+elementBytes]
		pos, key, value := native.Uint32(e), native.Uint32(e[4:]), uint32(0)
		if kind == kindLeaf {
			pos, key, value = native.Uint32(e[4:]), native.Uint32(e[8:]), native.Uint32(e[12:])
		}
		start := uint64(at) + uint64(pos)
		middle := start + uint64(key)
		end := middle + uint64(value)
		if end > uint64(len(b)) {
			return errors.New(words.PageBeyond(i))
		}
		if !o.follows(b[start:middle], kind == kindLeaf) {
			return errors.New(words.PageOrder(i))
		}
		var err error
		switch {
		case kind == kindBranch:
			err = w.tree(native.Uint64(e[8:]), o, entered)
		case native.Uint32(e)&bucketElement != 0:
			err = entered(b[start:middle], b[middle:end])
		case o.only:
			err = errors.New(words.PageValue(int(value)))
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// order is what the next key of a bucket has to follow.
type order struct {
	last []byte // the key before, or that of the branch which leads here
	leaf bool   // it is a key before, so that the next is greater
	only bool   // the bucket holds buckets and nothing else
}

func (o *order) follows(key []byte, leaf bool) bool {
	c := bytes.Compare(o.last, key)
	if c > 0 || c == 0 && o.leaf {
		return false
	}
	o.last, o.leaf = append(o.last[:0], key...), leaf
	return true
}

// bucket follows a bucket from the element that names it.
func (w *Pages) bucket(b []byte, only bool, entered func(name, value []byte) error) error {
	if len(b) < bucketHeader {
		return errors.New(words.PageNoBucket(len(b)))
	}
	if root := binary.NativeEndian.Uint64(b); root != 0 {
		return w.tree(root, &order{only: only}, entered)
	}
	if len(b) < bucketHeader+pageHeader {
		return errors.New(words.PageNoBucket(len(b)))
	}
	return w.elements(b[bucketHeader:], &order{only: only}, entered)
}

// free goes through the list of pages that are not in use.
func (w *Pages) free(id uint64) error {
	b, err := w.page(id)
	if err != nil {
		return err
	}
	order := binary.NativeEndian
	count, list := uint64(order.Uint16(b[atCount:])), b[pageHeader:]
	if count == manyFree {
		count, list = order.Uint64(list), list[8:]
	}
	if order.Uint16(b[atKind:]) != kindFree || count > uint64(len(list)/8) {
		return errors.New(words.PageNoFreelist(id))
	}
	for i := range count {
		n := order.Uint64(list[i*8:])
		if n < 2 || n >= w.highWater || !w.mark(n) {
			return errors.New(words.PageNotFree(n))
		}
	}
	return nil
}
