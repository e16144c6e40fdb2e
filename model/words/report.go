package words

import (
	"fmt"
	"time"
)

// The report of a smelt in print.
const (
	ReportDoes = "writes one page of a smelt for a browser or the printer: what was wanted and came, the day, the numbers, warnings, entries, the iron's account; asks nothing of the net"

	FlagNames     = "print the initials of people too, and who was told what"
	FlagPlaces    = "print where the ore is from too"
	FlagIncidents = "print incidents too"

	ReportWantsOut = "report: wants --out FILE, the page to write"

	ReportTitle     = "Smelt"
	ReportLit       = "lit"
	ReportUndated   = "on a day that is not known"
	ReportResult    = "What was wanted, and what came"
	ReportDay       = "The day"
	ReportPlots     = "Numbers over the day"
	ReportShaft     = "In the shaft"
	ReportWarnings  = "Warnings, and what was keyed within ten minutes"
	ReportEntries   = "What was keyed"
	ReportAccount   = "Where the iron went"
	ReportPieces    = "Pieces of iron"
	ReportCautions  = "Cautions"
	ReportLost      = "Entries that are lost"
	ReportWanted    = "wanted"
	ReportTried     = "tried this time"
	ReportPromised  = "planned"
	ReportNextTime  = "for next time"
	ReportFurnace   = "furnace"
	ReportLots      = "from the stores"
	ReportNoWarning = "No warning was raised."
	ReportNoPlot    = "Nothing of it is known."
	ReportNoAccount = "No account: "
	ReportNotWanted = "nothing planned"
	ReportNumbers   = "The same in numbers: the middle, and the band where there is one"
	ReportNothing   = "nothing"
	ReportNoNames   = "Initials and people's names are left out where they have a place of their own; notes stand as they were keyed."
	ReportNames     = "Initials stand as they were keyed."
	ReportNoPlaces  = "Where the ore is from is left out; the names of lots stand as they were keyed."
	ReportPlaces    = "Where the ore is from stands as it was keyed."
	ReportHasNoInc  = "Incidents are left out."
	ReportHandOver  = "handed over"
	ReportModel     = "Temperatures, and what is said of the slag and the iron in the furnace, are the program's reckoning from the entries, not readings."
	ReportBands     = "A band runs from the 10th to the 90th percentile; the line is the middle."
	ReportKeyed     = "keyed"
	ReportLate      = "late"
	ReportStruck    = "crossed out"
	ReportChanged   = "changed later"

	ColumnTime     = "time"
	ColumnWhat     = "what"
	ColumnBy       = "by"
	ColumnSince    = "since"
	ColumnUntil    = "until"
	ColumnWarning  = "warning"
	ColumnEvidence = "what showed it"
	ColumnSide     = "side"
	ColumnMass     = "mass, kg"
	ColumnIron     = "iron, kg"
	ColumnRests    = "rests on"
	ColumnFrom     = "from, cm"
	ColumnTo       = "to, cm"
	ColumnGoesOn   = "what goes on"
	ColumnWall     = "at the wall"
	ColumnCentre   = "in the middle"
	ColumnPiece    = "piece"
	ColumnShare    = "how much came so far, of what"
	ColumnState    = "how it stands"
	ColumnTests    = "tests"
	ColumnWorked   = "worked"
)

// The moments at which the shaft is drawn.
const (
	MomentFirstOre = "the first ore is in"
	MomentMost     = "in the middle of it"
	MomentLastOre  = "the last ore is in"
	MomentBurnDown = "a quarter of an hour into the burn-down"
)

// ReportStrip is the strip of the day in a sentence.
func ReportStrip(charges, taps, warnings int, span time.Duration) string {
	return fmt.Sprintf("%s in %s, slag tapped %s, %s", counted(charges, "charge"), Lasted(span), times(taps), counted(warnings, "warning"))
}

// ReportShaftSays is the drawing of the shaft in a sentence.
func ReportShaftSays(burden float64, known bool, zones int) string {
	level := "the burden's height is not known"
	if known {
		level = "the burden stands " + AboveTuyere(Number(burden, 0)+" cm")
	}
	return fmt.Sprintf("The shaft to scale: %s. The table beside it says what goes on in its %s.", level, counted(zones, "zone"))
}

// counted is a number of things: "1 charge", "26 charges".
func counted(n int, thing string) string {
	if n != 1 {
		thing += "s"
	}
	return fmt.Sprintf("%d %s", n, thing)
}

func times(n int) string {
	switch n {
	case 0:
		return "never"
	case 1:
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// ReportPrinted is the last line of the page: what wrote it, and when.
func ReportPrinted(version string, at time.Time) string {
	return "chargehand " + version + ", " + at.Format("2006-01-02 15:04")
}
