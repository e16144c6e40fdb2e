// Package sheet is the paper for a smelt to come: the log to fill in, with what is planned
// and the clock of the day on it, and a page for the wall. Without a plan it is the same
// log with nothing planned on it.
package sheet

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/paper"
	"chargehand/model/plan"
	"chargehand/model/rule"
	"chargehand/model/words"
)

// Ask is what a sheet is made of. All of it may be missing.
type Ask struct {
	Plan     *entry.Plan
	Furnace  *entry.Furnace
	Measures []entry.Measure
	Lessons  []entry.Lesson // the newest first
	Wall     entry.WallWords
	Begin    time.Duration // when the wood fire is lit, since midnight
}

// FromHouse is what the house knows of a plan, nil for none: its furnace, the measures,
// the last lessons of the furnace or the ore, and the words for the wall.
func FromHouse(h house.State, p *house.Plan, begin time.Duration) Ask {
	a := Ask{Measures: h.Measures, Wall: h.WallWords, Begin: begin}
	var furnace entry.UID
	mix := ""
	if p != nil {
		a.Plan = &p.Plan
		for _, id := range p.Lots {
			if l, ok := h.Lot(string(id)); ok && l.Of() == entry.LotOre {
				mix = l.Mix
			}
		}
		if f, ok := h.Furnace(p.Furnace); ok {
			built := f.Last().Furnace
			a.Furnace, furnace = &built, f.ID
		}
	}
	if a.Furnace == nil && len(h.Furnaces) == 1 {
		built := h.Furnaces[0].Last().Furnace
		a.Furnace, furnace = &built, h.Furnaces[0].ID
	}
	a.Lessons = h.LessonsFor(furnace, mix, mostLessons)
	return a
}

// mostLessons is how many lessons stand on a sheet.
const mostLessons = 3

// Sheet is what stands on the paper.
type Sheet struct {
	Title    string
	Facts    []Fact
	Lessons  []string
	Letters  []Letter
	Planned  bool // the rows have what is planned
	Rows     []Row
	Day      []Line
	Roles    []Role
	Wall     []Fact // the questions, with the answers that were keyed
	Own      []string
	Cautions []Caution
}

// Fact is one line: its name, and what is to be said of it or a blank to fill in.
type Fact struct{ Name, Says string }

// Letter is a letter of the log with what it stands for and what is written behind it.
type Letter struct{ Key, Does, Takes string }

// Row is a row of the log. A blank one is to be filled in.
type Row struct{ Time, Letter, Planned string }

// Line is a line of the day.
type Line struct{ Time, What string }

// Role is what somebody does, and where that is done.
type Role struct{ Does, Stands string }

// Caution is one of the usual cautions.
type Caution struct{ Title, Says string }

// Rows of the log: PageRows stand on its first page; where more are planned, some follow
// them.
const (
	PageRows = 30
	moreRows = 6
)

// Of makes the sheet.
func Of(a Ask) Sheet {
	s := Sheet{Title: words.SheetTitle, Facts: facts(a), Roles: roles(), Own: a.Wall.Own(), Cautions: cautions()}
	for _, l := range a.Lessons {
		s.Lessons = append(s.Lessons, l.Text)
	}
	for _, l := range paper.Letters {
		s.Letters = append(s.Letters, Letter{l.Key, words.PaperDoes(l), words.PaperTakes(l.Takes)})
	}
	for q := range entry.WallQuestion(entry.WallQuestions) {
		s.Wall = append(s.Wall, Fact{words.WallAsks(q), a.Wall.Answer(q)})
	}
	if a.Plan != nil {
		s.Title = words.SheetOf(a.Plan.Name)
		s.Rows, s.Day = planned(a)
		s.Planned = len(s.Rows) > 0
	}
	if !s.Planned {
		s.Rows = make([]Row, PageRows)
		for _, what := range words.UsualDay {
			s.Day = append(s.Day, Line{What: what})
		}
		return s
	}
	more := PageRows - len(s.Rows)
	if more < 0 {
		more = moreRows
	}
	s.Rows = append(s.Rows, make([]Row, more)...)
	return s
}

// facts are what is known before the day, and what is filled in on it.
func facts(a Ask) []Fact {
	u := words.Units{}
	fs := []Fact{{Name: words.SheetDay}, {Name: words.SheetCrew}}
	if p := a.Plan; p != nil {
		fs[0].Says = p.Day
		fs = append(fs, Fact{words.ReportWanted, words.SheetWanted(u, *p)})
	}
	f := Fact{Name: words.ReportFurnace}
	if a.Furnace != nil {
		f.Says = a.Furnace.Name + ": " + words.FurnaceSizes(*a.Furnace)
	}
	fs = append(fs, f)
	m := Fact{Name: words.SheetMeasures}
	for i, one := range a.Measures {
		if i > 0 {
			m.Says += "; "
		}
		m.Says += u.MeasureOf(one)
	}
	return append(fs, m, Fact{Name: words.SheetTrying})
}

// planned are the rows of the way that was taken, and the day in at most ten lines.
func planned(a Ask) (rows []Row, day []Line) {
	u := words.Units{}
	at := a.Begin
	say := func(what string) { day = append(day, Line{clock(at), what}) }
	say(words.DayWoodFire)
	at += time.Duration(plan.WoodFire.P50 * float64(time.Hour))
	steps := taken(*a.Plan)
	rises, most, ore := 0, mostRises, false
	for _, st := range steps {
		each := time.Duration(float64(st.Every.Value) * float64(time.Minute))
		parts := u.SheetParts(st.Parts)
		switch {
		case st.Does == entry.StepFill:
			all := u.SheetParts(times(st.Charges, st.Parts))
			say(words.DayFill(all))
			rows = append(rows, Row{clock(at), "f", all})
			at += time.Duration(st.Charges) * each
			continue
		case st.Does == entry.StepBurnDown || st.Charges == 0:
			say(words.DayBurnDown)
			rows = append(rows, Row{clock(at), "d", words.SheetBurnDown})
			at += time.Duration(float64(st.Lasts.Value) * float64(time.Minute))
			continue
		case st.Does == entry.StepLastOre:
			say(words.DayLastOre)
			rows = append(rows, Row{clock(at), "m", words.SheetLastOre})
		case st.Does == entry.StepIronSlag:
			say(words.DaySeedSlag(parts))
			most--
		case !st.Parts.Holds(entry.Ore):
			say(words.DayCharcoalOnly(parts))
		case !ore:
			say(words.DayFirstOre(parts))
			ore = true
		case rises < most && st.Charges > 1: // a single one is what was left over
			say(words.DayOre(parts))
			rises++
		}
		key := "c"
		if !st.Parts.Holds(entry.Ore) {
			key = "f"
		}
		for range st.Charges {
			rows = append(rows, Row{clock(at), key, parts})
			at += each
		}
	}
	say(words.DayPull)
	return rows, day
}

// mostRises is how many rises of the ore stand among the ten lines of the day.
const mostRises = 3

// times is what so many like charges hold.
func times(n int, ps entry.Parts) entry.Parts {
	all := slices.Clone(ps)
	for i := range all {
		all[i].Count.Value *= entry.Count(n)
		all[i].Mass.Value *= entry.Kilogram(n)
	}
	return all
}

// taken are the steps of the way that was taken of a plan, else of the first.
func taken(p entry.Plan) []entry.RecipeStep {
	for _, w := range p.Plans {
		if w.Name == p.Taken {
			return w.Steps
		}
	}
	if len(p.Plans) > 0 {
		return p.Plans[0].Steps
	}
	return p.Ramp
}

// clock is a time of the day; past midnight it begins anew.
func clock(at time.Duration) string {
	return time.Time{}.Add(at.Round(time.Minute)).Format(words.Clock)
}

// roles are who does what and where to stand (common practice; the cautions have what is
// published).
func roles() []Role {
	var all []Role
	for _, r := range words.SheetRoles {
		all = append(all, Role{r.Does, r.Stands})
	}
	return all
}

// cautions are all that the program knows, each with the usual care; why, the report says.
func cautions() []Caution {
	var all []Caution
	for _, c := range rule.Cautions {
		title, _, care := words.Caution(c.ID)
		all = append(all, Caution{title, care})
	}
	return all
}
