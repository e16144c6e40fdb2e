package light

import (
	"errors"
	"reflect"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// asLit is the form with the smelt shown as it was lit.
func (f Screen) asLit(sh *screen.Shared) Screen {
	l := sh.Smelt.Light()
	f.mends, f.rows, f.before = true, nil, nil
	f.was = l
	f.starters = []screen.Starter{{Name: words.AsLit, Furnace: l.Furnace, Measures: l.Measures, Lots: l.Lots, Recipe: l.Recipe}}
	f = f.anew(sh.Units)
	lit := sh.Smelt.Reading().Lit
	day := lit.Format(time.DateOnly)
	if l.Undated {
		day = ""
	}
	for id, given := range map[field]string{leftIn: leftWords(l.LeftIn), litDay: day, litAt: lit.Format(modelwords.Clock), trying: l.Trying} {
		f.rows[id] = row{id: id, input: screen.Prefilled(given, false), given: given}
	}
	return f
}

// farthestBack is how many digits a number of minutes has; more are a time.
const farthestBack = 2

// litThen is when a fire was lit that is taken down now, zero for now.
func (f Screen) litThen(sh *screen.Shared) (time.Time, time.Duration, error) {
	text := f.text(litAt)
	if text == "" {
		return time.Time{}, 0, nil
	}
	if ago, err := strconv.Atoi(text); err == nil && len(text) <= farthestBack {
		return entry.Wall(sh.Now.Wall.Add(-time.Duration(ago) * time.Minute)), act.WholeMinutes, nil
	}
	at, err := screen.ClockTime(text, sh.Now.Wall)
	if err == nil && at.After(sh.Now.Wall) {
		at = sh.Now.Wall
	}
	return entry.Wall(at), act.WholeMinutes, err
}

// mended is the amendment of the light by what stands in the form.
func (f Screen) mended(sh *screen.Shared, to entry.Light) (screen.Effect, field, error) {
	s := sh.Smelt
	was := s.Light()
	l := was
	l.Furnace, l.Measures, l.Lots, l.Recipe = to.Furnace, to.Measures, to.Lots, to.Recipe
	for id, w := range map[field]entry.What{charcoalName: entry.Charcoal, oreName: entry.Ore} {
		if name := usualOf(was.Measures, w).Name; !f.untouched(id) && counts(s, name) {
			return nil, id, errors.New(words.MeasureCounted(name))
		}
	}
	l.Trying = f.text(trying)
	var err error
	if l.LeftIn, err = f.leftIn(); err != nil {
		return nil, leftIn, err
	}
	at, wrong, err := f.litAgain(sh)
	if err != nil {
		return nil, wrong, err
	}
	if !at.IsZero() && l.Rested.Known { // the smelt before ended when it did
		l.Rested.Value = max(0, l.Rested.Value+entry.Hour(at.Add(s.Off(sh.Now)).Sub(s.Reading().Lit).Hours()))
	}
	l.Undated = was.Undated && f.text(litDay) == ""
	if at.IsZero() && reflect.DeepEqual(was, l) {
		return screen.Each{screen.Back{}, screen.Said(words.LightUnchanged)}, noField, nil
	}
	line, _ := s.First()
	return screen.Each{act.Amend(sh, line, l, at, act.WholeMinutes), screen.Back{}}, noField, nil
}

// counts tells whether a smelt has parts that are counted in a measure.
func counts(s session.Session, measure string) bool {
	for l := range s.Lines() {
		for _, p := range entry.PartsIn(l.Event) {
			if measure != "" && !l.Struck() && strings.EqualFold(p.Measure, measure) {
				return true
			}
		}
	}
	return false
}

// litAgain is when the fire was lit by the form, zero where that was left alone. It is
// lit before all that was done; the rows of a log come along when its day changes.
func (f Screen) litAgain(sh *screen.Shared) (time.Time, field, error) {
	if f.untouched(litDay) && f.untouched(litAt) {
		return time.Time{}, noField, nil
	}
	s := sh.Smelt
	lit, l := s.Reading().Lit, s.Light()
	day, zone := lit, lit.Location()
	switch text := f.text(litDay); {
	case text == "" && !l.Undated:
		return time.Time{}, litDay, errors.New(words.DayMissing)
	case text != "":
		var err error
		if day, err = time.Parse(time.DateOnly, text); err != nil {
			return time.Time{}, litDay, errors.New(words.NoDay)
		}
		if l.Undated {
			zone = sh.Now.Wall.Location()
		}
	}
	at, err := screen.ClockTime(f.text(litAt), time.Date(day.Year(), day.Month(), day.Day(), 23, 59, 0, 0, zone))
	if err != nil {
		return time.Time{}, litAt, err
	}
	at = entry.Wall(at)
	off := s.Off(sh.Now)
	if at.After(sh.Now.Wall.Add(off)) {
		return time.Time{}, litAt, errors.New(words.LitInFuture)
	}
	moves := at.Sub(lit)
	if l.Imported { // the rows come along by whole days
		moves = fold.Digits(at).Sub(fold.Digits(lit))
		moves -= moves.Round(24 * time.Hour)
	}
	if first, any := firstDone(s); any && moves > first {
		return time.Time{}, litAt, errors.New(words.EntryBeforeLight(lit.Add(first).Format(modelwords.Clock)))
	}
	return entry.Wall(at.Add(-off)), noField, nil // by the clock of the machine, as entries have it
}

// firstDone is when the first act of the smelt happened.
func firstDone(s session.Session) (at time.Duration, any bool) {
	for l := range s.Lines() {
		if !l.Struck() && entry.IsAct(l.Event) && (!any || l.At < at) {
			at, any = l.At, true
		}
	}
	return at, any
}
