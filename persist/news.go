package persist

import (
	"maps"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

// News follows a book that another program writes, by the lengths of its twins: while they
// stay nothing is read. It is for one goroutine at a time.
type News struct {
	r     *Reader
	sizes map[string]int64 // at the last call
}

// News begins to follow the book.
func (r *Reader) News() *News { return &News{r: r} }

// Since gives what was kept of some streams beyond the sequence named of each, and whether
// another stream has grown since the last call; the first call says so of all. An entry
// that the writer takes back because its disk failed may be among them; it comes again
// under the same number.
func (n *News) Since(seqs map[string]uint64) (kept []entry.Entry, others bool, err error) {
	sizes, err := twin.Sizes(twin.Find(n.r.path, ""))
	if err != nil {
		return nil, false, err
	}
	for _, stream := range sortedKeys(sizes) {
		if sizes[stream] == n.sizes[stream] {
			continue
		}
		after, asked := seqs[stream]
		if !asked {
			others = true
			continue
		}
		entries, err := n.r.Entries(stream)
		if err != nil {
			return nil, false, err
		}
		for _, e := range entries {
			if e.Seq > after {
				kept = append(kept, e)
			}
		}
	}
	n.sizes = maps.Clone(sizes)
	return kept, others, nil
}
