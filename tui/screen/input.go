package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/rivo/uniseg"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// longestText bounds what a field takes, in characters.
const longestText = 500

// Input is a line of text being typed, with a cursor. What stands in it at first
// is replaced by the first character typed, so that gloves need not erase. It is
// a value: typing into it leaves the one before as it was.
type Input struct {
	line   textinput.Model
	number bool                 // digits, comma and point alone
	fresh  bool                 // still as it was given, or a number come back to
	exact  entry.Maybe[float64] // the number that was given, in the unit of the program
}

// editKeys are all that the component acts on. Its own key map takes chords and
// letters, and one of its keys starts a program to read a clipboard.
var editKeys = textinput.KeyMap{
	CharacterForward:        Bind(words.DoRight, "right"),
	CharacterBackward:       Bind(words.DoLeft, "left"),
	LineStart:               Bind(words.DoFirst, "home"),
	LineEnd:                 Bind(words.DoLast, "end"),
	DeleteCharacterBackward: Bind(words.DoErase, "backspace"),
	DeleteCharacterForward:  Bind(words.DoEraseNext, "delete"),
}

// NewInput is an empty line, for a number or for words.
func NewInput(number bool) Input {
	line := textinput.New()
	line.Prompt, line.CharLimit, line.KeyMap = "", longestText, editKeys
	line.Cursor.SetMode(cursor.CursorStatic)
	line.Focus()
	return Input{line: line, number: number}
}

// Prefilled is a line in which something stands already.
func Prefilled(text string, number bool) Input {
	in := NewInput(number)
	in.line.SetValue(text)
	in.fresh = true
	return in
}

// PrefilledWith is a field with a number in the person's unit. As long as it is
// left as it stands it is the very number that was given.
func PrefilledWith(u modelwords.Units, v entry.Maybe[float64], unit string) Input {
	if !v.Known {
		return Prefilled("", true)
	}
	text := plainNumber(v.Value)
	if shown := u.Shown(v.Value, unit); shown != v.Value {
		text = modelwords.Number(shown, 2)
	}
	in := Prefilled(text, true)
	in.exact = v
	return in
}

// Left is the line once its field was left: a number that somebody comes back to is
// typed anew and not at the end of the old one. Words are gone on with.
func (in Input) Left() Input {
	if in.number && !in.fresh {
		in.fresh, in.exact = true, entry.None[float64]()
	}
	return in
}

// Text is what stands in the line, Trimmed the same without the blanks around it.
func (in Input) Text() string { return in.line.Value() }

// Trimmed is the text without the blanks around it.
func (in Input) Trimmed() string { return strings.TrimSpace(in.Text()) }

// Number tells whether it takes a number.
func (in Input) Number() bool { return in.number }

// Typed takes one key or paste. It says whether it was of any use. A paste is one
// line, cleaned of what is no character, as far as it has room.
func (in Input) Typed(k tea.KeyMsg) (Input, bool) {
	if key.Matches(k, editKeys.CharacterForward, editKeys.CharacterBackward, editKeys.LineStart, editKeys.LineEnd,
		editKeys.DeleteCharacterBackward, editKeys.DeleteCharacterForward) {
		return in.edited(k), true
	}
	if k.Type != tea.KeyRunes && k.Type != tea.KeySpace || k.Alt {
		return in, false
	}
	add := cell.Clean(string(k.Runes))
	if in.number {
		add = strings.Map(figureOf, add)
	}
	if add == "" {
		return in, false
	}
	line := in.copied()
	if in.fresh {
		line.SetValue("")
	}
	before := line.Value()
	line, _ = line.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(add)})
	in.line, in.fresh = line, false
	return in, line.Value() != before
}

// copied is the component with letters of its own: it changes them in place.
func (in Input) copied() textinput.Model {
	line, at := in.line, in.line.Position()
	line.SetValue(in.line.Value())
	line.SetCursor(at)
	return line
}

// edited does one of the component's keys, as often as the character that is
// seen at the cursor has parts.
func (in Input) edited(k tea.KeyMsg) Input {
	line := in.copied()
	text := []rune(line.Value())
	at := line.Position()
	times := 1
	switch {
	case key.Matches(k, editKeys.CharacterBackward, editKeys.DeleteCharacterBackward):
		times = lastCharacter(string(text[:at]))
	case key.Matches(k, editKeys.CharacterForward, editKeys.DeleteCharacterForward):
		times = firstCharacter(string(text[at:]))
	}
	for range times {
		line, _ = line.Update(k)
	}
	in.line, in.fresh = line, false
	return in
}

// firstCharacter is how many code points the first character of a text has.
func firstCharacter(s string) int {
	first, _, _, _ := uniseg.FirstGraphemeClusterInString(s, -1)
	return len([]rune(first))
}

// lastCharacter is how many the last one has.
func lastCharacter(s string) int {
	last := ""
	for g := uniseg.NewGraphemes(s); g.Next(); {
		last = g.Str()
	}
	return len([]rune(last))
}

// Draw is the line with its cursor in so many cells, for cell.Grid.Lay. Longer
// text moves along with the cursor.
func (in Input) Draw(th theme.Theme, width int) string {
	line := in.copied()
	if th.ASCII { // the sheet spells characters out, and the cursor has to stand where they end
		before := cell.ASCII(string([]rune(line.Value())[:line.Position()]))
		line.SetValue(cell.ASCII(line.Value()))
		line.SetCursor(len([]rune(before)))
	}
	line.TextStyle = th.Component(theme.Field)
	line.Cursor.TextStyle, line.Cursor.Style = th.Component(theme.Field), th.Component(theme.Now)
	line.Width = max(min(cell.Width(line.Value()), width-1), 1)
	line.SetCursor(line.Position())
	return line.View()
}

// Still is the text without a cursor.
func (in Input) Still(th theme.Theme) string {
	return th.Component(theme.Strong).Render(in.Text())
}
