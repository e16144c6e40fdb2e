package words

import (
	"fmt"
	"slices"
	"strings"
)

// Logs of other people, with columns of their own.
const (
	FlagColumns     = "FILE is a log with columns of its own: `theirs=ours:unit,...` or the name of a mapping that was saved, or guess, as without it where no column is ours; ours: "
	FlagSaveMapping = "with --columns: save the mapping in the book under this `name`"
	FlagBegin       = "with a clock that counts from the start: the `time` of day at its nought, as 09:30"
	FlagPreview     = "with --columns: show three rows and the totals, and keep nothing"
	FlagBlanks      = "with --columns: a blank of ore or charcoal in a charge is none, where else it was not recorded"
	FlagYes         = "with --columns: keep it without asking"

	PreviewOnly     = "nothing was kept: leave --preview out to keep it"
	ImportWantsYes  = "nothing was kept: look at the rows above, then add --yes"
	AskImport       = "keep it as a smelt? y or n: "
	NothingImported = "nothing was kept"
)

// BadBegin refuses a time.
func BadBegin(text string) string {
	return fmt.Sprintf("--begin %q is no time: give it as 09:30", text)
}

// NoSuchMapping says so.
func NoSuchMapping(name string, have []string) string {
	said := fmt.Sprintf("no mapping %q is saved in the book", name)
	if len(have) > 0 {
		slices.Sort(have)
		said += "; there is " + strings.Join(have, ", ")
	}
	return said + ": write it out as Time=clock,Coal=charcoal:lb and save it with --save " + name
}

// RowTheirs is a row as it stands in the file.
func RowTheirs(line int, cells []string) string {
	return fmt.Sprintf("line %d: %s", line, strings.Join(cells, ", "))
}

// RowOurs is the same as it is read.
func RowOurs(cells []string) string { return "     is: " + strings.Join(cells, ", ") }

// RowsRead is how many rows there are.
func RowsRead(n int) string { return counted(n, "row") + " read" }

// ColumnRead is what a column of numbers holds.
func ColumnRead(theirs, unit, ours, our string, n int, sum, middle float64) string {
	said := fmt.Sprintf("  %s", theirs)
	if unit != "" && unit != our {
		said += " in " + unit
	}
	said += fmt.Sprintf(": %s as %s, the middle %s", counted(n, "number"), ours, strings.TrimSpace(Number(middle, 2)+" "+our))
	if strings.HasSuffix(ours, "_kg") {
		said += ", together " + Number(sum, 1) + " " + our
	}
	return said
}

// ColumnDoubt doubts the unit of a column.
func ColumnDoubt(theirs string, middle float64, our, instead string) string {
	said := fmt.Sprintf("  ! %s: %s is hardly usual for a small furnace", theirs, strings.TrimSpace(Number(middle, 2)+" "+our))
	if instead == "" {
		return said + ": is it that column?"
	}
	return said + ": is it in " + instead + "?"
}

// ColumnsLeft names what was not read.
func ColumnsLeft(names []string) string { return "  not read: " + strings.Join(names, ", ") }

// ColumnsGuessed shows what was guessed.
func ColumnsGuessed(spec string) string {
	return "columns guessed by their names and figures; as they would be written out:\n  --columns '" + spec + "'"
}

// ColumnsAsKept shows which mapping of the book fits.
func ColumnsAsKept(name, spec string) string {
	return "columns as kept under " + name + ":\n  --columns '" + spec + "'"
}

// ColumnsNotGuessed says what no guess was found for.
func ColumnsNotGuessed(path string, heads []string, spec string, lacks error) string {
	said := path + " has the columns " + strings.Join(heads, ", ")
	if spec == "" {
		return said + ", and none could be guessed: " + lacks.Error()
	}
	return said + "; guessed so far: --columns '" + spec + "', but " + lacks.Error()
}

// WordsKept are words of what was done that are none of ours.
func WordsKept(said []string) string {
	return "  words kept in the note: " + strings.Join(said, ", ")
}

// RowsTimeless are rows that are kept as remarks alone.
func RowsTimeless(lines []int) string {
	return "  ! " + LinesTimeless(lines)
}

// LinesTimeless says the same without a mark.
func LinesTimeless(lines []int) string {
	all := make([]string, min(len(lines), 8))
	for i := range all {
		all[i] = fmt.Sprint(lines[i])
	}
	said := strings.Join(all, ", ")
	if len(lines) > len(all) {
		said += " and " + fmt.Sprint(len(lines)-len(all)) + " more"
	}
	if len(lines) == 1 {
		return "line " + said + " has no time: kept as a remark, counted nowhere"
	}
	return "lines " + said + " have no time: kept as remarks, counted nowhere"
}

// BlanksOpen says what blanks leave open, and what to do.
func BlanksOpen(n int) string {
	return "  ! " + counted(n, "blank") + " of ore or charcoal in charges: taken as not recorded, so the sum is not known; --blank-is-none takes them as none"
}
