package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/words"
)

// typed is a key as it is matched: letters are case-blind, so that a stuck
// shift or caps lock changes nothing.
type typed string

func (t typed) String() string { return string(t) }

// typedOf is a key press as it is matched. A paste matches no binding.
func typedOf(k tea.KeyMsg) typed {
	if k.Type == tea.KeyRunes && !k.Paste {
		return typed(strings.ToLower(k.String()))
	}
	return typed(k.String())
}

// keymap is the keys of a screen: all of them in the order of their weight, and
// those among them that may repeat quickly without being a leaning glove.
type keymap interface {
	all() []key.Binding
	repeating() []key.Binding
}

// bind makes a binding. The first key is the one the screen names; the others
// double it, on the number pad for instance.
func bind(does string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(keyLabel(keys[0]), does))
}

// keyLabel is how a key is written on the screen.
func keyLabel(k string) string {
	if l, ok := words.KeyNames[k]; ok {
		return l
	}
	return k
}

// globalKeys act on every screen, unless a field or a list is open.
type globalKeys struct {
	Views, Far, Help, HelpTyping, Back, Leave key.Binding
}

var global = globalKeys{
	Views:      bind(words.DoViews, "v"),
	Far:        bind(words.DoFar, " "),
	Help:       bind(words.DoHelp, "h"),
	HelpTyping: bind(words.DoHelpTyping, "f1"),
	Back:       bind(words.DoBack, "esc"),
	Leave:      bind(words.DoLeave, "ctrl+c"),
}

func (g globalKeys) all() []key.Binding {
	return []key.Binding{g.Views, g.Far, g.Help, g.HelpTyping, g.Back, g.Leave}
}
func (g globalKeys) repeating() []key.Binding { return nil }

// moveKeys move about in a list of lines.
type moveKeys struct {
	Up, Down, PageUp, PageDown, First, Last key.Binding
}

var move = moveKeys{
	Up:       bind(words.DoUp, "up"),
	Down:     bind(words.DoDown, "down"),
	PageUp:   bind(words.DoPageUp, "pgup"),
	PageDown: bind(words.DoPageDn, "pgdown"),
	First:    bind(words.DoFirst, "home"),
	Last:     bind(words.DoLast, "end"),
}

func (m moveKeys) all() []key.Binding {
	return []key.Binding{m.Up, m.Down, m.PageUp, m.PageDown, m.First, m.Last}
}
func (m moveKeys) repeating() []key.Binding { return m.all() }

// moved is where a cursor among n lines goes by a key, and whether the key
// moves at all. A page is so many lines.
func (m moveKeys) moved(k typed, at, n, page int) (int, bool) {
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
