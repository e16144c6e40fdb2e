package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/words"
)

// Starter is a furnace to begin with: its sizes, its measures and its first
// charge.
type Starter struct {
	Name     string
	Furnace  entry.Furnace
	Measures []entry.Measure
	Recipe   entry.Parts
}

// Starters are furnaces of the usual sizes, every number of them a guess to be
// replaced by measuring. The short shaft has the sizes, the bucket and the
// first ratio of the course furnace of 30 Nov 2016 (Markewitz, data sheet); the
// others are that one scaled by bore and height (common practice).
func Starters() []Starter {
	return []Starter{
		starter("short shaft", 25, 50, 60, 15, 20, 1.9, 0.5, 2),
		starter("tall narrow shaft", 22, 80, 90, 15, 20, 1.5, 0.4, 2),
		starter("wide shaft", 35, 60, 70, 20, 25, 3.5, 0.9, 2),
	}
}

func starter(name string, bore, stack, rim, base entry.Centimetre, tuyere entry.Millimetre, bucket, scoop entry.Kilogram, scoops entry.Count) Starter {
	const charcoal, ore = "bucket", "scoop"
	return Starter{
		Name: name,
		Furnace: entry.Furnace{
			Name: name, Bore: entry.Some(bore), Stack: entry.Some(stack), Rim: entry.Some(rim), TuyereBase: entry.Some(base),
			TuyereBore: entry.Some(tuyere), TuyereAngle: entry.Some(entry.Degree(20)), Practice: entry.SlagBowl, Guessed: true,
		},
		Measures: []entry.Measure{
			{Name: charcoal, What: entry.Charcoal, Mass: entry.Some(bucket), Guessed: true},
			{Name: ore, What: entry.Ore, Mass: entry.Some(scoop), Guessed: true},
		},
		Recipe: entry.Parts{
			{What: entry.Charcoal, Measure: charcoal, Count: entry.Some(entry.Count(1))},
			{What: entry.Ore, Measure: ore, Count: entry.Some(scoops)},
		},
	}
}

// ownStarters is how many of a person's own furnaces are offered.
const ownStarters = 3

// startersRead brings the furnaces of the last smelts.
type startersRead struct{ own []Starter }

// readStarters reads the furnaces of the newest smelts, each as it was lit, with
// its measures as they weighed in the end and its blower as it was metered. What cannot be read is not offered;
// opening that smelt says why.
func (m Model) readStarters() tea.Cmd {
	var ids []string
	seen := map[string]bool{}
	for _, l := range m.stand.lines {
		if !l.Practice && !l.Invented && !seen[l.Furnace] && len(ids) < ownStarters {
			ids, seen[l.Furnace] = append(ids, l.ID), true
		}
	}
	if len(ids) == 0 {
		return nil
	}
	store := m.cfg.Store
	return m.command(func() tea.Msg {
		var read startersRead
		for _, id := range ids {
			if es, err := store.Entries(id); err == nil && len(es) > 0 {
				s := session.Open(id, es)
				r := s.AsOf(fold.All, s.End()).Reading()
				own := Starter{Name: words.AsIn(id), Furnace: r.Light.Furnace, Measures: r.Measures, Recipe: r.Light.Recipe}
				own.Furnace.Blower = r.Blower
				read.own = append(read.own, own)
			}
		}
		return read
	})
}

// offered takes a person's own furnaces before the usual ones, unless somebody
// is filling in the form already.
func (m Model) offered(r startersRead) Model {
	form, ok := m.screens[lightScreen].(lightForm)
	if !ok || !form.untouchedYet() {
		return m
	}
	m.starters = append(r.own, m.cfg.Starters...)
	return m.withScreen(newLightForm(m.starters, m.theme.Units))
}
