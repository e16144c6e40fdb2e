package sheet

//go:generate go tool qtc -file=page.qtpl -skipLineComments

import (
	"io"

	"chargehand/model/words"
)

// headings are the words of the page that do not change.
type headings struct {
	Log, Letters, How, Lessons, Rows, PlanTime, Planned, Time, Letter, Charcoal, Ore, Between string
	Wall, Day, Who, Name, Does, Stands, Help, Own, Cautions, Rules, Foot                      string
}

var said = headings{
	Log: words.SheetTitle, Letters: words.SheetLetters, How: words.SheetHow, Lessons: words.SheetLessons, Rows: words.SheetRows,
	PlanTime: words.SheetPlanTime, Planned: words.SheetPlanned, Time: words.SheetYourTime, Letter: words.SheetLetter,
	Charcoal: words.SheetCharcoal, Ore: words.SheetOre, Between: words.SheetBetween,
	Wall: words.SheetWall, Day: words.SheetTheDay, Who: words.SheetWho, Name: words.SheetName, Does: words.SheetDoing, Stands: words.SheetStands,
	Help: words.SheetHelp, Own: words.SheetOwn, Cautions: words.ReportCautions, Rules: words.LocalRules, Foot: words.SheetFoot,
}

// Page writes the sheet as one HTML file of its own, for A4: no link leaves it. printed
// is the last line: what wrote it, and when.
func (s Sheet) Page(out io.Writer, printed string) error {
	_, err := io.WriteString(out, pageOf(s, said, printed))
	return err
}
