package screen

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/theme"
)

// Shared is what every screen and dialog may look at. The root makes another for each
// message; nobody writes into one.
type Shared struct {
	W, H      int
	Theme     theme.Theme
	Units     modelwords.Units
	Now       entry.Stamp
	By        string          // initials
	Smelt     session.Session // the one shown; none outside a smelt
	Running   session.Session // the one at work, which may be another; none when there is none
	Other     session.Session // another fire that burns beside that one; none when there is none
	Heard     rule.Heard      // what the bell sounds for
	Shelf     Shelved
	Behind    Screen // the screen to go back to, which help explains; nil for none
	Careful   string // the caution shown
	Asked     string // what is asked just now, "" for nothing
	Chemistry bool   // the shaft is shown as chemistry
	Tally     Tally
	Messages  []string           // what the book had to put right since it was opened
	Unread    int                // of them that nobody has looked at yet
	House     func() house.State // what there is, folded when it is first asked for
	Home      house.Journal      // the entries behind it
	Accounts  *Accounts          // the account last worked out; nil remembers none
	NewUID    func() entry.UID   // for a new thing of the house; only a key may ask for one
	Answers   bool               // this is a rehearsal: the furnace answers what is looked at
	Full      bool               // its shaft has no room for a bucket under the rim
	Mark      string             // what every screen is marked with; "" for nothing
	Spinner   string             // turns while something is read that takes long, for cell.Grid.Lay
}

// Tally is how it stands with the entries.
type Tally struct {
	Kept    int    // of the smelt shown
	Keeping int    // handed over, nothing wrong
	NotKept int    // NOT kept
	Trouble string // why, and what to do
}

// Shelved is what was read of the smelts that are kept.
type Shelved struct {
	Lines []shelf.Summary
	Err   error
	Known bool           // it was read, or cannot be
	Demo  *shelf.Summary // the invented one, to look at; nil for none
}

// Pen draws in the theme and reads in the units of the person.
func (sh *Shared) Pen() draw.Pen { return draw.With(sh.Theme, sh.Units) }

// Spelled is a text as the sheet writes it, for components that measure it.
func (sh *Shared) Spelled(text string) string {
	if sh.Theme.ASCII {
		return cell.ASCII(text)
	}
	return cell.Clean(text)
}

// Width is how many cells a text takes on the sheet.
func (sh *Shared) Width(text string) int { return cell.Width(sh.Spelled(text)) }

// Since is the time between two readings of the clocks: by the boot clock when
// both have the same, since the wall clock may be stepped.
func Since(from, to entry.Stamp) time.Duration {
	if from.Boot == to.Boot && from.Boot != "" {
		return to.Mono - from.Mono
	}
	return to.Wall.Sub(from.Wall)
}

// Body is what a screen has between its top line and its foot.
func Body(g cell.Grid) cell.Rect {
	_, rest := g.Bounds().CutTop(draw.TopRows)
	_, rest = rest.CutBottom(draw.FootRows)
	return rest
}

// TopOf is what the top line of a screen other than Fire says.
func TopOf(sh *Shared, title, phase string) draw.TopView {
	return draw.TopView{
		Title: title, Phase: phase, Clock: sh.Now.Wall.Add(sh.Running.Off(sh.Now)).Format(modelwords.Clock), By: sh.By,
		Kept: sh.Tally.Kept, Keeping: sh.Tally.Keeping, NotKept: sh.Tally.NotKept, Trouble: sh.Tally.Trouble, Tag: sh.Mark,
	}
}

// TopBeside paints that line, and under it, while a smelt burns, the row that tells of it.
func TopBeside(g cell.Grid, sh *Shared, title, phase string) {
	Top(g, sh, title, phase)
	RowOf(g, sh, Urgent(sh))
}

// RowOf paints the row that tells of a fire that burns, under the top line: which it is
// where two do, and the keys that lead there.
func RowOf(g cell.Grid, sh *Shared, s session.Session) {
	if !s.Is() || sh.Tally.NotKept > 0 {
		return
	}
	r := s.Reading()
	b := draw.Burning{Warnings: s.Standing(), Fire: Global.Views.Help().Key + " " + Letters[Fire]}
	if RightsIn(s) == Own {
		b.Key = ActKeys[:1]
	}
	if sh.Other.Is() {
		b.Name = NameOf(sh, s)
	}
	if s.ID() == sh.Other.ID() { // its acts are keyed there
		b.Key, b.Fire = "", Global.Other.Help().Key
	}
	if r.HasDue {
		b.Due = &r.Due
	}
	w, _ := g.Size()
	sh.Pen().Beside(g.Sub(cell.Rect{Y: 1, W: w, H: 1}), r, b)
}

// Top paints that line.
func Top(g cell.Grid, sh *Shared, title, phase string) {
	rows, _ := g.Bounds().CutTop(draw.TopRows)
	sh.Pen().Top(g.Sub(rows), TopOf(sh, title, phase))
}
