package shelf

import (
	"cmp"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/shelf"
	"chargehand/tui/cell"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// find is what is looked for among the smelts.
type find struct {
	input  screen.Input
	typing bool
}

// asks tells whether anything is looked for, or is being typed.
func (f find) asks() bool { return f.typing || f.input.Trimmed() != "" }

// holds tells whether every word typed stands in what is known of a smelt by name: its
// day, furnace, ore mix, what was tried, mark, and name.
func (f find) holds(l shelf.Summary) bool {
	known := strings.ToLower(strings.Join([]string{l.ID, dayOf(l), l.Furnace, l.Mix, l.Tried, markOf(l)}, " "))
	for _, w := range strings.Fields(strings.ToLower(f.input.Text())) {
		if !strings.Contains(known, w) {
			return false
		}
	}
	return true
}

// typed takes a key while something is typed.
func (s Screen) typed(p screen.Pressed) (screen.Screen, screen.Effect) {
	if key.Matches(screen.TypedOf(p.Key), Map.Open) {
		s.find.typing = false
		return s, nil
	}
	in, ok := s.find.input.Typed(p.Key)
	if !ok {
		return s, screen.Refuse(words.TypeToFind)
	}
	s.find.input, s.at = in, 0
	return s, nil
}

// Typing tells whether what is looked for is being typed.
func (s Screen) Typing() bool { return s.find.typing }

// Back shows all smelts again, newest first.
func (s Screen) Back() (screen.Screen, bool) {
	if !s.find.asks() && s.order == byDay {
		return s, false
	}
	return Screen{aside: s.aside, marked: s.marked}, true
}

// paintFind shows what is looked for, and how many there are of it.
func (s Screen) paintFind(g cell.Grid, sh *screen.Shared, found int) {
	th := sh.Theme
	w, _ := g.Size()
	x := 2 + g.Text(2, 0, words.FindLine+" ", th.Style(theme.Now))
	text := s.find.input.Still(th)
	if s.find.typing {
		text = s.find.input.Draw(th, max(w-x-20, 8))
	}
	g.Sub(cell.Rect{X: x, W: max(w-x-1, 1), H: 1}).Lay(text, th.Style(theme.Text))
	g.TextRight(w-1, 0, words.Found(found), th.Style(theme.Quiet))
}

// order is how the smelts are sorted.
type order int

// Newest first, then the other orders that the key goes through.
const (
	byDay order = iota
	byYield
	byCharcoal
	orders
)

// said is the order in words, "" for the usual one.
func (o order) said() string {
	return [orders]string{byYield: words.SortedByYield, byCharcoal: words.SortedByCharcoal}[o]
}

// sorted are the smelts in an order; those of which its measure is not known come
// last, newest first.
func (o order) sorted(ls []shelf.Summary) []shelf.Summary {
	if o == byDay {
		return ls
	}
	rank := func(l shelf.Summary) (float64, bool) {
		if o == byYield {
			y, _, ok := l.Yield()
			return -y, ok
		}
		return float64(l.Charcoal.Value) / float64(max(l.Bloom.Value, 1e-9)), l.Charcoal.Known && l.Bloom.Positive()
	}
	ls = slices.Clone(ls)
	slices.SortStableFunc(ls, func(a, b shelf.Summary) int {
		x, knownX := rank(a)
		y, knownY := rank(b)
		switch {
		case knownX && knownY:
			return cmp.Compare(x, y)
		case knownX:
			return -1
		case knownY:
			return 1
		}
		return 0
	})
	return ls
}
