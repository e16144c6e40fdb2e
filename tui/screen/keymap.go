package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/draw"
	"chargehand/tui/words"
)

// Pressed is one key, or one paste, with the clocks at its arrival.
type Pressed struct {
	Key   tea.KeyMsg
	At    entry.Stamp
	Hand  entry.Stamp // the hand's own clock, where At is of another: a rehearsal's; zero where it is the same
	Times int         // how many presses it stands for, of a key that a screen gathers; 0 is one
}

// ByHand is when a hand pressed it.
func (p Pressed) ByHand() entry.Stamp {
	if p.Hand == (entry.Stamp{}) {
		return p.At
	}
	return p.Hand
}

// Presses is how many presses it stands for, at least one.
func (p Pressed) Presses() int { return max(p.Times, 1) }

// Typed is a key as it is matched: letters are case-blind, so that a stuck
// shift or caps lock changes nothing.
type Typed string

func (t Typed) String() string { return string(t) }

// TypedOf is a key press as it is matched. A paste matches no binding.
func TypedOf(k tea.KeyMsg) Typed {
	if k.Type == tea.KeyRunes && !k.Paste {
		return Typed(strings.ToLower(k.String()))
	}
	return Typed(k.String())
}

// KeyMap is the keys of a screen: all of them in the order of their weight, and
// those among them that may repeat quickly without being a leaning glove.
type KeyMap interface {
	All() []key.Binding
	Repeating() []key.Binding
}

// Bind makes a binding. The first key is the one the screen names; the others
// double it, on the number pad for instance.
func Bind(does string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(KeyLabel(keys[0]), does))
}

// KeyLabel is how a key is written on the screen.
func KeyLabel(k string) string {
	if l, ok := words.KeyNames[k]; ok {
		return l
	}
	if with, bare, ok := strings.Cut(k, "+"); ok && with != "" && bare != "" { // ctrl+x
		return with + " " + KeyLabel(bare)
	}
	if n := strings.TrimPrefix(k, "f"); n != k && n != "" && strings.Trim(n, "0123456789") == "" {
		return "F" + n
	}
	return k
}

// AllKeys names every key of a binding: "c or 0".
func AllKeys(b key.Binding) string {
	names := make([]string, len(b.Keys()))
	for i, k := range b.Keys() {
		names[i] = KeyLabel(k)
	}
	return strings.Join(names, words.Or)
}

// Hint is a binding as the keys line shows it.
func Hint(b key.Binding) draw.KeyHint {
	return draw.KeyHint{Key: b.Help().Key, Does: b.Help().Desc}
}

// Hints are several of them.
func Hints(bs ...key.Binding) []draw.KeyHint {
	hs := make([]draw.KeyHint, len(bs))
	for i, b := range bs {
		hs[i] = Hint(b)
	}
	return hs
}

// Short is a binding in the keys line, in a shorter word than in the help.
func Short(b key.Binding, word string) draw.KeyHint {
	return draw.KeyHint{Key: b.Help().Key, Does: word}
}

// GlobalKeys act on every screen, unless a field or a list is open.
type GlobalKeys struct {
	Views, Far, Other, Help, HelpTyping, Back, Leave, Reminded key.Binding
}

// Global are those keys.
var Global = GlobalKeys{
	Views:      Bind(words.DoViews, "v"),
	Far:        Bind(words.DoFar, " "),
	Other:      Bind(words.DoOtherFire, "f2"),
	Help:       Bind(words.DoHelp, "h"),
	HelpTyping: Bind(words.DoHelpTyping, "f1"),
	Back:       Bind(words.DoBack, "esc"),
	Leave:      Bind(words.DoLeave, "ctrl+c"),
	Reminded:   Bind(words.DoReminded, "backspace"),
}

// All of them.
func (g GlobalKeys) All() []key.Binding {
	return []key.Binding{g.Views, g.Far, g.Other, g.Help, g.HelpTyping, g.Back, g.Leave, g.Reminded}
}

// Repeating is none.
func (g GlobalKeys) Repeating() []key.Binding { return nil }

// MoveKeys move about in a list of lines.
type MoveKeys struct {
	Up, Down, PageUp, PageDown, First, Last key.Binding
}

// Move are those keys.
var Move = MoveKeys{
	Up:       Bind(words.DoUp, "up"),
	Down:     Bind(words.DoDown, "down"),
	PageUp:   Bind(words.DoPageUp, "pgup"),
	PageDown: Bind(words.DoPageDn, "pgdown"),
	First:    Bind(words.DoFirst, "home"),
	Last:     Bind(words.DoLast, "end"),
}

// All of them.
func (m MoveKeys) All() []key.Binding {
	return []key.Binding{m.Up, m.Down, m.PageUp, m.PageDown, m.First, m.Last}
}

// Repeating is all of them.
func (m MoveKeys) Repeating() []key.Binding { return m.All() }

// Moved is where a cursor among n lines goes by a key, and whether the key
// moves at all. A page is so many lines.
func (m MoveKeys) Moved(k Typed, at, n, page int) (int, bool) {
	switch {
	case key.Matches(k, m.Up):
		at--
	case key.Matches(k, m.Down):
		at++
	case key.Matches(k, m.PageUp):
		at -= page
	case key.Matches(k, m.PageDown):
		at += page
	case key.Matches(k, m.First):
		at = 0
	case key.Matches(k, m.Last):
		at = n - 1
	default:
		return at, false
	}
	return max(0, min(at, n-1)), true
}
