package logs

import (
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/columns"
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// taking is a log about to be taken in: what it lacked, and its columns.
type taking struct {
	as      screen.TakenAs
	mapping entry.Mapping
}

// step is a question about what a log lacks; takes takes what was typed, which may be
// nothing.
type step struct {
	label, blank, given, unit string
	takes                     func(t *taking, sh *screen.Shared, in screen.Input) error
}

// vessel bounds what a bucket or a scoop holds.
var vessel = screen.Limits{Unit: "kg", Least: 0.05, Most: 50}

// keeps asks what the log lacks, and keeps it as a smelt: nothing else does.
func (s Screen) keeps() screen.Effect {
	o := s.open
	switch {
	case !o.known:
		return screen.Refuse(words.BeingReckoned)
	case o.read.Err != nil:
		return screen.Refuse(words.LogNotYet(lacks(o.read.Err)))
	}
	return s.asks(s.steps(), taking{mapping: o.mapping})
}

// steps are the questions about this log.
func (s Screen) steps() []step {
	has := map[columns.Meaning]string{}
	for _, to := range s.open.mapping.Columns {
		has[columns.Meaning(to.Ours)] = to.Unit
	}
	is := func(m columns.Meaning) bool { _, ok := has[m]; return ok }
	all := []step{{label: words.LogFurnace, blank: words.BlankIsNot, takes: func(t *taking, _ *screen.Shared, in screen.Input) error {
		t.as.Furnace = in.Trimmed()
		return nil
	}}}
	if !is(columns.Date) {
		all = append(all, step{label: words.LogDay, blank: words.BlankIsNot, takes: func(t *taking, _ *screen.Shared, in screen.Input) error {
			day, err := time.Parse(time.DateOnly, in.Trimmed())
			if in.Trimmed() != "" && err != nil {
				return errors.New(words.BadLogDay)
			}
			t.as.Day = day
			return nil
		}})
	}
	if u := has[columns.Clock]; u == "min" || u == "h" {
		all = append(all, step{label: words.LogBegin, blank: words.BlankAtNought, takes: func(t *taking, _ *screen.Shared, in screen.Input) error {
			at, err := time.Parse(modelwords.Clock, in.Trimmed())
			if in.Trimmed() != "" && err != nil {
				return errors.New(words.BadLogBegin)
			}
			t.as.Begin = at.Hour()*60 + at.Minute()
			return nil
		}})
	}
	holds := func(label, name string, what entry.What) step {
		return step{label: label, blank: words.BlankIsNot, unit: vessel.Unit, takes: func(t *taking, sh *screen.Shared, in screen.Input) error {
			if in.Trimmed() == "" {
				return nil
			}
			kg, err := in.Value(sh.Units, vessel)
			t.as.Measures = append(t.as.Measures, entry.Measure{Name: name, What: what, Mass: entry.Some(entry.Kilogram(kg))})
			return err
		}}
	}
	if is(columns.Measures) {
		all = append(all, holds(words.LogBucketKg, "bucket", entry.Charcoal))
	}
	if is(columns.Scoops) {
		all = append(all, holds(words.LogScoopKg, "scoop", entry.Ore))
	}
	return append(all, step{label: words.LogColumnsName, blank: words.BlankNotKept, given: s.open.mapping.Name, takes: func(t *taking, _ *screen.Shared, in screen.Input) error {
		t.mapping.Name = in.Trimmed()
		return nil
	}})
}

// asks asks the first of the steps; after the last the log is taken in.
func (s Screen) asks(steps []step, t taking) screen.Effect {
	if len(steps) == 0 {
		take := s.open.sheet.Take
		s.reads = true
		return screen.Each{screen.Put{Screen: s}, screen.Run{Cmd: func() tea.Msg {
			id, n, err := take(t.mapping, t.as)
			return taken{id, n, err, t.mapping}
		}}}
	}
	one := steps[0]
	return screen.Ask{Dialog: screen.Field{
		Label: one.label, Unit: one.unit, Blank: one.blank, Input: screen.Prefilled(one.given, one.unit != ""),
		Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
			next := t
			if err := one.takes(&next, sh, in); err != nil {
				return nil, err
			}
			return s.asks(steps[1:], next), nil
		},
	}}
}

// lacks puts why nothing can be kept in words of the screen.
func lacks(err error) string {
	switch {
	case errors.Is(err, columns.ErrNoTime):
		return words.NoColumnIsTime
	case errors.Is(err, columns.ErrNothing):
		return words.OnlyTheTime
	}
	return err.Error()
}
