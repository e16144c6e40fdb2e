package learn

import (
	"slices"
	"strings"
	"time"

	"chargehand/model/house"
	"chargehand/model/shelf"
)

// History is what the finished smelts of a house teach, gathered once and looked
// up with every reading. The zero History teaches nothing.
type History struct {
	mixes []onMix
	ends  []end // of all that teach, by the time of their light
}

// onMix is the smelts on one mix, as people write it.
type onMix struct {
	name   string
	mix    Mix
	smelts []taught
}

// taught is what one smelt gave of a kg of ore, dry; nothing where it was not
// weighed so.
type taught struct {
	uid                      string
	lit                      time.Time
	yield, compacted, billet float64
}

// end is whether a smelt gave a compact bloom.
type end struct {
	uid  string
	lit  time.Time
	none bool
}

// Lessons are what a house's smelts teach one that was lit after them. The crew
// is that of the book.
type Lessons struct {
	Yields    []float64 // kg of bloom, cold and not compacted, per kg of ore, on its mix
	Compacted []float64 // kg of compacted bloom per kg of ore, on its mix; in no forecast
	Billets   []float64 // kg of billet per kg of ore, on its mix, where every piece of the bloom was worked and weighed
	Smelts    int       // of the house on any mix, of which is known how they ended
	Failures  int       // how many of them gave no compact bloom
}

// HistoryOf gathers what the summaries of a house teach; see [shelf.Summary.Teaches].
// Those of an unknown day teach nobody: nothing is known to have come after them. Of the
// pieces of the house the billets are weighed in; see [Billets].
func HistoryOf(summaries []shelf.Summary, pieces ...house.Piece) History {
	var h History
	billets := Billets(pieces)
	place := map[string]int{}
	for _, s := range summaries {
		if !s.Teaches() || s.Undated || s.Lit.IsZero() {
			continue
		}
		h.ends = append(h.ends, end{s.UID, s.Lit, s.NoBloom})
		if s.NoBloom {
			continue
		}
		name := strings.ToLower(strings.TrimSpace(s.Mix))
		i, ok := place[name]
		if !ok {
			i = len(h.mixes)
			place[name] = i
			h.mixes = append(h.mixes, onMix{name: s.Mix, mix: ParseMix(s.Mix)})
		}
		ore := float64(s.OreDry.Value)
		h.mixes[i].smelts = append(h.mixes[i].smelts, taught{s.UID, s.Lit, float64(s.BloomLoose.Value) / ore, float64(s.BloomCompacted.Value) / ore, billets[s.UID] / ore})
	}
	slices.SortStableFunc(h.ends, func(a, b end) int { return a.lit.Compare(b.lit) })
	return h
}

// About gives what is taught to the smelt of a uid, lit at a time, on a mix as
// people write it; on one that nobody named there are no yields.
func (h History) About(uid string, lit time.Time, mix string) Lessons {
	var l Lessons
	for _, e := range h.ends {
		if !e.lit.Before(lit) {
			break
		}
		if e.uid == uid {
			continue
		}
		l.Smelts++
		if e.none {
			l.Failures++
		}
	}
	if l.Smelts == 0 || mix == "" {
		return l
	}
	own := ParseMix(mix)
	for _, m := range h.mixes {
		if !m.mix.Same(own) {
			continue
		}
		for _, s := range m.smelts {
			if s.uid == uid || !s.lit.Before(lit) {
				continue
			}
			if s.yield > 0 {
				l.Yields = append(l.Yields, s.yield)
			}
			if s.compacted > 0 {
				l.Compacted = append(l.Compacted, s.compacted)
			}
			if s.billet > 0 {
				l.Billets = append(l.Billets, s.billet)
			}
		}
	}
	return l
}
