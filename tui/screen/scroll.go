package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"
)

// Scroll is a place in lines that do not all fit. It knows the place alone: the
// lines and the room are given each time, since both change with the window.
type Scroll struct{ top int }

// scrollKeys are all that the component acts on. Its own key map takes letters.
var scrollKeys = viewport.KeyMap{PageDown: Move.PageDown, PageUp: Move.PageUp, Down: Move.Down, Up: Move.Up}

func (s Scroll) over(lines []string, w, h int) viewport.Model {
	v := viewport.New(max(w, 1), max(h, 1))
	v.KeyMap, v.MouseWheelEnabled = scrollKeys, false
	v.SetContent(strings.Join(lines, "\n"))
	v.SetYOffset(s.top)
	return v
}

// Moved is the place after a key, and whether the key moves at all.
func (s Scroll) Moved(k tea.KeyMsg, lines []string, w, h int) (Scroll, bool) {
	v := s.over(lines, w, h)
	switch {
	case key.Matches(k, Move.First):
		v.GotoTop()
	case key.Matches(k, Move.Last):
		v.GotoBottom()
	case key.Matches(k, Move.Up, Move.Down, Move.PageUp, Move.PageDown):
		v, _ = v.Update(k)
	default:
		return s, false
	}
	return Scroll{v.YOffset}, true
}

// Shows is what is seen of the lines, for cell.Grid.Lay.
func (s Scroll) Shows(lines []string, w, h int) string { return s.over(lines, w, h).View() }

// First is the number of the first line that is seen, counted from 0.
func (s Scroll) First(lines []string, w, h int) int { return s.over(lines, w, h).YOffset }
