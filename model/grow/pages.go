package grow

import (
	"iter"
	"sync/atomic"
)

// page is how many items stand together.
const page = 32

// Pages is a List that may also be cut short and grow from there: that costs one page
// and not the whole of it. The zero Pages is empty.
type Pages[T any] struct {
	pages []*onePage[T]
	n     int
}

type onePage[T any] struct {
	items [page]T
	used  atomic.Int64
}

// Append adds an item.
func (p *Pages[T]) Append(item T) {
	at := p.n % page
	p.n++
	if at == 0 {
		last := new(onePage[T])
		p.pages = append(p.pages[:(p.n-1)/page:(p.n-1)/page], last)
		last.used.Store(1)
		last.items[0] = item
		return
	}
	last := p.pages[len(p.pages)-1]
	if !last.used.CompareAndSwap(int64(at), int64(at+1)) { // another copy went on from here
		own := new(onePage[T])
		copy(own.items[:], last.items[:at])
		own.used.Store(int64(at + 1))
		p.pages = append(p.pages[:len(p.pages)-1:len(p.pages)-1], own)
		last = own
	}
	last.items[at] = item
}

// At is an item, to be read.
func (p Pages[T]) At(i int) *T { return &p.pages[i/page].items[i%page] }

// From are the items from one on, to be read.
func (p Pages[T]) From(i int) iter.Seq[*T] {
	return func(yield func(*T) bool) {
		for ; i < p.n; i++ {
			if !yield(p.At(i)) {
				return
			}
		}
	}
}

// All are all items, to be read.
func (p Pages[T]) All() iter.Seq[*T] { return p.From(0) }

// Len is how many there are.
func (p Pages[T]) Len() int { return p.n }

// Cut is the beginning of it.
func (p Pages[T]) Cut(n int) Pages[T] {
	p.n = n
	p.pages = p.pages[:(n+page-1)/page]
	return p
}
