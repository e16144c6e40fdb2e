package words

import (
	"fmt"
	"time"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/figure"
	modelwords "chargehand/model/words"
)

// The screen of where the iron went.
const (
	AccountTitle = "where the iron went"
	DoAccount    = "account: where the iron went"
	DoLesson     = "one line for next time"
	ShortWeigh   = "weigh"
	ShortSample  = "sample"

	DoSampleTaken = "a sample was taken: its label"
	ShortLesson   = "next time"

	AccountNoSmelt    = "No smelt is shown: go to all smelts and pick one."
	AccountNoBloomYet = "not yet"
	AccountNone       = "none"
	AccountNotWeighed = "not weighed"
	AccountNotPlanned = "nothing was planned"
	AccountKgIron     = "kg iron"
	AccountIronIn     = "iron in"
	AccountIronOut    = "iron out"
	AccountOpen       = "not accounted for, may be minus"
	AccountYields     = "yields, each with what it is counted on"
	AccountSums       = "what else went through"
	AccountNoYield    = "none: weigh what came out"

	AskLesson        = "one line for next time"
	LessonBlank      = "blank: none; also later, n at the account"
	LessonEmpty      = "nothing typed: nothing kept"
	LessonsHead      = "from last time"
	LessonOfInvented = "the invented smelt teaches nothing: keep lessons of your own"
)

// MoreRows says that more stands below.
func MoreRows(rows int) string { return fmt.Sprintf("%d more rows: down", rows) }

// AccountBloom heads the answer.
func AccountBloom(s entry.PieceState) string {
	if s == "" {
		return "bloom"
	}
	return "bloom, " + string(s)
}

// AccountWanted says what was wanted, and whether it came.
func AccountWanted(u modelwords.Units, w entry.Wanted, bloom entry.Maybe[entry.Kilogram]) string {
	said := AccountWantedHead(u, w)
	if came := AccountCame(w, bloom); came != "" {
		said += ": " + came
	}
	return said
}

// AccountForetold is the forecast of the bloom.
func AccountForetold(u modelwords.Units, f figure.Figure) string {
	return "foretold " + u.Range(f.P10, f.P90, "kg", 1)
}

// AccountIron is a stream's iron in kg with its spread, without the unit.
func AccountIron(a account.Amount) string {
	if !a.Known() {
		return modelwords.NotKnown
	}
	b := a.Band()
	said := fmt.Sprintf("%.1f", a.Value)
	if off := (b.P90 - b.P10) / 2; off >= 0.05 {
		said += fmt.Sprintf(" ±%.1f", off)
	}
	return said
}

// AccountMark is a mark under the bars; the last one has the unit.
func AccountMark(kg float64, last bool) string {
	if last {
		return modelwords.Number(kg, 2) + " kg"
	}
	return modelwords.Number(kg, 2)
}

// AccountHours is how long the smelt took.
func AccountHours(d time.Duration, extracted bool) modelwords.Told {
	until := "to its close"
	if extracted {
		until = "to the bloom"
	}
	return modelwords.Told{What: "hours", Is: modelwords.Lasted(d.Truncate(time.Minute)), Of: "from light " + until}
}

// AccountCame says in large letters whether what was wanted came.
func AccountCame(w entry.Wanted, bloom entry.Maybe[entry.Kilogram]) string {
	switch {
	case w.What != entry.BloomPiece || !w.Mass.Known || !bloom.Known:
		return ""
	case bloom.Value >= w.Mass.Value:
		return "it came"
	}
	return "less came"
}

// AccountWantedHead heads whether it came.
func AccountWantedHead(u modelwords.Units, w entry.Wanted) string {
	return "wanted " + modelwords.PieceKind(w.What) + " " + u.Kg(w.Mass.Value)
}

// LessonKept and LessonIs say a lesson.
func LessonKept(text string) string { return "for next time: " + text }

// LessonIs is one that stands.
func LessonIs(text string) string { return "for next time: " + text }

// AccountPieces says what was made of the bloom.
func AccountPieces(made string) string { return "made of it: " + made }

// LessonLine is one in a list of them.
func LessonLine(text string) string { return "- " + text }
