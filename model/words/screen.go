package words

import (
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
)

// Late entries.
const LateWhen = "when was it"

// WhenHint says what a time may be: counted back from now, or afterwards from the
// end of the smelt.
func WhenHint(afterwards bool) string {
	if afterwards {
		return "minutes before its end, or a time like 14:32"
	}
	return "minutes ago, or a time like 14:32"
}

// LateWhat asks what is entered late.
func LateWhat(at string) string { return "what was at " + at }

// Late says what was entered late.
func Late(at, what string) string { return "entered late, at " + at + ": " + what }

// BeforeLight says that a time lies before the smelt.
func BeforeLight(lit string) string {
	return "that is before the fire was lit at " + lit + ": type a later time"
}

// Sure asks once before something that is hard to take back.
func Sure(what string) string { return what + ": sure" }

// LeaveRunning asks before a running smelt is left.
func LeaveRunning(id string) string {
	return "leave " + id + " running (it goes on at the next start)"
}

// LeaveUnkept asks what to do about entries that are not kept.
func LeaveUnkept(n int) string { return Entries(n) + " NOT kept yet" }

// The ways to leave.
const (
	LeaveWait   = "leave as soon as they are kept"
	LeaveStay   = "stay"
	LeaveAnyway = "leave and lose them"
	Leaving     = "leaving as soon as all is kept"
)

// Entries is a number of entries.
func Entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return strconv.Itoa(n) + " entries"
}

// KeptNot says why entries are not kept and what to do.
func KeptNot(why string) string {
	return why + "; they are held here and tried again: leave this running"
}

// Told is what the book had to put right, or that another took over.
func Told(said []string) string {
	if more := len(said) - 1; more > 0 {
		return said[0] + " (and " + strconv.Itoa(more) + " more, told on leaving)"
	}
	return said[0]
}

// SlowDisk says that the disk does not answer.
const SlowDisk = "the disk does not answer; they are held here: leave this running"

// Refused says that the book will not take an entry.
func Refused(what, why string) string { return "NOT kept and dropped, " + what + ": " + why }

// Answers of the program itself.
const (
	PasteIgnored = "pasted text is for fields only: nothing done"
	NowhereBack  = "this is where it goes back to; v shows the other screens"
	NoDemo       = "there is no smelt to look at in this program"
)

// CommandFailed says that the program itself is at fault.
func CommandFailed(why string) string {
	return "something in the program failed: " + why + "; what is kept is safe"
}

// CannotOpen says why a smelt does not open.
func CannotOpen(id, why string) string { return id + " does not open: " + why }

// EmptySmelt says that a smelt holds no entries.
func EmptySmelt(id string) string { return id + " holds no entries: there is nothing to show" }

// CannotReadShelf says why the shelf is not shown.
func CannotReadShelf(why string) string {
	return "the shelf cannot be read: " + why + "; a new smelt can be run all the same"
}

// Opened says which smelt is shown.
func Opened(id string) string { return "this is " + id }

// The start screen.
const (
	ProgramName = "chargehand"
	ProgramIs   = "the record and the sums of a smelt"
	PractiseIs  = "a smelt that counts for nothing; it asks nothing"
	SmeltIs     = "asks once for furnace and measures, then lights the fire"
	LookIs      = "every smelt kept here, and an invented one"

	ShelfBeingRead = "the shelf is still being read: a moment"
	NoneUnfinished = "no smelt was left unfinished"
)

// UnfinishedIs is the smelt to go on with.
func UnfinishedIs(id string, p entry.Phase, charges int) string {
	return id + ", " + Phase(p) + ", " + Charges(charges)
}

// Charges is a number of charges.
func Charges(n int) string {
	switch n {
	case 0:
		return "no charge yet"
	case 1:
		return "1 charge"
	}
	return strconv.Itoa(n) + " charges"
}

// LeaveFor asks before another smelt takes the place of the running one.
func LeaveFor(id string) string { return "leave " + id + " as it stands" }

// Lit says that a smelt has begun.
func Lit(id string) string { return "the fire is lit: " + id }

// The form before light.
const (
	LightAsks        = "furnace and measures"
	DoStarter        = "another starter"
	DoStarterBack    = "the starter before"
	FormStarter      = "begin with"
	FormFurnace      = "name of the furnace"
	FormBore         = "bore at the tuyere"
	FormStack        = "charging mark above the tuyere"
	FormRim          = "rim above the tuyere"
	FormCharcoalName = "charcoal goes in by the"
	FormCharcoalKg   = "which holds"
	FormOreName      = "ore goes in by the"
	FormOreKg        = "which holds"
	FormOreCount     = "of these with each charge"
	FormInitials     = "your initials"
	FormGuess        = "a guess, until you type your own"
	FormBlank        = "not known"
	FormWrong        = "here"
	StarterRow       = "left and right change the starter, on the first row only: go up to it"
	NotARow          = "nothing to type here: enter lights the fire, the arrows go up and down"
	NameMissing      = "it needs a name"
	RimBelowMark     = "the rim cannot be below the charging mark: both count up from the tuyere"
	SameMeasure      = "charcoal and ore need measures of different names, so that each can be weighed"
)

// StarterOf says which of the starters is shown.
func StarterOf(n, of int) string {
	return strconv.Itoa(n) + " of " + strconv.Itoa(of) + ", ← →"
}

// AsIn names a starter after the smelt that it was used in.
func AsIn(id string) string { return "as in " + id }

// InField says which field is wrong, and how.
func InField(label, why string) string { return label + ": " + why }

// The Book.
const (
	NoEntryHere  = "no entries to show; k shows another kind"
	NotAnAct     = "this entry is the journal's own: there is nothing to cross out or change in it"
	LightStays   = "the light stays as it was; weigh a measure again to correct its weight"
	AmendTime    = "when it was"
	AmendEvent   = "what it was"
	ShortChanged = "changed"

	FilterActs      = "what was done and seen"
	FilterCharges   = "charges, fills and levels"
	FilterBlast     = "blast and tuyere"
	FilterLooks     = "looks, temperatures, slag"
	FilterWeighings = "weighings"
	FilterNotes     = "notes"
	FilterMended    = "crossed out or changed"
	FilterAll       = "every entry, keys too"
)

// BookShows says what the Book is narrowed to.
func BookShows(kind string) string { return "book: " + kind }

// AmendWhat asks what to change about an entry.
func AmendWhat(what string) string { return "change " + what }

// StruckWhen says who crossed an entry out, and when.
func StruckWhen(at, by string) string { return "crossed out " + at + byWhom(by) }

// ChangedWhen says what an entry was before it was changed, by whom and when.
func ChangedWhen(was, at, by string) string { return "was " + was + "; changed " + at + byWhom(by) }

// WasAt is the time that an entry had before it was changed.
func WasAt(at string) string { return "at " + at }

func byWhom(by string) string {
	if by == "" {
		return ""
	}
	return " by " + by
}

// EntryTaken says when and how an entry was taken down.
func EntryTaken(seq uint64, happened, kept time.Time, by, screen, key string, uncertain time.Duration) string {
	s := "entry " + strconv.FormatUint(seq, 10) + ", " + happened.Format("2 Jan 2006 15:04:05")
	if uncertain > 0 {
		s += " ±" + Lasted(uncertain)
	}
	if !kept.IsZero() {
		s += ", taken down " + kept.Format("15:04:05")
	}
	s += byWhom(by)
	if screen != "" {
		s += ", at " + screen
	}
	if key != "" {
		s += ", key " + key
	}
	return s
}

// The shelf.
const (
	ShelfSmelt     = "smelt"
	ShelfBloom     = "bloom"
	ShelfPhase     = "phase"
	ShelfCharges   = "charges"
	ShelfOre       = "ore"
	ShelfCharcoal  = "charcoal"
	ShelfMarks     = ""
	ShelfFurnace   = "furnace"
	ShelfBare      = "no smelt yet: v then a goes to the start, where one begins"
	MarkInvented   = "invented, to look at"
	MarkImported   = "imported"
	MarkUndated    = "imported, undated"
	MarkUnfinished = "not finished"
)

// ShelfHolds is how many smelts stand on the shelf.
func ShelfHolds(n int) string {
	if n == 1 {
		return "1 smelt"
	}
	return strconv.Itoa(n) + " smelts"
}

// What a smelt that is not at work says at the top.
const (
	PastInvented = "invented, a moment to look at"
	PastImported = "imported, as it stood at its end"
	PastOver     = "over, at its end"
)

// Scoops names what is counted into the open measure.
func Scoops(measure string) string { return plural(measure) + " of ore" }

// PageOf says which part of a long list is shown.
func PageOf(n, of int) string {
	return " " + strconv.Itoa(n) + " of " + strconv.Itoa(of) + ", up and down show the rest "
}

// The help.
const (
	HelpTyping  = "typing and keys"
	HelpFigures = "the figures"
	HelpBasis   = "what a figure rests on"
	Or          = " or "
)

// HelpKeysOf heads the keys of a screen, some of which a number pad doubles.
func HelpKeysOf(screen string, doubled bool) string {
	s := "keys: " + orElse(screen, "every screen")
	if doubled {
		s += " (the second on a number pad)"
	}
	return s
}

// HelpOthers heads the list of rare acts.
func HelpOthers(key string) string { return DoOthers + ": " + key + ", then" }

// HelpAboutKeys says what holds for all keys.
var HelpAboutKeys = []string{
	"One bare key each, large or small letters alike. A number pad alone will do: its keys double the frequent acts.",
	"In a list one key chooses: its letter, or the number of its line. In a field digits, comma or point; on an AZERTY keyboard the top row counts as digits without shift. Enter ends a field, esc leaves it.",
	"A key that books an act and comes again at once is taken for a leaning glove and not booked. Scoops, minutes and arrows may be as quick as you like.",
	"Everything keyed is kept at once. Nothing is deleted: what is crossed out stays in the book and can be brought back.",
}

// HelpEstimates says what the estimates rest on.
var HelpEstimates = []string{
	"Each figure has a spread: one time in ten it lies below, one time in ten above. Weigh a measure once and every charge counted in it follows, those before too.",
	"Until they are reckoned from this smelt, what happens at each height and how hot it is there is a guess after one measured furnace.",
}

// Meaning is a figure's definition with its unit.
func Meaning(d figure.Definition) string {
	if d.Unit == "1" {
		return d.Meaning
	}
	return d.Meaning + ", " + d.Unit
}

// BasisMeans says what a basis is.
func BasisMeans(b figure.Basis) string {
	return [...]string{
		figure.Measured:  "read off an instrument, counted or weighed",
		figure.Estimated: "reckoned from what was measured",
		figure.Guessed:   "only usual values behind it: measure to make it better",
		figure.Unknown:   "not enough is known to say anything",
	}[b]
}
