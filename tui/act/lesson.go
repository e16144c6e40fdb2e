package act

import (
	"chargehand/model/entry"
	"chargehand/tui/cell"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// AskLesson asks for one line for next time, and keeps it with the furnace and the ore mix.
func AskLesson(sh *screen.Shared) screen.Effect {
	if sh.Smelt.ToLook() {
		return screen.Refuse(words.LessonOfInvented)
	}
	l := sh.Smelt.Light()
	return screen.Ask{Dialog: screen.Field{Label: words.AskLesson, Blank: words.LessonBlank, Input: screen.NewInput(false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
		text := in.Trimmed()
		if text == "" {
			return screen.Said(words.LessonEmpty), nil
		}
		ev := entry.Lesson{Text: text, Furnace: l.Furnace.UID, Smelt: l.UID, Mix: MixOf(l.Lots)}
		return screen.DidInHouse(func(*screen.Shared) string { return words.LessonKept(text) }, ev), nil
	}}}
}

// teaches tells whether a smelt is one of one's own.
func teaches(l entry.Light) bool { return !l.Practice && !l.Rehearsal && !l.Invented }

// Close closes the smelt, and asks one of one's own for its line for next time.
func Close(*screen.Shared) screen.Effect {
	return screen.Each{Book(entry.PhaseSet{Phase: entry.Closed}), ThenLesson}
}

// ThenLesson asks for that line after something else was kept, where it teaches anybody.
var ThenLesson = screen.Again(func(sh *screen.Shared) screen.Effect {
	if !teaches(sh.Smelt.Light()) {
		return nil
	}
	return AskLesson(sh)
})

// MixOf is the ore mix that a smelt is charged from, "" where none is named.
func MixOf(lots []entry.Lot) string {
	for _, l := range lots {
		if l.What == entry.Ore && l.Mix != "" {
			return l.Mix
		}
	}
	return ""
}

// MostLessons is how many of the last lessons are shown.
const MostLessons = 3

// Trying asks what is tried this time, with the last lessons of the furnace or the ore mix
// above it. It may stay empty.
func Trying(lessons []entry.Lesson, given string, then func(string) screen.Effect) screen.Effect {
	return screen.Ask{Dialog: trying{screen.Field{Label: words.FormTrying, Blank: words.FormTryNothing, Input: screen.Prefilled(given, false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
		return then(in.Trimmed()), nil
	}}, lessons}}
}

// trying is a field with lessons above it.
type trying struct {
	screen.Field
	lessons []entry.Lesson
}

func (t trying) Opened(sh *screen.Shared) screen.Dialog { return t.with(t.Field.Opened(sh)) }

func (t trying) Resumed(text, at string) screen.Dialog { return t.with(t.Field.Resumed(text, at)) }

// Update takes a key into the field.
func (t trying) Update(sh *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	d, e := t.Field.Update(sh, k)
	return t.with(d), e
}

// with is the same with the field as it is now.
func (t trying) with(d screen.Dialog) screen.Dialog {
	f, open := d.(screen.Field)
	if !open {
		return d
	}
	t.Field = f
	return t
}

// Paint lists the lessons above the foot.
func (t trying) Paint(g cell.Grid, sh *screen.Shared) {
	w, h := g.Size()
	rows := 0
	for _, l := range t.lessons {
		rows += g.Rows(words.LessonLine(l.Text), w-4)
	}
	if rows = min(rows, h-1); rows == 0 {
		return
	}
	rule, list := cell.Rect{Y: h - rows - 1, W: w, H: rows + 1}.CutTop(1)
	g.Fill(list, ' ', sh.Theme.Style(theme.Text))
	g.Fill(rule, sh.Theme.Marks().HLine, sh.Theme.Style(theme.Frame))
	g.Text(2, rule.Y, words.LessonsHead, sh.Theme.Style(theme.Quiet))
	Lessons(g, sh, list, t.lessons)
}

// Lessons paints the lessons below each other, each whole, as far as there is room; it
// gives the rows that they took.
func Lessons(g cell.Grid, sh *screen.Shared, at cell.Rect, lessons []entry.Lesson) int {
	y := 0
	for _, l := range lessons {
		text := words.LessonLine(l.Text)
		rows := g.Rows(text, at.W-4)
		if y+rows > at.H {
			break
		}
		y += g.Wrap(cell.Rect{X: at.X + 2, Y: at.Y + y, W: at.W - 4, H: rows}, text, sh.Theme.Style(theme.Text))
	}
	return y
}
