package plan

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/plan"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// lessons are the last ones of the furnace or the ore mix that the plan is for.
func (s Screen) lessons(sh *screen.Shared) []entry.Lesson {
	h := sh.House()
	f, _ := s.built(h)
	mix := ""
	if l, ok := plan.MostOf(h, entry.LotOre); ok {
		mix = l.Mix
	}
	return h.LessonsFor(f.ID, mix, act.MostLessons)
}

// try asks what is tried this time. It goes with the plan when that is taken; said after
// that, it is kept with the plan that was taken today.
func (s Screen) try(sh *screen.Shared) screen.Effect {
	return act.Trying(s.lessons(sh), s.trying, func(text string) screen.Effect {
		s.trying = text
		said := words.TryingSaid(text)
		h := sh.House()
		if taken, ok := waiting(sh, h); ok {
			taken.Trying = text
			return screen.Each{screen.DidInHouse(func(*screen.Shared) string { return said }, taken), screen.Put{Screen: s}}
		}
		return screen.Each{screen.Put{Screen: s}, screen.Said(said)}
	})
}

// last paints the last lessons and what is tried, above a row of the grid: whole where
// there is room, else in one line. It gives the rows that it took.
func (s Screen) last(g cell.Grid, sh *screen.Shared, above, room int) int {
	const whole = 20
	w, _ := g.Size()
	var texts []string
	for _, l := range s.lessons(sh) {
		texts = append(texts, l.Text)
	}
	var lines []string
	switch {
	case len(texts) == 0:
	case room < whole:
		lines = []string{words.LessonsIn(texts)}
	default:
		lines = append(lines, words.LessonsHead+":")
		for _, text := range texts {
			lines = append(lines, words.LessonLine(text))
		}
	}
	if s.trying != "" {
		lines = append(lines, words.TryingIs(s.trying))
	}
	for i, line := range lines {
		g.TextIn(cell.Rect{X: 2, Y: above - len(lines) + i, W: w - 3, H: 1}, line, sh.Theme.Style(theme.Now))
	}
	return len(lines)
}

// waiting is the plan that was taken today, when it waits for its fire.
func waiting(sh *screen.Shared, h house.State) (entry.Plan, bool) {
	p, ok := h.Waiting()
	return p.Plan, ok && p.Day == sh.Now.Wall.Format(time.DateOnly)
}
