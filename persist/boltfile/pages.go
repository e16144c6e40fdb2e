package boltfile

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"sync"

	"chargehand/model/words"
)

// Pages of bbolt's file format, version 2, in the byte order of the machine: a
// header (id, kind, count of elements, pages that go on), the elements, and what
// they point to, counted from the element. A bucket is an element of a leaf
// that names the first page of its tree, or, where that is 0, holds it itself.
const (
	pageHeader                  = 16
	atKind, atCount, atOverflow = 8, 10, 12
	kindBranch, kindLeaf        = 1, 2
	kindFree                    = 16
	elementBytes                = 16
	bucketElement               = 1  // the flag of a leaf's element
	bucketHeader                = 16 // before the page that a bucket holds itself
	noFreelist                  = ^uint64(0)
	manyFree                    = 0xffff // then the count is the first number of the list
)

var native = binary.NativeEndian

// pages follows the pages of a book's newest state without its map, and tells
// whether bbolt can: it trusts what they say of each other, and one bad number can
// lead it in a circle or out of the file, which ends the program. What the lines say
// is for the chain to judge.
//
// The pages of single streams wait until the stream is wanted, also while
// others are written to: bbolt writes no page anew that a stream is made of,
// and a stream is written to only after it was followed.
type pages struct {
	file io.ReaderAt
	head

	mu    sync.Mutex
	seen  []bool            // by page: in use, or called free
	waits map[string]uint64 // streams that were not followed yet, by their first page
}

// followed follows all but what the streams hold.
func followed(file io.ReaderAt, h head) (*pages, error) {
	p := &pages{file: file, head: h, seen: make([]bool, h.pages), waits: map[string]uint64{}}
	if err := p.free(); err != nil {
		return p, err
	}
	return p, p.tree(h.root, &order{}, func(name, bucket []byte) error {
		switch string(name) {
		case string(bucketStreams):
			return p.bucket(bucket, &order{}, func(stream, bucket []byte) error {
				if root := native.Uint64(bucket); root != 0 {
					p.waits[string(stream)] = root
					return nil
				}
				return p.bucket(bucket, &order{values: true}, p.deeper)
			})
		case string(bucketComing):
			return p.bucket(bucket, &order{}, p.deeper)
		}
		return p.bucket(bucket, &order{values: true}, p.deeper)
	})
}

// deeper follows a bucket that holds nothing which is wanted by itself.
func (p *pages) deeper(_, bucket []byte) error {
	return p.bucket(bucket, &order{values: true}, p.deeper)
}

// stream follows the pages of one stream, unless that was done.
func (p *pages) stream(name string) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	root, waits := p.waits[name]
	if !waits {
		return nil
	}
	delete(p.waits, name)
	return p.tree(root, &order{values: true}, p.deeper)
}

// rest follows all that waits.
func (p *pages) rest() error {
	for name := range p.waits {
		if err := p.stream(name); err != nil {
			return err
		}
	}
	return nil
}

// page reads a page with those that go on from it. Each is there once.
func (p *pages) page(id uint64) ([]byte, error) {
	if id < 2 || id >= p.pages {
		return nil, errors.New(words.PageOfTooMany(id, p.pages))
	}
	b := make([]byte, p.size)
	if _, err := p.file.ReadAt(b, int64(id*p.size)); err != nil {
		return nil, words.InPage(id, err)
	}
	more := uint64(native.Uint32(b[atOverflow:]))
	if native.Uint64(b) != id || id+more >= p.pages {
		return nil, errors.New(words.PageOfAnother(id))
	}
	for i := id; i <= id+more; i++ {
		if p.seen[i] {
			return nil, errors.New(words.PageTwice(i))
		}
		p.seen[i] = true
	}
	if more > 0 {
		b = append(b, make([]byte, more*p.size)...)
		if _, err := p.file.ReadAt(b, int64(id*p.size)); err != nil {
			return nil, words.InPage(id, err)
		}
	}
	return b, nil
}

// order is what the next key of a bucket has to follow, and whether values may
// stand in it: a bucket whose mark was changed would be taken for one.
type order struct {
	last   []byte // the key before, or that of the branch which leads here
	leaf   bool   // it is a key before, so that the next is greater
	values bool
}

func (o *order) follows(key []byte, leaf bool) bool {
	c := bytes.Compare(o.last, key)
	if c > 0 || c == 0 && o.leaf {
		return false
	}
	o.last, o.leaf = key, leaf
	return true
}

// tree follows the tree that starts at a page, and gives each bucket in it to
// entered.
func (p *pages) tree(id uint64, o *order, entered func(name, bucket []byte) error) error {
	b, err := p.page(id)
	if err != nil {
		return err
	}
	if err := p.elements(b, o, entered); err != nil {
		return words.InPage(id, err)
	}
	return nil
}

// bucket follows a bucket from the element that names it.
func (p *pages) bucket(b []byte, o *order, entered func(name, bucket []byte) error) error {
	if root := native.Uint64(b); root != 0 {
		return p.tree(root, o, entered)
	}
	return p.elements(b[bucketHeader:], o, entered)
}

// elements follows what the elements of one page point to.
func (p *pages) elements(b []byte, o *order, entered func(name, bucket []byte) error) error {
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
		inner := b[middle:end]
		var err error
		switch {
		case kind == kindBranch:
			err = p.tree(native.Uint64(e[8:]), o, entered)
		case native.Uint32(e)&bucketElement == 0 && !o.values:
			err = errors.New(words.PageValue(len(inner)))
		case native.Uint32(e)&bucketElement == 0:
		case len(inner) < bucketHeader || native.Uint64(inner) == 0 && len(inner) < bucketHeader+pageHeader:
			err = errors.New(words.PageNoBucket(len(inner)))
		default:
			err = entered(b[start:middle], inner)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// free goes through the list of pages that are not in use.
func (p *pages) free() error {
	if p.freelist == noFreelist {
		return nil
	}
	b, err := p.page(p.freelist)
	if err != nil {
		return err
	}
	count, list := uint64(native.Uint16(b[atCount:])), b[pageHeader:]
	if count == manyFree {
		count, list = native.Uint64(list), list[8:]
	}
	if native.Uint16(b[atKind:]) != kindFree || count > uint64(len(list)/8) {
		return errors.New(words.PageNoFreelist(p.freelist))
	}
	for i := range count {
		n := native.Uint64(list[i*8:])
		if n < 2 || n >= p.pages || p.seen[n] {
			return errors.New(words.PageNotFree(n))
		}
		p.seen[n] = true
	}
	return nil
}
