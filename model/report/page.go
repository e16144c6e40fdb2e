package report

//go:generate go tool qtc -file=page.qtpl -skipLineComments

import (
	"io"

	"chargehand/model/words"
)

// headings are the words of the page that do not change.
type headings struct {
	Title, Lit, Result, Day, Plots, Shaft, Warnings, Entries, Account, Pieces, Cautions, Lost, Photos                                    string
	NoPlot, NoWarning, Nothing, Numbers                                                                                                  string
	Time, What, By, Since, Until, Warning, Evidence, Keyed, Side, Iron, Rests, From, To, GoesOn, Wall, Centre, Piece, Mass, Share, State string
	Worked, Tests                                                                                                                        string
}

var said = headings{
	Title: words.ReportTitle, Lit: words.ReportLit, Result: words.ReportResult, Day: words.ReportDay, Plots: words.ReportPlots, Shaft: words.ReportShaft,
	Warnings: words.ReportWarnings, Entries: words.ReportEntries, Account: words.ReportAccount, Pieces: words.ReportPieces, Cautions: words.ReportCautions, Lost: words.ReportLost, Photos: words.ReportPhotos,
	NoPlot: words.ReportNoPlot, NoWarning: words.ReportNoWarning, Nothing: words.ReportNothing, Numbers: words.ReportNumbers,
	Time: words.ColumnTime, What: words.ColumnWhat, By: words.ColumnBy,
	Since: words.ColumnSince, Until: words.ColumnUntil, Warning: words.ColumnWarning, Evidence: words.ColumnEvidence, Keyed: words.ReportKeyed,
	Side: words.ColumnSide, Iron: words.ColumnIron, Rests: words.ColumnRests, From: words.ColumnFrom, To: words.ColumnTo, GoesOn: words.ColumnGoesOn,
	Wall: words.ColumnWall, Centre: words.ColumnCentre, Piece: words.ColumnPiece, Mass: words.ColumnMass, Worked: words.ColumnWorked, Share: words.ColumnShare, State: words.ColumnState, Tests: words.ColumnTests,
}

// Page writes the report as one HTML file of its own: style and drawings are in it, no
// link leaves it. printed is the last line: what wrote it, and when.
func (r Report) Page(out io.Writer, printed string) error {
	_, err := io.WriteString(out, pageOf(r, said, printed))
	return err
}

// wide tells whether there is room for a word between two places of a drawing.
func wide(from, to float64) bool { return to-from >= 34 }

// late tells whether a place is at the end of a plot, so that its word stands before it.
func late(to float64) bool { return to >= plotWidth-marginRight }
