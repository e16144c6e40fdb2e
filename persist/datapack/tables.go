package datapack

import (
	"strconv"
	"sync"
	"time"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forge"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/model/session"
	"chargehand/model/shelf"
	"chargehand/model/solve"
	"chargehand/model/words"
	"chargehand/persist/logcsv"
	"chargehand/persist/twin"
)

// Source is what a package is made of: a smelt's stored lines, and of the house's lines
// those that the smelt leans on.
type Source struct {
	Stream string
	Lines  [][]byte
	House  [][]byte
}

// every is how far apart the rows of the table of figures are.
const every = time.Minute

// The names of the tables.
const (
	entriesTable      = "entries"
	houseEntriesTable = "house_entries"
	lineField         = "line"
	saysField         = "says"
)

// tables makes every table of a package. The error is that of a line that cannot be
// read, or of an account that cannot be made; what the solver cannot tell is not in the
// table of figures.
func tables(src Source) ([]Table, error) {
	es, err := twin.DecodeAll(src.Stream, "", src.Lines)
	if err != nil {
		return nil, err
	}
	h, err := twin.DecodeAll(entry.House, "", src.House)
	if err != nil {
		return nil, err
	}
	j := house.JournalOf(h)
	s := session.Open(src.Stream, es).Assayed(lot.Assayed(j.Lines(), sync.OnceValue(func() house.State { return j.Fold(nil) })))
	names := house.NamesOf(j.Lines()).Also(s.Lots())
	whole := s.Overview().Whole
	if j, ok := whole.Job(); ok {
		whole = whole.Solved(j.Run(new(solve.Solver)))
	}
	all := []Table{
		smeltTable(whole), entryTable(entriesTable, "What was keyed", "Every entry of the smelt, as it was kept. The smelt is taken back from the column line alone.", src.Lines, es, names),
		figureTable(s), warningTable(whole),
	}
	if a, err := account.Of(account.Read(es, h)); err == nil {
		all = append(all, accountTable(a))
	}
	all = append(all, lotTable(whole.Lots(), len(whole.Light().Lots)), pieceTable(h, es))
	return append(all, entryTable(houseEntriesTable, "What of the house the smelt leans on", "Entries about the lots, the furnace, the plan and the pieces of the smelt.", src.House, h, names)), nil
}

// stamp is a time as both versions of the standard take it: in UTC, to the second. The
// stored line has it exactly, with its offset.
func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format("2006-01-02T15:04:05Z")
}

// num is a number as the standard writes it, with no more digits than are worth it.
func num(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

func maybe[T ~float64](m entry.Maybe[T]) string {
	if !m.Known {
		return ""
	}
	return num(float64(m.Value))
}

// text is what somebody typed, as a cell that no table program takes for a formula.
func text(s string) string { return logcsv.Harmless(s) }

func smeltTable(s session.Session) Table {
	t := Table{Name: "smelt", Title: "The smelt", Means: "The smelt in one row.", Key: []string{"smelt"}, Fields: []Field{
		{"smelt", isString, "", "name of the smelt", true}, {"uid", isString, "", "random name that no other smelt has", false},
		{"lit", isDatetime, "", "when the fire was lit, in UTC; empty when the day is not known", false},
		{"utc_offset_min", isNumber, "min", "of the clocks there: add it to a time to have theirs", false},
		{"mark", isString, "", "practice, rehearsal or invented: it counts for nothing then", false},
		{"furnace", isString, "", "name of the furnace", false}, {"bore_cm", isNumber, "cm", "bore at the tuyere", false},
		{"stack_cm", isNumber, "cm", "from the tuyere to the charging mark", false},
		{"ore_dry_kg", isNumber, "kg", "ore that went in, without its water", false},
		{"charcoal_kg", isNumber, "kg", "charcoal that went in, fill included, as charged", false},
		{"bloom_kg", isNumber, "kg", "bloom as weighed last; 0 for none", false},
		{"bloom_state", isString, "", "in which state it was weighed: hot, cold, compacted", false},
		{"lasted_min", isNumber, "min", "from light until the bloom was taken out, else until it was over", false},
		{"solver", isString, "", "version of the solver that the figures are of", false},
	}}
	l, r := s.Light(), s.Reading()
	row := []string{s.ID(), l.UID, "", "", words.Mark(l), text(l.Furnace.Name), maybe(l.Furnace.Bore), maybe(l.Furnace.Stack), middle(r.Figure(figure.OreDry)), middle(r.Figure(figure.CharcoalCharged)), "", "", "", solve.Version}
	if !l.Undated {
		_, offset := r.Lit.Zone()
		row[2], row[3] = stamp(r.Lit), num(float64(offset)/60)
	}
	if o, over := s.Outcome(); over {
		row[10], row[11], row[12] = maybe(o.Bloom), string(o.State), num(o.Lasted.Minutes())
		if o.None {
			row[10] = "0"
		}
	}
	t.Rows = [][]string{row}
	return t
}

func middle(f figure.Figure) string {
	if !f.Known() {
		return ""
	}
	return num(f.P50)
}

func entryTable(name, title, means string, lines [][]byte, es []entry.Entry, names house.Names) Table {
	t := Table{Name: name, Title: title, Means: means, Key: []string{"seq"}, Fields: []Field{
		{"seq", isInteger, "", "number of the entry in its stream", true}, {"happened", isDatetime, "", "when it happened, in UTC", false},
		{"kept", isDatetime, "", "when it was taken down, in UTC", false}, {"kind", isString, "", "what kind of event it is", false},
		{"by", isString, "", "initials of who keyed it", false}, {saysField, isString, "", "what it says, in words", false},
		{lineField, isString, "", "the entry as it is stored, one JSON object: exact", true},
	}}
	for i, e := range es {
		kind := ""
		if e.Event != nil {
			kind = string(e.Event.Kind())
		}
		t.Rows = append(t.Rows, []string{strconv.FormatUint(e.Seq, 10), stamp(e.Happened), stamp(e.Kept), kind, text(e.By), text(words.Units{}.Event(names.In(e.Event))), string(lines[i])})
	}
	return t
}

func figureTable(s session.Session) Table {
	t := Table{Name: "figures", Title: "The smelt in numbers", Means: "Every figure that is known, each minute, by all that was keyed.", Key: []string{"elapsed_s", "figure"}, Fields: []Field{
		{"elapsed_s", isNumber, "s", "time since the fire was lit", true}, {"figure", isString, "", "which figure", true},
		{"p10", isNumber, "", "10th percentile, in the unit of the row", false}, {"p50", isNumber, "", "middle; empty where only the ends say anything", false},
		{"p90", isNumber, "", "90th percentile", false}, {"unit", isString, "", "unit of the row; 1 for a plain number", true},
		{"basis", isString, "", "measured, estimated or guessed", true}, {"means", isString, "", "what the figure is", false},
	}}
	said := map[figure.Name]bool{}
	for r, _ := range s.Course(every) {
		for n := range figure.Count {
			f := r.Figure(n)
			if !f.Known() {
				continue
			}
			row := []string{num(r.At.Seconds()), n.Key(), num(f.P10), "", num(f.P90), figure.Table[n].Unit, f.Basis.String(), ""}
			if n.HasMiddle() {
				row[3] = num(f.P50)
			}
			if !said[n] { // once is enough
				row[7], said[n] = figure.Table[n].Meaning, true
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

func warningTable(s session.Session) Table {
	t := Table{Name: "warnings", Title: "Warnings", Means: "Every time that a warning was raised.", Key: []string{"number"}, Fields: []Field{
		{"number", isInteger, "", "in the order in which they were raised", true}, {"raised_s", isNumber, "s", "time since the fire was lit", true},
		{"cleared_s", isNumber, "s", "when it cleared; empty when it stood at the end", false}, {"rule", isString, "", "which warning", true},
		{"grade", isString, "", "how soon it asks for an answer", true}, {"title", isString, "", "what it says", false},
		{"evidence", isString, "", "what showed it", false}, {"seen", isString, "", "yes when somebody said that it was seen", false},
	}}
	for i, w := range s.Warnings() {
		title, evidence, _ := words.Units{}.Warning(w)
		row := []string{strconv.Itoa(i + 1), num(w.Onset.Seconds()), "", string(w.Rule), words.Grade(w.Grade), text(title), text(evidence), ""}
		if w.Cleared > 0 {
			row[2] = num(w.Cleared.Seconds())
		}
		if w.Acknowledged {
			row[7] = "yes"
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func accountTable(a account.Account) Table {
	t := Table{Name: "account", Title: "Where the iron went", Means: "Iron in and out, as far as weighings and assays can tell; what was solved for says so.", Key: []string{"number"}, Fields: []Field{
		{"number", isInteger, "", "number of the row", true}, {"side", isString, "", "in or out", true}, {"what", isString, "", "what went in or came out", true},
		{"lot", isString, "", "of which lot", false}, {"mass_kg", isNumber, "kg", "dry", false}, {"iron_share", isNumber, "1", "share of iron", false},
		{"iron_p10_kg", isNumber, "kg", "iron, 10th percentile", false}, {"iron_kg", isNumber, "kg", "iron", false}, {"iron_p90_kg", isNumber, "kg", "iron, 90th percentile", false},
		{"rests_on", isString, "", "what the row rests on", false},
	}}
	for _, side := range []struct {
		name string
		rows []account.Row
	}{{words.AccountIn, a.In}, {words.AccountOut, a.Out}} {
		for _, r := range side.rows {
			row := []string{strconv.Itoa(len(t.Rows) + 1), side.name, words.AccountPlace(r.Place), text(r.Name), "", "", "", "", "", words.AccountRests(r)}
			if r.Mass.Known() {
				row[4] = num(r.Mass.Value)
			}
			if r.Share.Known() {
				row[5] = num(r.Share.Value)
			}
			if r.Iron.Known() {
				b := r.Iron.Band()
				row[6], row[7], row[8] = num(b.P10), num(b.P50), num(b.P90)
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

// lotTable has the lots of a smelt, the first so many of which lay ready when it was lit.
func lotTable(lots []entry.Lot, lit int) Table {
	t := Table{Name: "lots", Title: "Lots", Means: "What lay ready when the fire was lit, and what was taken to the fire later, as the smelt took each down.", Key: []string{"number"}, Fields: []Field{
		{"number", isInteger, "", "number of the row", true}, {"uid", isString, "", "random name that no other lot has", false}, {"name", isString, "", "", false},
		{"what", isString, "", "charcoal, ore or another material", true}, {"mass_kg", isNumber, "kg", "as it lay", false},
		{"moisture", isNumber, "1", "water by the mass dry", false}, {"iron_share", isNumber, "1", "share of iron", false}, {"mix", isString, "", "of an ore, by which smelts are compared", false},
	}, AddedRows: len(lots) - lit}
	for i, lot := range lots {
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), string(lot.UID), text(lot.Name), string(lot.What), maybe(lot.Mass), maybe(lot.Moisture), maybe(lot.Iron), text(lot.Mix)})
	}
	return t
}

func pieceTable(h, es []entry.Entry) Table {
	t := Table{Name: "pieces", Title: "Pieces of iron", Means: "What became of the bloom.", Key: []string{"uid"}, Fields: []Field{
		{"uid", isString, "", "random name that no other piece has", true}, {"kind", isString, "", "bloom, half, billet, bar, finished, crop end", false},
		{"name", isString, "", "", false}, {"mass_kg", isNumber, "kg", "as last weighed or said", false}, {"sessions", isInteger, "", "how often it was worked", false},
		{"share", isNumber, "1", "mass by that of the step before, which base names", false}, {"base", isString, "", "what share is of", false},
		{"of_ore", isNumber, "1", "mass by the ore of the smelt, dry, that it stands for; empty where that is not known", false},
		{"if_alike", isString, "", "yes where of_ore holds only if the rest of the bloom goes alike", false},
	}, Added: 4}
	if len(es) == 0 {
		return t
	}
	sum := shelf.Of(es[0].Stream, es)
	b := forge.Of(house.Fold(h, []house.Use{sum.Used}, time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)), []shelf.Summary{sum})
	for i, p := range b.Pieces {
		if p.UID == "" {
			continue
		}
		row := []string{string(p.UID), string(p.Form), text(p.Name), maybe(p.Mass), strconv.Itoa(len(p.Sessions) + p.Heats), "", "", "", ""}
		steps := b.Chain(i)
		if n := len(steps) - 1; n > 0 && steps[n].Share > 0 {
			row[5], row[6] = num(steps[n].Share), text(words.ChainBase(b, steps, n))
		}
		if share, ifAlike, known := b.OfOre(i); known {
			if row[7] = num(share); ifAlike {
				row[8] = "yes"
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
