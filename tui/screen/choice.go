package screen

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Option is one line of a list: a key and what it leads to.
type Option struct {
	key.Binding
	Then func(*Shared) Effect
}

// Opt makes an option.
func Opt(k, word string, then func(*Shared) Effect) Option { return Option{Bind(word, k), then} }

// ActKeys are the letters that mean one thing wherever it could do harm: charge,
// scoop, charcoal, cross out. No list that opens at the fire gives them another
// meaning, and a number field ends at them.
const ActKeys = "csfu"

// AtOnceKeys book at the fire as they are pressed, a tap and that the top gas burns. A
// line of a list that books at once has none of them for anything else: pressed into a
// list that was left open they would book what nobody saw.
const AtOnceKeys = "ty"

// Lettered makes options whose keys are letters of their own words, the first
// that is free, is none of ActKeys and is not the one to avoid: the key that
// opened the list, which pressed again at once would be taken for a leaning glove.
func Lettered(avoid rune, n int, line func(i int) (word string, then func(*Shared) Effect)) []Option {
	return lettered(avoid, ActKeys, n, line)
}

// LetteredAtOnce are options that book at once: theirs are none of AtOnceKeys either.
func LetteredAtOnce(avoid rune, n int, line func(i int) (word string, then func(*Shared) Effect)) []Option {
	return lettered(avoid, ActKeys+AtOnceKeys, n, line)
}

func lettered(avoid rune, none string, n int, line func(i int) (word string, then func(*Shared) Effect)) []Option {
	used := map[rune]bool{avoid: true}
	for _, c := range none {
		used[c] = true
	}
	var list []Option
	for i := range n {
		word, then := line(i)
		letter := '?'
		for _, c := range strings.ToLower(word) + "abcdefghijklmnopqrstuvwxyz" {
			if c >= 'a' && c <= 'z' && !used[c] {
				letter = c
				break
			}
		}
		used[letter] = true
		list = append(list, Opt(string(letter), word, then))
	}
	return list
}

// Choice is a list of which one key chooses: the letter, or the number of the
// line, so that a number pad is enough. A question is a short choice.
type Choice struct {
	Title    string
	Options  []Option
	Question bool                 // a yes or no, asked in the foot alone
	Default  string               // the letter of the line that enter takes, "" for none
	Done     func(*Shared) Effect // what enter does in a list that stays open, nil where it does not
	Left     func(*Shared) Effect // what leaving it without a choice does, nil for nothing: an optional last step
	scroll   Scroll
}

// Question asks once before something that is hard to take back. Enter is no
// yes: it ends fields and would be pressed once too often.
func Question(title string, yes func(*Shared) Effect) Effect {
	return Ask{Choice{Title: title, Question: true, Options: []Option{
		Yes(yes), No(func(*Shared) Effect { return Said(words.NothingDone) }),
	}}}
}

// Yes and No are the answers to a question.
func Yes(then func(*Shared) Effect) Option { return Opt("y", words.DoYes, then) }

// No is the other answer.
func No(then func(*Shared) Effect) Option { return Opt("n", words.DoNo, then) }

// Choose opens a list.
func Choose(title string, options ...Option) Effect {
	return Ask{Choice{Title: title, Options: options}}
}

// ChooseOr opens a list of which enter takes the line of a letter.
func ChooseOr(enter, title string, options ...Option) Effect {
	return Ask{Choice{Title: title, Options: options, Default: enter}}
}

// Typing is false: a list takes no text.
func (c Choice) Typing() bool { return false }

// Update takes a key: one that chooses ends the list.
func (c Choice) Update(sh *Shared, k Pressed) (Dialog, Effect) {
	t := TypedOf(k.Key)
	if key.Matches(t, Global.Back) {
		if c.Left != nil {
			return nil, c.Left(sh)
		}
		return nil, Said(words.NothingDone)
	}
	enter := key.Matches(t, FieldKeys.Done)
	for i, o := range c.Options {
		if key.Matches(t, o.Binding) || (!c.Question && i < 9 && Digit(t) == strconv.Itoa(i+1)) || enter && c.Default != "" && o.Keys()[0] == c.Default {
			return nil, o.Then(sh)
		}
	}
	if enter {
		if c.Done != nil {
			return nil, c.Done(sh)
		}
		return c, Refuse(words.NoDefault)
	}
	if !c.Question {
		w, h := sh.W, listRows(sh.H)
		lines, rows := c.lines(sh, w, h)
		if next, moved := c.scroll.Moved(k.Key, lines, w, rows); moved {
			c.scroll = next
			return c, nil
		}
	}
	refused := Refuse(words.NotInList(KeyLabel(string(t))))
	if key.Matches(t, arrows...) { // whoever presses one looks for another line
		return c, refused
	}
	closed := words.ListClosed
	switch {
	case c.Question:
		closed = words.QuestionClosed
	case c.Done != nil:
		closed = words.TicksStay
	}
	return c, Past{Closed: closed, Else: refused}
}

// arrows move about, or seem to.
var arrows = append(Move.All(), editKeys.CharacterBackward, editKeys.CharacterForward)

// Leaves is what is done when it closes without a choice, nil for nothing.
func (c Choice) Leaves(sh *Shared) Effect {
	if c.Left == nil {
		return nil
	}
	return c.Left(sh)
}

// Ask is the foot's question.
func (c Choice) Ask(*Shared) *draw.Ask {
	if !c.Question {
		return &draw.Ask{Label: c.Title, Hint: c.enters() + words.EscCloses}
	}
	return &draw.Ask{Label: c.Title, Hint: words.YesNo}
}

// enters says what enter takes.
func (c Choice) enters() string {
	switch {
	case c.Done != nil:
		return words.EnterDone
	case c.Default == "":
		return words.EnterNothing
	}
	for _, o := range c.Options {
		if o.Keys()[0] == c.Default {
			return words.EnterTakes(o.Help().Desc)
		}
	}
	return ""
}

// Hints are for questions; a list shows its own keys.
func (c Choice) Hints() []draw.KeyHint {
	if !c.Question {
		return []draw.KeyHint{Hint(Global.Back)}
	}
	hs := make([]draw.KeyHint, len(c.Options))
	for i, o := range c.Options {
		hs[i] = Hint(o.Binding)
	}
	return hs
}

// listRows is how many rows of a window a list may take.
func listRows(h int) int { return h - draw.TopRows - draw.FootRows }

// lines are the options in columns, as many as fit, down each column, and how
// many of these lines are shown at once in so many cells.
func (c Choice) lines(sh *Shared, w, h int) (lines []string, rows int) {
	th := sh.Theme
	column := 1
	for _, o := range c.Options {
		column = max(column, sh.Width(o.Help().Key)+sh.Width(o.Help().Desc)+7)
	}
	columns := max(1, (w-1)/column)
	each := (len(c.Options) + columns - 1) / columns
	lines = make([]string, each)
	for i, o := range c.Options {
		number := " "
		if i < 9 {
			number = strconv.Itoa(i + 1)
		}
		k, does := sh.Spelled(o.Help().Key), sh.Spelled(o.Help().Desc)
		if columns == 1 { // one that is as wide as the window says that it goes on
			does = ansi.Truncate(does, w-5-cell.Width(k), sh.Spelled("…"))
		}
		pad := max(column-3-cell.Width(k)-1-cell.Width(does), 0)
		lines[i%each] += " " + th.Component(theme.Quiet).Render(number) + " " + th.Component(theme.Now).Render(k) + " " +
			th.Component(theme.Text).Render(does) + strings.Repeat(" ", pad)
	}
	return lines, max(1, min(each, h-1))
}

// Paint draws the list at the lower end of the grid: a rule, then its lines.
func (c Choice) Paint(g cell.Grid, sh *Shared) {
	if c.Question {
		return
	}
	w, h := g.Size()
	lines, rows := c.lines(sh, w, h)
	th := sh.Theme
	band := cell.Rect{X: 0, Y: h - rows - 1, W: w, H: rows + 1}
	g.Fill(band, ' ', th.Style(theme.Text))
	rule, list := band.CutTop(1)
	g.Fill(rule, th.Marks().HLine, th.Style(theme.Frame))
	g.Sub(list).Lay(c.scroll.Shows(lines, w, rows), th.Style(theme.Text))
	if len(lines) > rows {
		first := c.scroll.First(lines, w, rows)
		g.TextRight(w-1, rule.Y, words.LinesOf(first+1, first+rows, len(lines)), th.Style(theme.Quiet))
	}
}
