// Package grow has lists that only grow at their end and whose copies share what
// they have in common, so that a copy costs nothing and goes its own way.
package grow

import "sync/atomic"

// List is such a list. The zero List is empty. A copy of it is another List; both
// may grow, also at the same time.
type List[T any] struct {
	items []T
	used  *atomic.Int64 // how much of the array behind items some copy has taken
}

// Append adds an item. Where another copy has gone on from the same end, or there
// is no room, it moves to an array of its own.
func (l *List[T]) Append(item T) {
	n := len(l.items)
	if l.used != nil && n < cap(l.items) && l.used.CompareAndSwap(int64(n), int64(n+1)) {
		l.items = l.items[:n+1]
		l.items[n] = item
		return
	}
	room := 2 * (n + 1)
	if n < cap(l.items) { // there is, but a copy has it: it may be the one that goes on
		room = n + n/8 + 8
	}
	more := make([]T, n+1, max(8, room))
	copy(more, l.items)
	more[n] = item
	l.items, l.used = more, new(atomic.Int64)
	l.used.Store(int64(n + 1))
}

// All are the items. The caller does not change them.
func (l List[T]) All() []T { return l.items[:len(l.items):len(l.items)] }

// Len is how many there are.
func (l List[T]) Len() int { return len(l.items) }

// Cut is the beginning of the list.
func (l List[T]) Cut(n int) List[T] {
	l.items = l.items[:n]
	return l
}
