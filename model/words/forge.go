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
