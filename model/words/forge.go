package words

import (
	"fmt"
	"math"
	"strings"
	"text/tabwriter"
	"time"

	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/shelf"
)

// The forge on the command line.
const (
	ForgeDoes  = "lists the pieces of iron, what was made of what and how much came that far; --from takes entries, --template shows how they are written"
	ForgeEmpty = "No piece of iron yet: weigh the bloom of a smelt, or key one of elsewhere.\n(chargehand forge --template shows how to key them)\n"
)

// SmeltCalled names a smelt: its furnace and its day.
func SmeltCalled(s shelf.Summary) string {
	switch {
	case s.Furnace == "":
		return s.ID
	case s.Undated || s.Lit.IsZero():
		return s.Furnace
	}
	return s.Furnace + ", " + s.Lit.Format("2 Jan 06")
}

// PieceCalled names a piece.
func PieceCalled(b forge.Bench, i int) string {
	p := b.Pieces[i]
	if p.Name != "" {
		return p.Name
	}
	said := PieceKind(p.Form)
	if s, ok := b.Smelt(i); ok {
		return said + " of " + SmeltCalled(s)
	}
	if name, byName := p.UID.Name(); byName {
		return said + " of " + name
	}
	if p.WhereFrom != "" {
		return said + ", " + p.WhereFrom
	}
	return said
}

// PieceListed names a piece where how it came stands beside it, with its day.
func PieceListed(b forge.Bench, i int) string {
	if s, ok := b.Smelt(i); ok && b.Pieces[i].Name == "" && s.Furnace != "" {
		return PieceKind(b.Pieces[i].Form) + " of " + s.Furnace
	}
	return PieceCalled(b, i)
}

// PieceBrief names a piece where what it is of stands beside.
func PieceBrief(b forge.Bench, i int) string {
	if p := b.Pieces[i]; p.Name == "" {
		return PieceKind(p.Form)
	}
	return PieceCalled(b, i)
}

// DoneWords are what was done in sessions, as it is told of a piece.
var doneWords = map[entry.Forged]string{
	entry.Consolidated: "compacted", entry.Folded: "folded", entry.Welded: "welded", entry.DrawnOut: "drawn out", entry.FinishedOff: "finished",
}

// Forged is what was done in a session, as it is told of a piece.
func Forged(d entry.Forged) string { return orElse(doneWords[d], string(d)) }

// PieceCame says how a piece came.
func PieceCame(b forge.Bench, i int) string {
	p := b.Pieces[i]
	sources := b.Sources(i)
	switch {
	case len(sources) > 1:
		var with []string
		for _, j := range sources[1:] {
			with = append(with, PieceCalled(b, j))
		}
		return "welded to " + strings.Join(with, ", ")
	case len(sources) == 1 && p.Form == entry.CropEnd:
		return "cut off"
	case len(sources) == 1:
		if n := parts(b, sources[0]); n > 1 {
			return "cut in " + []string{"two", "three", "four"}[min(n-2, 2)]
		}
		if done := lastDone(b, sources[0], p.Made); done != "" {
			return done
		}
		return "of " + PieceCalled(b, sources[0])
	}
	if s, ok := b.Smelt(i); ok {
		if s.Undated {
			return "of a smelt, day unknown"
		}
		return "of " + s.Lit.Format("2 Jan 2006")
	}
	said := p.WhereFrom
	if p.Year != 0 {
		said = joinedBy(said, ", ", fmt.Sprint(p.Year))
	}
	return orElse(said, "from nobody knows where")
}

// parts is how many pieces, crop ends not counted, were made of one.
func parts(b forge.Bench, i int) (n int) {
	for _, k := range b.Kids(i) {
		if b.Pieces[k].Form != entry.CropEnd {
			n++
		}
	}
	return n
}

// lastDone is what was done to a piece in its last session by a time: "folded, welded, 4
// heats".
func lastDone(b forge.Bench, i int, by time.Time) string {
	said := ""
	for _, s := range b.Pieces[i].Sessions {
		if !s.At.After(by) {
			said = SessionDone(s.ForgeSession)
		}
	}
	return said
}

// SessionDone is what was done in a session, in few words.
func SessionDone(s entry.ForgeSession) string {
	var did []string
	for _, d := range s.Did {
		did = append(did, Forged(d))
	}
	said := strings.Join(did, ", ")
	if s.Heats.Known {
		said = joinedBy(said, ", ", many(int(s.Heats.Value), "heat"))
	}
	return said
}

// PieceWorked says what was done to a piece itself, last.
func PieceWorked(b forge.Bench, i int) string {
	if said := lastDone(b, i, time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)); said != "" {
		return said
	}
	if n := b.Pieces[i].AllHeats(); n > 0 {
		return many(n, "heat")
	}
	return "worked"
}

// PieceState says how it stands with a piece.
func PieceState(b forge.Bench, i int) string {
	p := b.Pieces[i]
	switch {
	case p.EndsAs != "":
		return joinedBy(pieceEnd(p.EndsAs), ", ", p.To)
	case p.InFire != 0:
		return "in the fire"
	case p.Spent:
		for _, k := range b.Kids(i) {
			if b.Welded(k) && b.Sources(k)[0] != i {
				return "welded to " + PieceCalled(b, b.Sources(k)[0])
			}
		}
		return ""
	case p.Form == entry.CropEnd:
		return "kept"
	case p.Form == entry.Finished:
		return "done"
	case len(p.Sessions)+p.AllHeats() == 0 && (p.Form == entry.BloomPiece || p.Form == entry.HalfPiece):
		return "not begun"
	case p.Worked.IsZero():
		return "not begun"
	}
	return "in work"
}

// ForgeHours says hours: "2 h 40".
func ForgeHours(h float64) string {
	m := int(math.Round(60 * h))
	switch {
	case m < 60:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	}
	return fmt.Sprintf("%d h %02d", m/60, m%60)
}

// Forging says an event of the forge with its pieces by name.
func (u Units) Forging(b forge.Bench, ev entry.Event) string {
	name := func(id entry.UID) string {
		if i := b.Find(id); i >= 0 {
			return PieceCalled(b, i)
		}
		return "a piece"
	}
	names := func(ids []entry.UID) string {
		all := make([]string, len(ids))
		for i, id := range ids {
			all[i] = name(id)
		}
		return strings.Join(all, ", ")
	}
	switch ev := ev.(type) {
	case entry.Piece:
		i := b.Find(ev.UID)
		if i < 0 {
			return u.Event(ev)
		}
		said := joinedBy(PieceCalled(b, i), " ", u.mass(ev.Mass))
		if ev.EndsAs != "" {
			return joinedBy(said+": "+pieceEnd(ev.EndsAs), ", ", ev.To)
		}
		switch {
		case len(ev.From) > 1:
			var of []entry.UID
			for _, f := range ev.From {
				of = append(of, f.Piece)
			}
			said += ", welded of " + names(of)
		case len(ev.From) == 1 && ev.From[0].Piece != "":
			said += ", of " + name(ev.From[0].Piece)
		case ev.WhereFrom != "":
			said += ", " + ev.WhereFrom
		}
		if len(ev.Size) == 3 {
			said += fmt.Sprintf(", %s x %s x %s mm", plain(float64(ev.Size[0])), plain(float64(ev.Size[1])), plain(float64(ev.Size[2])))
		}
		return said
	case entry.ForgeSession:
		return names(ev.Pieces) + ": " + u.session(b, ev)
	case entry.Heat:
		return names(ev.Pieces) + ": in the fire"
	case entry.HeatOver:
		return "out of the fire"
	case entry.PieceWeighed:
		said := name(ev.Piece) + " weighed: " + u.Kg(ev.Mass)
		if ev.InWater.Known {
			said += ", " + u.Kg(ev.InWater.Value) + " in water"
		}
		return joinedBy(said, ", ", string(ev.State))
	case entry.PieceTested:
		return name(ev.Piece) + ", " + Tested(ev)
	}
	return u.Event(ev)
}

// session is a session in one line, without its pieces.
func (u Units) session(b forge.Bench, s entry.ForgeSession) string {
	did := make([]string, len(s.Did))
	for i, d := range s.Did {
		did[i] = string(d)
	}
	said := strings.Join(did, ", ")
	add := func(more string) { said = joinedBy(said, " · ", more) }
	if s.Heats.Known {
		add(many(int(s.Heats.Value), "heat"))
	}
	if s.Hours.Known {
		add(ForgeHours(float64(s.Hours.Value)))
	}
	switch fuel := b.FuelOf(s.Fuel.What); {
	case s.Fuel.Kg.Known:
		add(orElse(fuel, "fuel") + " " + u.Kg(s.Fuel.Kg.Value))
	case fuel != "":
		add(fuel)
	}
	if s.Flux.Known {
		add("flux " + u.Kg(s.Flux.Value))
	}
	for _, m := range s.After {
		if i := b.Find(m.Piece); len(s.After) > 1 && i >= 0 {
			add(PieceCalled(b, i) + " " + u.Kg(m.Mass) + " after")
			continue
		}
		add(u.Kg(m.Mass) + " after")
	}
	if s.Cost != nil {
		add(money(float64(s.Cost.Amount), s.Cost.Currency))
	}
	return orElse(said, "worked")
}

func money(v float64, currency string) string {
	return strings.TrimSpace(Number(v, 2) + " " + currency)
}

// Tested is a test with its place and what it showed.
func Tested(t entry.PieceTested) string {
	said := t.Test + ": " + t.Result
	if t.Place != "" {
		said += ", at " + t.Place
		if strings.Trim(t.Place, "0123456789.,") == "" {
			said += " cm"
		}
	}
	return joinedBy(said, ", ", t.Note)
}

// classWords are the classes of metal.
var classWords = [...]string{forge.Soft: "soft", forge.Low: "low in carbon", forge.Steely: "steely", forge.Hard: "hard steel", forge.NearCast: "near cast iron"}

// MetalFound is what the tests of a piece found, and how many they were.
func MetalFound(f forge.Found) string {
	switch {
	case f.Tests == 0:
		return "not tested"
	case !f.Known:
		return many(f.Tests, "test") + ", no class from so few"
	case f.Low == f.High:
		return classWords[f.Low] + ", " + many(f.Tests, "test")
	}
	return classWords[f.Low] + " to " + classWords[f.High] + ", " + many(f.Tests, "test")
}

// signCauses are the likely causes of what a hammer shows (common practice).
var signCauses = map[string]string{
	forge.Crumbles:   "full of slag, too hot, or near cast iron. Lower heat, gentle blows, all faces by turns; spark a corner.",
	forge.CracksCold: "phosphorus likely in iron of bog ore. Work it hot only; where it must bend in use take another piece.",
	forge.CracksHot:  "mostly slag, or a cold weld. Weld the crack shut at a full heat before drawing on.",
}

// SignCause says what a sign of the hammer likely comes of, and what to do.
func SignCause(sign string) string { return sign + ": " + signCauses[sign] }

// SlagBand says how much of a piece is slag.
func SlagBand(low, high float64) string {
	return fmt.Sprintf("slag %.0f to %.0f %% of it by its density: pores hide the rest", 100*low, 100*high)
}

// stepWord names a step of a chain.
func stepWord(b forge.Bench, s forge.Step) string {
	switch s.Form {
	case forge.OreStep:
		return "ore, dry"
	case forge.WorkedStep:
		if b.Pieces[s.At].Form == entry.BloomPiece {
			return "compacted"
		}
		return "worked"
	}
	return PieceKindShort(b.Pieces[s.At].Form)
}

// PieceKindShort is what a piece is, in one word.
func PieceKindShort(k entry.PieceKind) string {
	switch k {
	case entry.HalfPiece:
		return "half"
	case entry.Finished:
		return "finished"
	}
	return PieceKind(k)
}

// ChainBase is what the share of a step is of.
func ChainBase(b forge.Bench, steps []forge.Step, n int) string {
	if n == 0 {
		return ""
	}
	before := steps[n-1]
	if before.Form == forge.WorkedStep && b.Pieces[before.At].Form != entry.BloomPiece {
		return PieceKindShort(b.Pieces[before.At].Form)
	}
	return strings.TrimSuffix(stepWord(b, before), ", dry")
}

// ChainStep is one step of a chain: its name, and its share with what it is a share of.
func ChainStep(b forge.Bench, steps []forge.Step, n int) (name, of string) {
	s := steps[n]
	name = stepWord(b, s)
	if n == 0 {
		return name, ""
	}
	before := ChainBase(b, steps, n)
	switch {
	case s.Share == 0:
		return name, "not weighed"
	case s.Cut:
		return name, fmt.Sprintf("%.0f %% of %s, cut", 100*s.Share, before)
	case s.At >= 0 && s.Form == forge.MadeStep && b.Welded(s.At):
		return name, fmt.Sprintf("%.0f %% of %s, welded", 100*s.Share, before)
	}
	return name, fmt.Sprintf("%.0f %% of %s", 100*s.Share, before)
}

// OfOre says how much of the ore came so far.
func OfOre(share float64, ifAlike bool) string {
	said := fmt.Sprintf("%s %% of the ore, dry", shareOfOre(share))
	if ifAlike {
		said += ", if the rest goes alike"
	}
	return said
}

func shareOfOre(share float64) string {
	if share < 0.095 {
		return Number(100*share, 1)
	}
	return Number(100*share, 0)
}

// PerKg says a sum for each kilogram, and of how much of it that was keyed.
func PerKg(t forge.Taken, s forge.Sum) (keyed string) {
	if s.Keyed > 0.995*t.Sessions {
		return ""
	}
	return fmt.Sprintf("keyed in %.0f %% of the sessions", 100*s.Keyed/math.Max(t.Sessions, 1e-9))
}

// ChainOfOre is how much of the ore each step of a chain was, in one line.
func ChainOfOre(b forge.Bench, steps []forge.Step) string {
	var said []string
	for n, s := range steps {
		if n > 0 && s.OfOre > 0 && !s.Cut {
			name, _ := ChainStep(b, steps, n)
			said = append(said, name+" "+shareOfOre(s.OfOre)+" %")
		}
	}
	return strings.Join(said, ", ")
}

// ChainSaid is the last step to a piece and how much of the ore that is, in one line.
func ChainSaid(b forge.Bench, i int) string {
	steps := b.Chain(i)
	said := ""
	if n := len(steps) - 1; n > 0 && steps[n].Share > 0 {
		_, said = ChainStep(b, steps, n)
	}
	share, alike, known := b.OfOre(i)
	if known && len(steps) > 2 {
		said = joinedBy(said, "; ", OfOre(share, alike))
	}
	return said
}

// PieceEnded says how a piece left the house, not to whom.
func PieceEnded(e entry.PieceEnd) string { return pieceEnd(e) }

// PieceTook lists what the forge took for a kilogram of a piece: name, value and remark.
func (u Units) PieceTook(b forge.Bench, i int) (rows [][3]string) {
	t, kg := b.Taken(i), float64(b.Pieces[i].Mass.Value)
	if kg <= 0 {
		return nil
	}
	unit := u.Name("kg")
	add := func(name, each, whole string, s forge.Sum) {
		rows = append(rows, [3]string{name, each, joinedBy(whole, "; ", PerKg(t, s))})
	}
	of := " for " + u.Kg(b.Pieces[i].Mass.Value)
	for _, f := range t.Fuels {
		add(orElse(f.What, "fuel"), Number(f.Of/kg, 1)+" "+unit+" a "+unit, u.kg(f.Of)+of, f.Sum)
	}
	if t.Hours.Keyed > 0 {
		add("hours", ForgeHours(t.Hours.Of/u.Shown(kg, "kg"))+" a "+unit, ForgeHours(t.Hours.Of)+of, t.Hours)
	}
	if t.Heats > 0.5 {
		rows = append(rows, [3]string{"heats", Number(t.Heats, 0), ""})
	}
	for _, c := range t.Costs {
		add("cost", money(c.Of/u.Shown(kg, "kg"), c.Currency)+" a "+unit, money(c.Of, c.Currency)+of, c.Sum)
	}
	return rows
}

// Remark says what is odd about a piece.
func (u Units) Remark(r forge.Remark) string {
	switch r.Kind {
	case forge.MassGrew:
		return "it grew from " + u.kg(r.Against) + " to " + u.kg(r.Said) + ": weigh it again, or an entry is wrong"
	case forge.HoldsMore:
		return "what was made of it weighed " + u.kg(r.Said) + ", and it " + u.kg(r.Against)
	case forge.DenserThanIron:
		return denser(r.Said)
	}
	return u.printed(r.Printed)
}

func denser(kgM3 float64) string {
	return fmt.Sprintf("%.1f g/cm³ is denser than iron, 7.87: size and mass do not belong together", kgM3/1000)
}

// printed says what is wrong with a figure in print, and names its sum or its base.
func (u Units) printed(p forge.PrintedOff) string {
	of := orElse(p.Of, "that")
	switch {
	case p.Loss:
		return "a loss of " + u.Value(p.Said, "kg", 3) + " in print: the masses differ by " + u.Value(p.Is, "kg", 3)
	case p.IsLost:
		return fmt.Sprintf("%.0f %% in print is what was lost: %.0f %% of the %s is left", p.Said, p.Is, of)
	}
	return fmt.Sprintf("%.0f %% in print: of the %s it is %.0f %%, so of what, %s", p.Said, of, p.Is, u.kg(p.Base))
}

// Forge lists the pieces.
func Forge(b forge.Bench) string {
	if len(b.Pieces) == 0 {
		return ForgeEmpty
	}
	var out strings.Builder
	u := Units{}
	w := tabwriter.NewWriter(&out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "PIECE\tKG\tHOW IT CAME\t\tOF THE ORE, DRY\tTESTS")
	for _, r := range b.Rows() {
		p := b.Pieces[r.At]
		indent := strings.Repeat("  ", r.Depth)
		if r.Compacted != nil {
			fmt.Fprintf(w, "%scompacted\t%s\t%s\t\t%s\t\n", indent, Number(r.Compacted.Mass, 2), PieceWorked(b, r.At), ofOreIn(b, r.At, forge.WorkedStep))
			continue
		}
		form := forge.WorkedStep
		if _, compacted := b.Compacted(r.At); compacted {
			form = forge.MadeStep
		}
		ore := ofOreIn(b, r.At, form)
		tests := ""
		if len(p.Tested) > 0 {
			tests = MetalFound(forge.FoundIn(p))
		}
		fmt.Fprintf(w, "%s%s\t%s\t%s\t%s\t%s\t%s\n", indent, PieceCalled(b, r.At), PieceKg(b, r.At), PieceCame(b, r.At), PieceState(b, r.At), ore, tests)
	}
	_ = w.Flush()
	for i := range b.Pieces {
		for _, r := range b.Remarks(i) {
			fmt.Fprintf(&out, "%s: %s\n", PieceCalled(b, i), u.Remark(r))
		}
	}
	return out.String()
}

// ofOreIn is how much of the ore a piece was, as it came to be or as it was last worked.
func ofOreIn(b forge.Bench, i int, form forge.StepForm) string {
	share, alike, known := b.OfOre(i)
	if !known {
		return ""
	}
	steps := b.Chain(i)
	for n := len(steps) - 1; n >= 0; n-- {
		if s := steps[n]; s.At == i && s.Form <= form {
			share = s.OfOre
			break
		}
	}
	said := shareOfOre(share) + " %"
	if alike {
		said += ", if the rest goes alike"
	}
	return said
}

// PieceKg is what a piece weighs without the unit: of a bloom what it weighed when it
// came, since what it was compacted to has a line of its own.
func PieceKg(b forge.Bench, i int) string {
	p := b.Pieces[i]
	if _, worked := b.Compacted(i); worked {
		if kg, ok := p.First(); ok {
			return Number(kg, 2)
		}
	}
	if !p.Mass.Known {
		return ""
	}
	return Number(float64(p.Mass.Value), 2)
}

// PiecesOf says in one line what was made of a smelt's bloom.
func PiecesOf(b forge.Bench, smelt string) string {
	var said []string
	for i, p := range b.Pieces {
		uids := b.Smelts(i)
		if p.Spent || p.Form == entry.CropEnd || p.Form == entry.BloomPiece && p.Worked.IsZero() {
			continue
		}
		for _, uid := range uids {
			if uid == smelt && smelt != "" {
				one := PieceBrief(b, i)
				if p.Mass.Known {
					one += " " + Units{}.Kg(p.Mass.Value)
				}
				said = append(said, one)
			}
		}
	}
	return strings.Join(said, ", ")
}

// Many is a number of things.
func Many(n int, what string) string { return many(n, what) }
