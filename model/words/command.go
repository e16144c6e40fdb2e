package words

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/rule"
)

// The command line.
const (
	ProgramDoes  = "chargehand keeps the record of a smelt in a small clay shaft furnace and does its sums live"
	ScreenDoes   = "opens the screen: practise, run a smelt, look at one"
	WatchDoes    = "shows beside the program at the furnace what is keyed there, on another screen or from afar: the fire that is alight, or the next to be lit; takes no act and writes nothing"
	ReplayDoes   = "shows a finished smelt again, by time, entry or warning; takes no act and writes nothing, so that it works while the program is open"
	SmeltsDoes   = "lists the smelts in the book"
	StateDoes    = "prints every figure of a smelt at a moment"
	ImportDoes   = "takes a log (CSV), an exported journal (JSON lines) or a folder of tables into the book"
	ExportDoes   = "writes a smelt as a log (CSV), exactly as it was kept with --json, or as a folder of tables with --package"
	HindcastDoes = "scores the forecast of the next charge on logs or smelts that are over; with --blooms that of the bloom on tables of smelts"
	CheckDoes    = "goes through the book and its plain-text twins and says what is wrong"
	RescueDoes   = "rebuilds a damaged book from its twins and what can be read of it; the damaged one is kept"
	VersionDoes  = "says which version this is"
	HelpDoes     = "prints this, or the page of one subcommand"
	HelpMore     = "chargehand help SUBCOMMAND tells its flags"

	FlagBook    = "the book's `file`, or the folder it stands in (default: the user's data folder)"
	FlagJSON    = "print JSON: metric units, unknown is null"
	FlagPlain   = "no colour"
	FlagLight   = "colours for a light screen"
	FlagDark    = "colours for a dark screen"
	FlagASCII   = "draw with plain ASCII"
	FlagAt      = "the `moment`: 14:32, +1h20m since light, or 2026-05-09T14:32:00+02:00"
	FlagKnown   = "only what was known by this entry's `number`"
	FlagFurnace = "the furnace: a `name`, or a name with sizes in cm: \"Reed Hollow,bore=25,stack=50\""
	FlagDate    = "the `day` of the log's first row, as 2026-05-09"
	FlagMeasure = "what a measure weighs, `name=kg`, as bucket=1.9; may be given again"
	FlagBlooms  = "FILE is a table of smelts (CSV: date, team or source, ore_type or mix, ore_kg, bloom_kg, iron_slag_kg): score the forecast of the bloom"
	FlagLeast   = "with --blooms: leave out smelts with less ore, `kg`"
	FlagOut     = "the `file` to write (default: print it)"

	ASmelt = "a smelt (see: chargehand smelts)"
	AFile  = "a file"

	LogsOrSmelts = "logs (CSV) or smelts"
	BloomTable   = "a table of smelts (CSV)"

	NoDataFolder   = "no folder for the user's data is known: set HOME, or name the book with --book"
	VersionUnknown = "unreleased"
	ShelfEmpty     = "no smelts yet: chargehand opens the screen, chargehand import FILE takes in a log"
	ShelfHead      = "SMELT\tPHASE\tCHARGES\tCHARCOAL\tORE, DRY\tBLOOM\tCOUNTS FOR NOTHING"
	NoTerminal     = "the screen needs a terminal: run chargehand in one, or see chargehand help for what works without"
)

// OneLine makes one line of a text.
func OneLine(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "\n", "; ")), " ")
}

// SeeHelp points to a subcommand's help.
func SeeHelp(name string) string {
	return strings.Join(strings.Fields("see chargehand "+name+" --help"), " ")
}

// NoSuchCommand says so.
func NoSuchCommand(name string) string {
	return fmt.Sprintf("there is no subcommand %q: see chargehand help", name)
}

// WantsOne says how many operands there were.
func WantsOne(what string, n int) string {
	return fmt.Sprintf("wants %s, and just one; %d given", what, n)
}

// TakesNone says what was too much.
func TakesNone(first string) string { return fmt.Sprintf("takes no operand; %q is too much", first) }

// WantsSome says that at least one was wanted.
func WantsSome(what string) string { return "wants " + what + ", at least one" }

// The table of hindcast: errors and widths in percent of the smelt's mean
// interval.
const (
	HindcastHead   = "LOG\tINTERVALS\tERROR %\tCAPPED %\tMEAN OF 3 %\tCAPPED %\tIN BAND %\tBAND SCORE %\tMEAN OF 3 %\tMINUTES\t"
	HindcastPooled = "all together"
)

// HindcastRow is one line of it.
func HindcastRow(name string, s forecast.Scores) string {
	cells := []string{name, strconv.Itoa(s.Intervals)}
	for _, a := range []forecast.Average{s.Error, s.ErrorCapped, s.Mean3Error, s.Mean3ErrorCapped, s.Coverage, s.IntervalScore, s.Mean3IntervalScore} {
		cells = append(cells, numberOr(a, 100))
	}
	return strings.Join(append(cells, numberOr(s.Minutes, 1)), "\t") + "\t"
}

func numberOr(a forecast.Average, times float64) string {
	if !a.Known {
		return "-"
	}
	return strconv.FormatFloat(times*a.Value, 'f', 1, 64)
}

// NoSuchSmelt says where was looked.
func NoSuchSmelt(name, path string) string {
	return fmt.Sprintf("there is no smelt %q in %s: chargehand smelts lists them", name, path)
}

// ManySuchSmelts lists what was meant.
func ManySuchSmelts(name string, found []string) string {
	return fmt.Sprintf("%q may be any of %s: write more of it", name, strings.Join(found, ", "))
}

// BadMoment, BadKnown and the like say what is wrong with a value and what one looks like.
func BadMoment(s string) string {
	return fmt.Sprintf("--at %q is no moment: write 14:32, +1h20m, or 2026-05-09T14:32:00+02:00", s)
}

func BadKnown(s string) string {
	return fmt.Sprintf("--known %q is no entry's number: write a whole number from 1", s)
}

func BadDate(s string) string { return fmt.Sprintf("--date %q is no day: write it as 2026-05-09", s) }

func BadMeasure(s string) string {
	return fmt.Sprintf("%q is not NAME=KG: write for example bucket=1.9", s)
}

func BadFurnace(s string) string {
	return fmt.Sprintf("--furnace: %q is not understood: sizes are bore, top, stack, rim, base in cm and altitude in m, as bore=25", s)
}

// CannotRead and CannotWrite say why a file could not be used.
func CannotRead(path string, err error) string {
	return fmt.Sprintf("cannot read %s: %s", path, why(err))
}

func CannotWrite(path string, err error) string {
	reason := why(err)
	if errors.Is(err, fs.ErrNotExist) {
		reason = "the folder that it is to stand in is not there; make it, or name another"
	}
	return fmt.Sprintf("cannot write %s: %s; nothing was written", path, reason)
}

// Written says that a file stands.
func Written(path string) string { return path + " is written" }

// FlagTrouble says in plain words what the flags' own library says of a flag that was
// given wrongly; what it says otherwise stands as it is.
func FlagTrouble(said string) string {
	if name, ok := strings.CutPrefix(said, "flag provided but not defined: -"); ok {
		return "there is no flag --" + strings.TrimPrefix(name, "-")
	}
	if name, ok := strings.CutPrefix(said, "flag needs an argument: -"); ok {
		return "--" + strings.TrimPrefix(name, "-") + " wants something behind it"
	}
	for _, a := range []string{"invalid value ", "invalid boolean value "} {
		rest, ok := strings.CutPrefix(said, a)
		value, rest, found := strings.Cut(rest, " for ")
		name, reason, and := strings.Cut(strings.TrimPrefix(rest, "flag "), ": ")
		if ok && found && and {
			if strings.Contains(a, "boolean") {
				reason = "it takes nothing behind it"
			} else if reason == "parse error" || reason == "value out of range" {
				reason = "that is no number it can take"
			}
			return "--" + strings.TrimLeft(name, "-") + " " + value + ": " + reason
		}
	}
	return said
}

func why(err error) string {
	var p *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file; check the name"
	case errors.Is(err, fs.ErrPermission):
		return "not allowed; check who owns it"
	case errors.As(err, &p):
		return p.Err.Error()
	}
	return err.Error()
}

// Imported says what was taken in.
func Imported(path, id string, n int) string {
	return fmt.Sprintf("%s is now smelt %s: %s kept", path, id, EntriesOf(n))
}

// IsWorkbook says so of a file of a spreadsheet's own kind.
func IsWorkbook(path string) string {
	return path + " is a spreadsheet's own file, no table of text: save its sheet there as CSV (UTF-8), then take that in"
}

// ImportedDoubt says of an entry that was taken in what can hardly be.
func ImportedDoubt(at time.Time, doubt string) string {
	return "  ! " + at.Format(Clock) + " " + doubt + "; if that is wrong, change it in the Book (v b)"
}

// LostInCSV says what a log has no column for.
func LostInCSV(entries, partly int) string {
	return fmt.Sprintf("%d entries have no place in a log and %d lost a part of theirs; export --json keeps everything", entries, partly)
}

// What is being done while its progress is shown.
const (
	Importing = "importing"
	Checking  = "checking"
	Rescuing  = "rescuing"
)

// InProgress says how far a long task is.
func InProgress(doing string, percent int) string { return fmt.Sprintf("%s: %d %%", doing, percent) }

// Checked says what was gone through.
func Checked(path string, streams int, entries uint64, faults int) string {
	return fmt.Sprintf("%s: %s, %s, %s", path, counted(streams, "stream"), EntriesOf(int(entries)), counted(faults, "fault"))
}

// CheckFailed says how bad it is and what to do.
func CheckFailed(n int) string {
	return fmt.Sprintf("%s found: keep a copy of the book and its twins before anything else", counted(n, "fault"))
}

// RescuedFrom says what was wrong with the book that was rescued.
func RescuedFrom(path, trouble string) string {
	if trouble == "" {
		trouble = "could be read"
	}
	return path + " " + trouble
}

// RescuedStream says what was brought back of one smelt, or of the house.
func RescuedStream(name string, entries, loose int) string {
	said := fmt.Sprintf("%s: %s brought back", name, EntriesOf(entries))
	if loose > 0 {
		said += fmt.Sprintf(", %d NOT: they stand beyond a lost one, in the files set aside", loose)
	}
	return said
}

// RescuedStep is one thing that was put right in the stream above it.
func RescuedStep(what string) string { return "  " + what }

// Rescued says what stands now, and where the old files are.
func Rescued(path string, streams int, entries uint64, aside []string) string {
	said := fmt.Sprintf("%s was written anew: %s, %s", path, counted(streams, "stream"), EntriesOf(int(entries)))
	if len(aside) > 0 {
		said += "; the old one is kept as " + strings.Join(aside, ", ")
	}
	return said
}

// RescuedLoose says what a rescue could not bring back.
func RescuedLoose(n int) string {
	return fmt.Sprintf("%d entries stand beyond a lost one and are not in the book: they can still be read in the files set aside; keep those", n)
}

// Version is the version line.
func Version(program string, journal int, goVersion, system string) string {
	return fmt.Sprintf("chargehand %s, journal form %d, %s, %s", program, journal, goVersion, system)
}

// ShelfRow is one smelt of the list.
// The mark says why it counts for nothing.
func ShelfRow(id, phase string, charges int, charcoal, ore, bloom entry.Maybe[entry.Kilogram], mark string) string {
	return strings.TrimRight(fmt.Sprintf("%s\t%s\t%d\t%s\t%s\t%s\t%s", id, phase, charges, kgOr(charcoal), kgOr(ore), kgOr(bloom), mark), "\t")
}

func kgOr(m entry.Maybe[entry.Kilogram]) string {
	if !m.Known {
		return "unknown"
	}
	return fmt.Sprintf("%.1f kg", float64(m.Value))
}

// State is a reading in plain lines.
func State(r *figure.Reading) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s  %s since light  %s  as known by entry %d\n", Marked(r.Smelt, Mark(r.Light)), r.At.Round(time.Second), r.Phase, r.Known)
	for n := range figure.Count {
		f, unit := r.Figure(n), figure.Table[n].Unit
		value := "unknown"
		switch {
		case n == figure.StackHeight && r.StackLost():
			value = NotKnownDip
		case f.Wide():
			value = FarApart + ", " + f.Basis.String()
		case f.Known() && unit == "C":
			value = fmt.Sprintf("%s, %s", Units{}.About(f.P10, f.P50, f.P90), f.Basis)
		case f.Known() && f.P10 == f.P90:
			value = fmt.Sprintf("%s, %s", amount(f.P50, unit), f.Basis)
		case f.Known() && !n.HasMiddle():
			value = fmt.Sprintf("%s to %s, %s", plain(f.P10), amount(f.P90, unit), f.Basis)
		case f.Known():
			value = fmt.Sprintf("%s (%s to %s), %s", amount(f.P50, unit), plain(f.P10), plain(f.P90), f.Basis)
		case f.AtLeast.Known:
			value = fmt.Sprintf("unknown, at least %s", amount(f.AtLeast.Value, unit))
		}
		fmt.Fprintf(&b, "  %-20s %s\n", strings.ReplaceAll(n.Key(), "_", " "), value+caveat(r, n))
	}
	if r.Bloom.Known {
		fmt.Fprintf(&b, "  %-20s %s kg\n", "bloom weighed", plain(r.Bloom.Value))
	}
	return b.String()
}

// Standing is what is warned of, a line each, gravest first.
func Standing(r *figure.Reading, ws []rule.Warning) string {
	var b strings.Builder
	for _, w := range ws {
		title, evidence, remedy := Units{}.Warning(w)
		said := Warned(title, evidence)
		if w.Acknowledged {
			said += ", " + SeenWord
		}
		fmt.Fprintf(&b, "  %-20s since %s: %s; %s\n", Grade(w.Grade), r.Wall(w.Onset).Format(Clock), said, remedy)
	}
	return b.String()
}

// caveat is what has to be said in the same line as a figure.
func caveat(r *figure.Reading, n figure.Name) string {
	switch {
	case !r.Figure(n).Known():
	case n == figure.BurnRate && r.BurnAgainst() == figure.OverBlast:
		return ", " + MoreThanBlast
	case n == figure.MeterFactor && r.MeterDoubted():
		return ", " + MeterNotBelieved
	case n == figure.TopGasCO:
		return ", " + OfCarbonGas
	}
	return ""
}

// amount is a number with its unit; seconds are said as hours and minutes.
func amount(v float64, unit string) string {
	if unit == "s" {
		return (time.Duration(v*1000) * time.Millisecond).Round(time.Second).String()
	}
	if unit == "1" {
		return plain(v)
	}
	return plain(v) + " " + unit
}

// plain is a number to four digits, never with a power of ten.
func plain(v float64) string {
	digits := 4
	for x := math.Abs(v); x >= 1 && digits > 0; x /= 10 {
		digits--
	}
	s := strconv.FormatFloat(v, 'f', digits, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// ScreenFailed says that the screen stopped by itself, and what that means.
func ScreenFailed(err error) string {
	return fmt.Sprintf("the screen stopped: %v; what it had called kept is in the book", err)
}

// NotAbsolute says what a place in the environment must be.
func NotAbsolute(name, value string) string {
	return fmt.Sprintf("%s is %q, which is no whole path from /: set it to one, or name the book with --book", name, value)
}

// DumbTerminal is said where nothing can be drawn.
const DumbTerminal = "this terminal (TERM=dumb) cannot show the screen: chargehand state and chargehand smelts print plain lines"

const (
	FlagReplace = "write over a file that is there"
	FlagTake    = "take the lines in this `file` in, as a smelt of its own"
)

// WhereElse asks where to write what could not be kept.
func WhereElse(entries int) string {
	return fmt.Sprintf("chargehand: %s could NOT be kept. Write them to another place? A file's name, or Enter for no: ", EntriesOf(entries))
}

// WrittenElsewhere says how they come back.
func WrittenElsewhere(entries int, path string) string {
	return fmt.Sprintf("chargehand: %s written to %s; chargehand rescue --take %s takes them in, as a smelt of their own", EntriesOf(entries), path, path)
}
