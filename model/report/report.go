// Package report is one smelt in print: everything a page of it says, as a value, and
// that page as one HTML file that asks nothing of the net.
//
// What the page says comes from the session of the smelt and from the house, by the
// same figures, warnings and words as the screens. Where a figure is not known the
// page says so; where it has a spread the spread is printed.
package report

import (
	"fmt"
	"slices"
	"time"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forge"
	"chargehand/model/house"
	"chargehand/model/session"
	"chargehand/model/shelf"
	"chargehand/model/words"
)

// Options say what of a smelt is printed that is otherwise left out.
type Options struct {
	Names     bool // initials, and who was handed over to
	Places    bool // where the lots are from
	Incidents bool
	Photos    []Taken
	NotTaken  int // photos that were not taken
}

// Report is what the page says. All text is plain; the page escapes it.
type Report struct {
	Name     string
	Mark     string // practice, rehearsal, invented; "" for a smelt that counts
	Lit      string
	Facts    []Fact
	Strip    Strip
	Plots    []Plot
	Moments  []Moment
	Warnings []Warning
	Entries  []Entry
	ByWhom   bool // the entries have a column of initials
	Account  Account
	Pieces   []Piece
	Photos   []Photo
	Cautions []Caution
	Lost     []string // what of the entries is lost
	Foot     []string // what was left out, and what stands behind the numbers
}

// Fact is one line of what was wanted and what came: Base says on what it is counted.
type Fact struct{ Name, Says, Base string }

// Warning is one time that a warning was raised, with what was keyed in the ten
// minutes after it.
type Warning struct {
	Since, Until, Grade, Title, Evidence, Remedy string
	Keyed                                        []string
}

// Entry is one line of what was keyed.
type Entry struct{ Time, What, By, Note string }

// Account is where the iron went; Why says why there is none.
type Account struct {
	Rows  []AccountRow
	Lines []string // the verdict, what else went in and out, the yields
	Why   string
}

// AccountRow is one stream. Bar and Spread are shares of the longest one, per cent.
type AccountRow struct {
	Side, What, Iron, Rests string
	Bar, Spread             float64
}

// Piece is a piece of iron that came of the smelt.
type Piece struct{ Name, Mass, Share, Worked, State, Tests string }

// Caution is a caution with its source.
type Caution struct{ Title, Fact, Care, Source string }

// Of gives the report of a smelt at its end, or as it stands. The house may be empty.
// The error is of the shaft solver, which the report then goes without.
func Of(s session.Session, kept []entry.Entry, h []entry.Entry, o Options) (Report, error) {
	light := s.Light()
	r := Report{
		Name: s.ID(), Mark: words.Mark(light), Lit: litOn(s), ByWhom: o.Names,
		Account: accountOf(kept, h), Pieces: pieces(light, h, kept, o), Lost: lost(s),
		Foot: foot(o),
	}
	c, err := courseOf(s)
	r.Facts = facts(c.end, light, h, o)
	r.Photos = photos(c.end, o.Photos, o)
	r.Strip = strip(c)
	r.Plots = plots(c)
	r.Moments = moments(c)
	r.Entries = entries(c.end, o)
	r.Warnings = warnings(c.end, o)
	r.Cautions = cautions()
	return r, err
}

// litOn is when the fire was lit.
func litOn(s session.Session) string {
	if s.Light().Undated {
		return words.ReportUndated
	}
	return s.Reading().Lit.Format("2006-01-02 15:04")
}

// facts are the lines of what was wanted and what came.
func facts(s session.Session, light entry.Light, h []entry.Entry, o Options) []Fact {
	u := words.Units{}
	wanted := words.ReportNotWanted
	if p := light.Plan; p != nil && p.Wanted.What != "" {
		wanted = words.PieceKind(p.Wanted.What)
		if p.Wanted.Mass.Known {
			wanted += " " + u.Kg(p.Wanted.Mass.Value)
		}
		if p.Sure.Known {
			wanted += ", " + words.NIn10(float64(p.Sure.Value))
		}
	}
	fs := []Fact{{Name: words.ReportWanted, Says: wanted}}
	if light.Trying != "" {
		fs = append(fs, Fact{Name: words.ReportTried, Says: light.Trying})
	}
	r := s.Reading()
	if done, over := s.Outcome(); over {
		for _, p := range words.Result(u, done, words.SomeUnweighed, words.SomeUnweighed) {
			fs = append(fs, Fact{p.Name, p.Says, p.Base})
		}
		for _, promised := range words.Promised(u, light.Plan, done) {
			fs = append(fs, Fact{Name: words.ReportPromised, Says: promised})
		}
	} else {
		for _, n := range []figure.Name{figure.OreDry, figure.CharcoalCharged, figure.BloomEnd} {
			fs = append(fs, Fact{figure.Table[n].Key, told(r.Figure(n), figure.Table[n].Unit, 1), figure.Table[n].Meaning})
		}
	}
	fs = append(fs, Fact{Name: words.ReportFurnace, Says: words.FurnaceSizes(light.Furnace)})
	for _, l := range light.Lots {
		says := l.Name
		if o.Places && l.Origin != "" {
			says += ", " + l.Origin
		}
		fs = append(fs, Fact{Name: words.ReportLots, Says: says})
	}
	for _, l := range house.Fold(h, nil, endOfTime).Lessons {
		if l.Smelt == light.UID && l.Smelt != "" {
			fs = append(fs, Fact{Name: words.ReportNextTime, Says: l.Text})
		}
	}
	return fs
}

// told is a figure with its spread, or that it is not known.
func told(f figure.Figure, unit string, decimals int) string {
	switch {
	case !f.Known() && f.AtLeast.Known:
		return words.AtLeastWord + " " + words.Units{}.Value(f.AtLeast.Value, unit, decimals)
	case !f.Known():
		return words.NotKnown
	case f.Wide():
		return words.FarApart
	}
	return words.Units{}.Spread(f.P10, f.P50, f.P90, unit, decimals)
}

// entries are the lines in the order in which they happened, those crossed out marked.
func entries(s session.Session, o Options) []Entry {
	var all []Entry
	for _, l := range inOrder(s) {
		switch ev := l.Event.(type) {
		case entry.Incident:
			if !o.Incidents {
				continue
			}
		case entry.HandOver:
			if !o.Names {
				all = append(all, Entry{Time: clock(s, l.At), What: words.ReportHandOver})
				continue
			}
		case nil:
			continue
		default:
			if !entry.IsAct(ev) && ev.Kind() != entry.KindLight {
				continue
			}
		}
		e := Entry{Time: clock(s, l.At), What: words.Units{}.Event(l.Event), By: l.Entry.By}
		switch {
		case l.Struck():
			e.Note = words.ReportStruck
		case l.AmendedBy != 0:
			e.Note = words.ReportChanged
		case l.Late():
			e.Note = words.ReportLate
		}
		if doubted := words.KeptThough(s.Sure(l)); doubted != "" && e.Note != "" {
			e.Note += "; " + doubted
		} else {
			e.Note += doubted
		}
		all = append(all, e)
	}
	return all
}

// within is how long after a warning what was keyed is printed beside it.
const within = 10 * time.Minute

// warnings are all that were raised, each with what was keyed soon after.
func warnings(s session.Session, o Options) []Warning {
	lines := inOrder(s)
	var all []Warning
	for _, w := range s.Warnings() {
		title, evidence, remedy := words.Units{}.Warning(w)
		one := Warning{Since: clock(s, w.Onset), Grade: words.Grade(w.Grade), Title: title, Evidence: evidence, Remedy: remedy}
		if w.Cleared > 0 {
			one.Until = clock(s, w.Cleared)
		}
		for _, l := range lines {
			if l.Struck() || l.Event == nil || !entry.IsAct(l.Event) || l.At < w.Onset || l.At > w.Onset+within || hidden(l.Event, o) {
				continue
			}
			one.Keyed = append(one.Keyed, clock(s, l.At)+" "+words.Units{}.Event(l.Event))
		}
		all = append(all, one)
	}
	return all
}

// hidden tells whether an event is left out.
func hidden(ev entry.Event, o Options) bool {
	switch ev.Kind() {
	case entry.KindIncident:
		return !o.Incidents
	case entry.KindHandOver:
		return !o.Names
	}
	return false
}

// clock is the wall time of a moment, as a clock shows it; a later day is said.
func clock(s session.Session, at time.Duration) string {
	r := s.Reading()
	t := r.Wall(at)
	said := t.Format(words.Clock)
	if days := int(t.Truncate(24*time.Hour).Sub(r.Lit.Truncate(24*time.Hour)).Hours() / 24); days > 0 && !sameDay(t, r.Lit) {
		said += fmt.Sprintf(" +%d d", days)
	}
	return said
}

func sameDay(a, b time.Time) bool { return a.YearDay() == b.YearDay() && a.Year() == b.Year() }

// lost says where entries are lost.
func lost(s session.Session) []string {
	var all []string
	for _, g := range s.Lost() {
		all = append(all, words.GapSaid(g)+": "+g.Why)
	}
	return all
}

// foot says what was left out, and on what the numbers rest.
func foot(o Options) []string {
	said := []string{words.ReportModel, words.ReportBands}
	for _, c := range []struct {
		asked     bool
		then, not string
	}{{o.Names, words.ReportNames, words.ReportNoNames}, {o.Places, words.ReportPlaces, words.ReportNoPlaces}, {o.Incidents, "", words.ReportHasNoInc}} {
		text := c.not
		if c.asked {
			text = c.then
		}
		if text != "" {
			said = append(said, text)
		}
	}
	if len(o.Photos) > 0 || o.NotTaken > 0 {
		said = append(said, words.ReportPhotosAre(len(o.Photos), o.NotTaken))
	}
	return append(said, words.LocalRules)
}

// accountOf is the account of the smelt, as far as it goes.
func accountOf(kept, h []entry.Entry) Account {
	a, err := account.Of(account.Read(kept, h))
	if err != nil {
		return Account{Why: words.ReportNoAccount + err.Error()}
	}
	longest := 0.0
	each := func(do func(side string, row account.Row)) {
		for _, side := range []struct {
			name string
			rows []account.Row
		}{{words.AccountIn, a.In}, {words.AccountOut, a.Out}} {
			for _, row := range side.rows {
				if row.Place != account.WallAndAsh && row.Place != account.Flux {
					do(side.name, row)
				}
			}
		}
	}
	each(func(_ string, row account.Row) {
		if row.Iron.Known() {
			longest = max(longest, row.Iron.Band().P90)
		}
	})
	var all Account
	each(func(side string, row account.Row) {
		one := AccountRow{Side: side, What: words.AccountStream(row), Iron: words.AccountKg(row.Iron), Rests: words.AccountRests(row)}
		if b := row.Iron.Band(); row.Iron.Known() && longest > 0 {
			one.Bar = 100 * max(0, b.P10) / longest
			one.Spread = 100 * max(0, b.P90-max(0, b.P10)) / longest
		}
		all.Rows = append(all.Rows, one)
	})
	all.Lines = append(all.Lines, words.AccountVerdict(a)...)
	all.Lines = append(all.Lines, words.AccountPassages(a)...)
	for _, y := range a.Yields {
		all.Lines = append(all.Lines, words.AccountYield(y).Line())
	}
	return all
}

// pieces are those of the house that came of this smelt, with how much of the ore and of
// what it was made of came that far. Whom a piece went to stands there only with names.
func pieces(light entry.Light, h, kept []entry.Entry, o Options) []Piece {
	if len(kept) == 0 || light.UID == "" {
		return nil
	}
	sum := shelf.Of(kept[0].Stream, kept)
	b := forge.Of(house.Fold(h, []house.Use{sum.Used}, endOfTime), []shelf.Summary{sum})
	var all []Piece
	for _, row := range b.Rows() {
		p := b.Pieces[row.At]
		if row.Compacted != nil || !slices.Contains(b.Smelts(row.At), light.UID) {
			continue
		}
		one := Piece{Name: words.PieceBrief(b, row.At), Share: words.ChainSaid(b, row.At), State: words.PieceState(b, row.At)}
		if p.EndsAs != "" && !o.Names {
			one.State = words.PieceEnded(p.EndsAs)
		}
		if p.Mass.Known {
			one.Mass = words.Units{}.Kg(p.Mass.Value)
		}
		if n := len(p.Sessions) + p.Heats; n > 0 {
			one.Worked = fmt.Sprint(n)
		}
		for i, t := range p.Tested {
			if i > 0 {
				one.Tests += "; "
			}
			one.Tests += words.Tested(t.PieceTested)
		}
		if found := forge.FoundIn(p); found.Known {
			one.Tests += ": " + words.MetalFound(found)
		}
		all = append(all, one)
	}
	if len(all) == 1 && all[0].Worked == "" && all[0].Tests == "" {
		return nil // the bloom as it was weighed: it stands above
	}
	return all
}

// endOfTime is later than anything that was kept.
var endOfTime = time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)
